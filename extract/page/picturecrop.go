package page

import (
	"image"
	"math"

	"golang.org/x/image/draw"
)

// How a line is shown to Tesseract. Its models were trained on lines scaled to 36 pixels, with capitals of some 24 to 30.
const (
	cropTall   = 30 // pixels of capitals
	retryTall  = 37 // the same for another try
	cropMargin = 12 // white pixels around
	maxEnlarge = 4.0
	minCrop    = 0.2
)

// cut shows a line's own ink alone: neither rules nor neighbours, at the wanted height of capitals.
func (l lettering) cut(tall int) *image.Gray {
	c := l.on
	pad := max(1, l.tall/12)
	frame := l.box.Inset(-pad).Intersect(image.Rect(0, 0, c.w, c.h))
	gain := c.gain(l)
	indexes := l.indexes()
	plain := c.draw(l.without(indexes), frame, gain)
	if len(indexes) > 0 {
		plain = l.raise(plain, frame, indexes, gain)
	}
	k := min(maxEnlarge, max(minCrop, float64(tall)/float64(max(1, l.tall))))
	w, h := int(math.Round(float64(plain.Rect.Dx())*k)), int(math.Round(float64(plain.Rect.Dy())*k))
	out := white(max(1, w)+2*cropMargin, max(1, h)+2*cropMargin)
	inner := image.Rect(cropMargin, cropMargin, out.Rect.Max.X-cropMargin, out.Rect.Max.Y-cropMargin)
	draw.CatmullRom.Scale(out, inner, plain, plain.Rect, draw.Src, nil)
	return out
}

// draw shows blobs alone.
func (c *canvas) draw(blobs []blob, frame image.Rectangle, gain int) *image.Gray {
	out := white(frame.Dx(), frame.Dy())
	for _, b := range blobs {
		for _, r := range b.runs {
			c.copyInk(out, frame, r, gain)
		}
	}
	return out
}

func white(w, h int) *image.Gray {
	out := image.NewGray(image.Rect(0, 0, w, h))
	for i := range out.Pix {
		out.Pix[i] = 0xFF
	}
	return out
}

// gain makes pale lettering black: the factor that brings its strongest ink to full.
func (c *canvas) gain(l lettering) int {
	var histogram [256]int
	total := 0
	for _, b := range l.blobs {
		for _, r := range b.runs {
			for _, v := range c.ink[int(r.y)*c.w+int(r.x0) : int(r.y)*c.w+int(r.x1)] {
				histogram[v]++
				total++
			}
		}
	}
	strong, seen := 255, 0
	for ; strong > inkFrom && seen < total/4; strong-- {
		seen += histogram[strong]
	}
	return 255 * 256 / strong
}

// copyInk copies a run with the pixels that touch it: the soft edge of the letter.
func (c *canvas) copyInk(to *image.Gray, frame image.Rectangle, r run3, gain int) {
	for y := int(r.y) - 1; y <= int(r.y)+1; y++ {
		for x := int(r.x0) - 1; x <= int(r.x1); x++ {
			if !(image.Point{x, y}).In(frame) {
				continue
			}
			if k := c.mask[y*c.w+x]; k != maskLetter && k != maskNone {
				continue
			}
			v := 255 - min(255, int(c.ink[y*c.w+x])*gain>>8)
			to.Pix[(y-frame.Min.Y)*to.Stride+x-frame.Min.X] = uint8(v)
		}
	}
}
