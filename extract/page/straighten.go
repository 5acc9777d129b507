package page

import (
	"image"
	"image/color"
	"math"

	"golang.org/x/image/draw"
	"golang.org/x/image/math/f64"
)

// A page laid askew on the scanner is turned back before anything is read from it. The angle is the one at which the feet of the
// letters fall into the fewest rows (H. S. Baird, The skew angle of printed documents, 1987).
const (
	skewMost   = 6.0  // degrees; beyond that nobody scans
	skewCoarse = 0.1  // degrees
	skewFine   = 0.01 // degrees
	skewLeast  = 0.04 // degrees: less is no skew; a row of A4 then climbs by half a letter's stroke
	skewGain   = 1.03 // how much sharper the rows must become
	skewFeet   = 60   // letters; fewer tell nothing
	maxFeet    = 20_000
)

// skew is the angle by which the page must be turned clockwise for its lines to be level, in degrees; 0 where that cannot be told.
func (c *canvas) skew() float64 {
	var feet []image.Point
	for _, b := range blobsOf(c.mask, c.w, c.h, maskInk) {
		h, w := float64(b.box.Dy())/c.scale, float64(b.box.Dx())/c.scale
		if h >= letterLeast && h <= sparseFrom && w <= 2*h && len(feet) < maxFeet {
			feet = append(feet, image.Pt((b.box.Min.X+b.box.Max.X)/2, b.box.Max.Y))
		}
	}
	if len(feet) < skewFeet {
		return 0
	}
	rows := make([]int32, c.h+2*int(math.Tan(skewMost*2*math.Pi/180)*float64(c.w))+2)
	best := c.sharpest(feet, rows, 0, skewMost, skewCoarse)
	best = c.sharpest(feet, rows, best, skewCoarse, skewFine)
	if math.Abs(best) < skewLeast || c.sharpness(feet, rows, best) < skewGain*c.sharpness(feet, rows, 0) {
		return 0
	}
	return best
}

// sharpest tries the angles around one.
func (c *canvas) sharpest(feet []image.Point, rows []int32, around, reach, step float64) float64 {
	best, most := around, 0.0
	n := int(math.Round(reach / step))
	for i := -n; i <= n; i++ {
		angle := around + float64(i)*step
		if s := c.sharpness(feet, rows, angle); s > most || s == most && math.Abs(angle) < math.Abs(best) {
			best, most = angle, s
		}
	}
	return best
}

// sharpness is the sum of squares of the feet in each row, once the page is turned by an angle.
func (c *canvas) sharpness(feet []image.Point, rows []int32, angle float64) float64 {
	clear(rows)
	slope := math.Tan(angle * math.Pi / 180)
	from := math.Abs(slope) * float64(c.w)
	for _, p := range feet {
		if y := int(float64(p.Y) + slope*float64(p.X) + from + 0.5); y >= 0 && y+1 < len(rows) {
			rows[y]++
		}
	}
	sum := 0.0
	for y := 1; y < len(rows); y++ {
		n := float64(rows[y] + rows[y-1]) // a letter's foot may be a pixel off
		sum += n * n
	}
	return sum
}

// turned is the picture turned about its middle, so many degrees clockwise; what comes from outside is white.
func turned(p *image.RGBA, angle float64) *image.RGBA {
	out := image.NewRGBA(p.Rect)
	draw.Draw(out, out.Rect, image.NewUniform(color.White), image.Point{}, draw.Src)
	sin, cos := math.Sincos(angle * math.Pi / 180)
	mx, my := float64(p.Rect.Min.X+p.Rect.Max.X)/2, float64(p.Rect.Min.Y+p.Rect.Max.Y)/2
	m := f64.Aff3{cos, -sin, mx - cos*mx + sin*my, sin, cos, my - sin*mx - cos*my}
	draw.ApproxBiLinear.Transform(out, m, p, p.Rect, draw.Src, nil)
	return out
}
