package page

import (
	"image"
	"math"
)

// inkDPI is the resolution for looking at ink: a letter of 5 points is 10 pixels high.
const inkDPI = 144

// What of a letter's height, in font sizes from the baseline upwards, is looked at: neighbouring lines and rules stay out.
const (
	inkTop    = 0.75
	inkBottom = -0.05
)

// groundShare is the least share of a piece's pixels that must have one colour for the rest to be judged as ink; over a photograph
// nothing is judged.
const groundShare = 0.3

// inkOf tells whether the picture shows ink where the characters stand, and ink of their colour.
func inkOf(p *image.RGBA, piece []char) Hidden {
	counts := map[uint32]int{}
	var pixels []uint32
	for _, c := range piece {
		eachPixel(p, c.core(), func(rgb uint32) {
			pixels = append(pixels, rgb)
			counts[rgb&0xF0F0F0]++
		})
	}
	if len(pixels) == 0 {
		return Visible
	}
	var key uint32
	for k, n := range counts {
		if n > counts[key] || n == counts[key] && k > key {
			key = k
		}
	}
	if float64(counts[key]) < groundShare*float64(len(pixels)) {
		return Visible
	}
	var ground, ink uint32
	for _, rgb := range pixels {
		if rgb&0xF0F0F0 == key {
			ground = rgb
			break
		}
	}
	ink = ground
	for _, rgb := range pixels {
		if distance(rgb, ground) > distance(ink, ground) {
			ink = rgb
		}
	}
	share := float64(counts[key]) / float64(len(pixels))
	switch own := alike(ground, piece[0].colour); {
	case alike(ink, ground) && own:
		return PaperInk
	case alike(ink, ground):
		return NoInk
	case own && (share < letterShare || len(piece) < judgedLength):
		return Visible // heavy letters are the ground themselves
	case own:
		return PaperInk
	case len(piece) >= judgedLength && !anyTowards(pixels, ground, piece[0].colour):
		return Overprint
	}
	return Visible
}

// A word's letters fill at most so much of their boxes; a single "I" may fill its own, and a single letter's edges show its colour
// badly.
const (
	letterShare  = 0.8
	judgedLength = 3 // characters
)

// core is the part of a character's box that its ink is looked for in.
func (c char) core() Box {
	b := c.box
	switch c.rotation {
	case 0:
		b.Y0, b.Y1 = c.y-inkTop*c.size, c.y-inkBottom*c.size
	case 180:
		b.Y0, b.Y1 = c.y+inkBottom*c.size, c.y+inkTop*c.size
	case 90:
		b.X0, b.X1 = c.x+inkBottom*c.size, c.x+inkTop*c.size
	case 270:
		b.X0, b.X1 = c.x-inkTop*c.size, c.x-inkBottom*c.size
	}
	if inner := b.meet(c.box); !inner.empty() {
		return inner
	}
	return c.box
}

// eachPixel gives the pixels of a box of a picture at inkDPI, 0xRRGGBB.
func eachPixel(p *image.RGBA, b Box, do func(rgb uint32)) {
	const scale = inkDPI / float64(pointsPerInch)
	x0, x1 := max(0, int(b.X0*scale)-p.Rect.Min.X), min(p.Rect.Dx()-1, int(b.X1*scale)-p.Rect.Min.X)
	y0, y1 := max(0, int(b.Y0*scale)-p.Rect.Min.Y), min(p.Rect.Dy()-1, int(b.Y1*scale)-p.Rect.Min.Y)
	for y := y0; y <= y1; y++ {
		row := p.Pix[y*p.Stride:]
		for x := x0; x <= x1; x++ {
			do(uint32(row[4*x])<<16 | uint32(row[4*x+1])<<8 | uint32(row[4*x+2]))
		}
	}
}

// parts3 takes a colour apart.
func parts3(rgb uint32) (r, g, b float64) {
	return float64(rgb >> 16 & 0xFF), float64(rgb >> 8 & 0xFF), float64(rgb & 0xFF)
}

func distance(a, b uint32) float64 {
	ar, ag, ab := parts3(a)
	br, bg, bb := parts3(b)
	return math.Abs(ar-br) + math.Abs(ag-bg) + math.Abs(ab-bb)
}

// towardsCosine is the least cosine between the way from the ground to a pixel and that to the ink: thin strokes at low resolution
// mix both, so that only the direction tells.
const towardsCosine = 0.92

// anyTowards tells whether some pixel lies from the ground towards the ink's colour.
func anyTowards(pixels []uint32, ground, ink uint32) bool {
	gr, gg, gb := parts3(ground)
	ir, ig, ib := parts3(ink)
	ir, ig, ib = ir-gr, ig-gg, ib-gb
	wish := math.Sqrt(ir*ir + ig*ig + ib*ib)
	if wish == 0 {
		return false
	}
	for _, rgb := range pixels {
		r, g, b := parts3(rgb)
		r, g, b = r-gr, g-gg, b-gb
		if length := math.Sqrt(r*r + g*g + b*b); length > inkContrast && r*ir+g*ig+b*ib >= towardsCosine*length*wish {
			return true
		}
	}
	return false
}
