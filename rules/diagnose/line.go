package diagnose

import (
	"math"
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
		out = append(out, point{math.Log(x), math.Log(y), honest * l.wide * 2 * max(b.half[c], 1e-6*y) / y})
	}
	return out, wrong
}

// fit is the line through the points: its height at x0, its slope, and half the sum of squares; prior is the spread of slopes over product lines.
func (l *line) fit(pts []point) (x0, height, slope, half float64) {
	var sw, sx, sy float64
	for _, p := range pts {
		w := 1 / (p.s * p.s)
		sw, sx, sy = sw+w, sx+w*p.x, sy+w*p.y
	}
	x0, y0 := sx/sw, sy/sw
	spread := (l.slope.Q95 - l.slope.Q05) / 3.29 // 5th to 95th percentile of a normal distribution
	sxx := 1 / (spread * spread)
	sxy := sxx * l.slope.Median
	for _, p := range pts {
		w := 1 / (p.s * p.s)
		sxx += w * (p.x - x0) * (p.x - x0)
		sxy += w * (p.x - x0) * (p.y - y0)
	}
	slope = sxy / sxx
	d := (slope - l.slope.Median) / spread
	half = d * d / 2
	for _, p := range pts {
		r := (p.y - y0 - slope*(p.x-x0)) / p.s
		half += r * r / 2
	}
	return x0, y0, slope, half
}

func (l *line) misfit(b *board) float64 {
	var room [maxClasses]point
	pts, wrong := l.points(b, none, room[:])
	cost := float64(wrong) * -math.Log(offLine*0.001)
	for len(pts) > 1 {
		_, _, _, half := l.fit(pts)
		// the point whose leaving saves most
		best, saved, price := -1, 0.0, 0.0
		if half > 2 {
			for i, p := range pts {
				pts[i], pts[len(pts)-1] = pts[len(pts)-1], pts[i]
				rest := 0.0
				if len(pts) > 2 {
					_, _, _, rest = l.fit(pts[:len(pts)-1])
				}
				pts[i], pts[len(pts)-1] = pts[len(pts)-1], pts[i]
				if out := -math.Log(offLine * p.s); half-rest-out > saved {
					best, saved, price = i, half-rest-out, out
				}
			}
		}
		if best < 0 {
			return cost + half
		}
		cost += price
		pts = append(pts[:best], pts[best+1:]...)
	}
	return cost
}

func (l *line) solve(b *board, c int) (float64, bool) {
	at := -1
	for i := range l.row {
		if l.row[i] == c {
			at = i
		}
	}
	if at < 0 {
		return 0, false
	}
	var room [maxClasses]point
	pts, _ := l.points(b, c, room[:])
	x := b.nominal(at, l.power[at])
	if len(pts) == 0 || !(x > 0) {
		return 0, false
	}
	// one that stands off the line of the others must not bend it
	for len(pts) > 3 {
		_, _, _, half := l.fit(pts)
		best, least := -1, half-8
		for i := range pts {
			pts[i], pts[len(pts)-1] = pts[len(pts)-1], pts[i]
			if _, _, _, rest := l.fit(pts[:len(pts)-1]); rest < least {
				best, least = i, rest
			}
			pts[i], pts[len(pts)-1] = pts[len(pts)-1], pts[i]
		}
		if best < 0 {
			break
		}
		pts = append(pts[:best], pts[best+1:]...)
	}
	x0, y0, slope, _ := l.fit(pts)
	return math.Exp(y0 + slope*(math.Log(x)-x0)), true
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
