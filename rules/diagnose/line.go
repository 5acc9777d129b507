package diagnose

import (
	"math"
	"slices"
	"strings"

	"pvtally/rules/envelope"
)

// line holds when a row's logarithm lies on a straight line over the classes' nominal power, to rounding and the maker's unevenness.
// The rule classes/smooth judges the same; here one value after the other may stand off it, each at the price of a misprint.
type line struct {
	row   []int // one cell a class
	power []int // each class's Pmax
	slope envelope.Slope
	wide  float64 // scatter of this maker's rows over the honest one, at least 1
}

// honest is the scatter round the line in printed units, one standard deviation: half of the values of 62 real sheets lie within 0.1,
// nine in ten within 1 (design/rules.md).
const honest = 0.6

// offLine is the probability per unit of ln y that a value stands anywhere.
const offLine = 0.02

func (l *line) cells() []int { return append(l.power[:len(l.power):len(l.power)], l.row...) }

// point is a class on the line: its place, its value, its scatter.
type point struct{ x, y, s float64 }

func (l *line) points(b *board, without int, room []point) (out []point, wrong int) {
	out = room[:0]
	for i, c := range l.row {
		x, y := b.nominal(i, l.power[i]), b.x[c]
		if c == without || math.IsNaN(x) || math.IsNaN(y) || x <= 0 {
			continue
		}
		if y <= 0 {
			wrong++
			continue
		}
		out = append(out, point{math.Log(x), b.ln[c], honest * l.wide * 2 * max(b.half[c], 1e-6*y) / y})
	}
	return out, wrong
}

// fitted is a line through points: its height at x0, its slope, half the sum of squares, and the point that costs most.
type fitted struct {
	x0, height, slope float64
	half              float64
	worst             int
	saved             float64 // what half falls by without the worst
}

// fit draws the line, by least squares with the spread of slopes over product lines as prior knowledge. Leaving a point out lowers the sum of squares by
// its own square over one less its leverage (Cook, Weisberg, Residuals and Influence in Regression, 1982; from memory).
func (l *line) fit(pts []point) (f fitted) {
	var sw, sx, sy float64
	for _, p := range pts {
		w := 1 / (p.s * p.s)
		sw, sx, sy = sw+w, sx+w*p.x, sy+w*p.y
	}
	f.x0, f.height = sx/sw, sy/sw
	spread := (l.slope.Q95 - l.slope.Q05) / 3.29 // 5th to 95th percentile of a normal distribution
	sxx := 1 / (spread * spread)
	sxy := sxx * l.slope.Median
	for _, p := range pts {
		w := 1 / (p.s * p.s)
		sxx += w * (p.x - f.x0) * (p.x - f.x0)
		sxy += w * (p.x - f.x0) * (p.y - f.height)
	}
	f.slope = sxy / sxx
	d := (f.slope - l.slope.Median) / spread
	f.half = d * d / 2
	for i, p := range pts {
		dx := p.x - f.x0
		r := (p.y - f.height - f.slope*dx) / p.s
		f.half += r * r / 2
		leverage := (1/sw + dx*dx/sxx) / (p.s * p.s)
		if s := r * r / 2 / max(1-leverage, 1e-9); s > f.saved {
			f.worst, f.saved = i, s
		}
	}
	return f
}

// maxOff is how many values of a row are looked at as standing off its line: with more, the line itself is in question.
const maxOff = 4

func (l *line) misfit(b *board) float64 {
	var room [maxClasses]point
	pts, wrong := l.points(b, none, room[:])
	cost := float64(wrong) * -math.Log(offLine*0.001)
	for off := 0; len(pts) > 1; off++ {
		f := l.fit(pts)
		price := -math.Log(offLine * pts[f.worst].s)
		if f.half < 2 || f.saved < price || off == maxOff {
			return cost + f.half
		}
		cost += price
		pts = append(pts[:f.worst], pts[f.worst+1:]...)
	}
	return cost
}

func (l *line) solve(b *board, c int) (float64, bool) {
	at := slices.Index(l.row, c)
	if at < 0 {
		return 0, false
	}
	var room [maxClasses]point
	pts, _ := l.points(b, c, room[:])
	x := b.nominal(at, l.power[at])
	if len(pts) == 0 || !(x > 0) {
		return 0, false
	}
	f := l.fit(pts)
	// one that stands off the line of the others must not bend it
	for off := 0; len(pts) > 3 && f.saved > 8 && off < maxOff; off++ {
		pts = append(pts[:f.worst], pts[f.worst+1:]...)
		f = l.fit(pts)
	}
	return math.Exp(f.height + f.slope*(math.Log(x)-f.x0)), true
}

// widen finds how unevenly this maker's row lies, from values that each stand on the line of the others; a row whose every value ends in a
// zero after the point was rounded one digit sooner than it is printed.
func (l *line) widen(b *board) {
	padded := true
	var off []float64
	for _, c := range printed(l.row) {
		text := b.cells[c].n.String()
		padded = padded && strings.Contains(text, ".") && strings.HasSuffix(text, "0")
		if v, ok := l.solve(b, c); ok && b.half[c] > 0 {
			off = append(off, math.Abs(v-b.x[c])/(2*b.half[c]*honest))
		}
	}
	if padded {
		l.wide = 10
	} else if len(off) >= 4 {
		l.wide = min(max(1, median(off)), 3)
	}
}
