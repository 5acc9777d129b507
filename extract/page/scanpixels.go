package page

import (
	"image"
	"image/color"

	"golang.org/x/image/draw"
)

// shrunk gives a picture on white, each pixel the mean of k by k.
func shrunk(full image.Image, k int) *image.RGBA {
	b := full.Bounds()
	w, h := max(1, b.Dx()/k), max(1, b.Dy()/k)
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	const rows = 32 // of the result at a time
	strip := image.NewRGBA(image.Rect(0, 0, w*k, min(rows, h)*k))
	for y := 0; y < h; y += rows {
		draw.Draw(strip, strip.Rect, image.NewUniform(color.White), image.Point{}, draw.Src)
		draw.Draw(strip, strip.Rect, full, image.Pt(b.Min.X, b.Min.Y+y*k), draw.Over)
		for row := y; row < min(h, y+rows); row++ {
			means(out.Pix[row*out.Stride:][:4*w], strip.Pix[(row-y)*k*strip.Stride:], strip.Stride, k)
		}
	}
	return out
}

// means writes a row of means of k by k pixels.
func means(to, from []uint8, stride, k int) {
	for i := range to {
		x, part := i/4*k*4, i%4
		sum := k * k / 2
		for dy := range k {
			line := from[dy*stride+x+part:]
			for dx := range k {
				sum += int(line[4*dx])
			}
		}
		to[i] = uint8(sum / (k * k))
	}
}

// resized scales a picture.
func resized(p *image.RGBA, w, h int) *image.RGBA {
	if p.Rect.Dx() == w && p.Rect.Dy() == h {
		return p
	}
	out := image.NewRGBA(image.Rect(0, 0, max(1, w), max(1, h)))
	draw.ApproxBiLinear.Scale(out, out.Rect, p, p.Rect, draw.Src, nil)
	return out
}

// upright turns a picture as its EXIF orientation, 1 to 8, demands (EXIF 2.3, 4.6.4 A).
func upright(p *image.RGBA, orientation int) *image.RGBA {
	if orientation <= 1 || orientation > 8 {
		return p
	}
	w, h := p.Rect.Dx(), p.Rect.Dy()
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	if orientation > 4 {
		out = image.NewRGBA(image.Rect(0, 0, h, w))
	}
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			fx, fy := x, y
			switch orientation {
			case 2:
				fx = w - 1 - x
			case 3:
				fx, fy = w-1-x, h-1-y
			case 4:
				fy = h - 1 - y
			case 5:
				fx, fy = y, x
			case 6:
				fx, fy = y, h-1-x
			case 7:
				fx, fy = w-1-y, h-1-x
			case 8:
				fx, fy = w-1-y, x
			}
			copy(out.Pix[y*out.Stride+4*x:][:4], p.Pix[fy*p.Stride+4*fx:][:4])
		}
	}
	return out
}
