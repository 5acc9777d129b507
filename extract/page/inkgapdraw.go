package page

import (
	"image"
	"image/color"
	"image/draw"

	"golang.org/x/image/vector"
)

// figureCanvases draws the page's outlines by themselves, part by part: what they say does not take a rendered page, which costs
// seconds where a photograph lies behind.
func (p *Page) figureCanvases() []*canvas {
	var boxes []Box
	for _, f := range p.Figures {
		boxes = append(boxes, f.Box)
	}
	var out []*canvas
	for _, region := range p.regions(boxes) {
		scale := dpiFor(p.Width, p.Height) / pointsPerInch
		frame := image.Rect(int(region.X0*scale), int(region.Y0*scale), int(region.X1*scale)+1, int(region.Y1*scale)+1)
		c := &canvas{left: frame.Min.X, top: frame.Min.Y, w: frame.Dx(), h: frame.Dy(), scale: scale}
		c.ink, c.mask = make([]uint8, c.w*c.h), make([]uint8, c.w*c.h)
		for _, f := range p.Figures {
			if region.encloses(f.Box) {
				c.drawFigure(f)
			}
		}
		for i, v := range c.ink {
			if v >= inkFrom {
				c.mask[i] = maskInk
			}
		}
		c.drawRules(p.Rules)
		out = append(out, c)
	}
	return out
}

// drawFigure fills an outline.
func (c *canvas) drawFigure(f Figure) {
	x0, y0 := int(f.Box.X0*c.scale)-c.left-1, int(f.Box.Y0*c.scale)-c.top-1
	frame := image.Rect(x0, y0, int(f.Box.X1*c.scale)-c.left+2, int(f.Box.Y1*c.scale)-c.top+2).Intersect(image.Rect(0, 0, c.w, c.h))
	if frame.Empty() {
		return
	}
	raster := vector.NewRasterizer(frame.Dx(), frame.Dy())
	at := func(contour []float32, i int) (x, y float32) {
		return contour[i]*float32(c.scale) - float32(c.left+frame.Min.X), contour[i+1]*float32(c.scale) - float32(c.top+frame.Min.Y)
	}
	for n, contour := range f.Contours {
		order := func(i int) int { return i }
		if f.EvenOdd && clockwise(contour) != (f.depth(n)%2 == 0) {
			order = func(i int) int { return len(contour) - 2 - i }
		}
		raster.MoveTo(at(contour, order(0)))
		for i := 2; i < len(contour); i += 2 {
			raster.LineTo(at(contour, order(i)))
		}
		raster.ClosePath()
	}
	own := image.NewAlpha(image.Rect(0, 0, frame.Dx(), frame.Dy()))
	raster.DrawOp = draw.Src
	raster.Draw(own, own.Rect, image.NewUniform(color.Opaque), image.Point{})
	for y := range frame.Dy() {
		for x := range frame.Dx() {
			i := (frame.Min.Y+y)*c.w + frame.Min.X + x
			c.ink[i] = max(c.ink[i], own.Pix[y*own.Stride+x])
		}
	}
}

// clockwise tells a contour's direction.
func clockwise(contour []float32) bool {
	area := float32(0)
	n := len(contour)
	for i := 0; i < n; i += 2 {
		j := (i + 2) % n
		area += contour[i]*contour[j+1] - contour[j]*contour[i+1]
	}
	return area > 0
}

// depth is how many other contours go around one: filled by the even-odd rule, every second is a hole. With directions to match, the
// non-zero winding rule, which the rasteriser knows, gives the same.
func (f Figure) depth(n int) int {
	x, y := float64(f.Contours[n][0]), float64(f.Contours[n][1])
	depth := 0
	for i, contour := range f.Contours {
		if i == n {
			continue
		}
		poly := make(polygon, 0, len(contour)/2)
		for k := 0; k < len(contour); k += 2 {
			poly = append(poly, corner{float64(contour[k]), float64(contour[k+1])})
		}
		if (outline{poly}).holds(x, y) {
			depth++
		}
	}
	return depth
}

// drawRules marks the rules that part the columns.
func (c *canvas) drawRules(rules []Rule) {
	for _, r := range rules {
		x := int(r.Box.X0*c.scale) - c.left
		if r.Box.X0 != r.Box.X1 || r.Box.H() <= strokeMost || x < 0 || x >= c.w {
			continue
		}
		for y := max(0, int(r.Box.Y0*c.scale)-c.top); y < min(c.h, int(r.Box.Y1*c.scale)-c.top); y++ {
			if c.mask[y*c.w+x] == maskNone {
				c.mask[y*c.w+x] = maskDown
			}
		}
	}
}
