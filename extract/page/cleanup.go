package page

import "image"

// canvas is a picture of a page made ready for finding lettering: the ground (paper, bands, panels, soft shades) is taken away, so
// that dark letters on light and light letters on dark are both plain ink on white.
type canvas struct {
	left, top int // of the picture on the whole page, pixels
	w, h      int
	scale     float64 // pixels for one point
	ink       []uint8 // how much a pixel differs from the ground around it
	mask      []uint8 // see maskInk
	rules     []Rule
	bands     []Band
}

// What a pixel of the mask is.
const (
	maskNone   = 0
	maskInk    = 1
	maskAcross = 2 // part of a horizontal rule
	maskDown   = 3 // part of a vertical rule
	maskMass   = 4 // part of something solid and large
	maskLetter = 5 // ink of a line of lettering
)

// inkFrom is the least difference from the ground that counts as ink: pale grey lettering differs by 60, the grain of a picture by
// less than 30.
const inkFrom = 44

// newCanvas takes the ground off a picture. dpi is the picture's resolution.
func newCanvas(shown *image.RGBA, dpi float64) *canvas {
	c := &canvas{left: shown.Rect.Min.X, top: shown.Rect.Min.Y, w: shown.Rect.Dx(), h: shown.Rect.Dy(), scale: dpi / pointsPerInch}
	g := findGround(shown, c.scale)
	for _, b := range g.bands {
		c.bands = append(c.bands, Band{Box{c.x(b.Box.X0 * c.scale), c.y(b.Box.Y0 * c.scale), c.x(b.Box.X1 * c.scale), c.y(b.Box.Y1 * c.scale)}, b.Colour})
	}
	c.ink = g.inkOf(shown)
	c.mask = make([]uint8, len(c.ink))
	for i, v := range c.ink {
		if v >= inkFrom {
			c.mask[i] = maskInk
		}
	}
	c.findRules()
	return c
}

// px is a length in pixels.
func (c *canvas) px(points float64) int { return max(1, int(points*c.scale+0.5)) }

// x and y are places of the picture in points of the page.
func (c *canvas) x(px float64) float64 { return (px + float64(c.left)) / c.scale }
func (c *canvas) y(px float64) float64 { return (px + float64(c.top)) / c.scale }

// box is a rectangle of pixels in points.
func (c *canvas) box(r image.Rectangle) Box {
	return Box{c.x(float64(r.Min.X)), c.y(float64(r.Min.Y)), c.x(float64(r.Max.X)), c.y(float64(r.Max.Y))}
}
