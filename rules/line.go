package rules

import (
	"math"

	"pvtally/rules/envelope"
)

// Scatter of honest sheets round the line of their classes, in printed units: rounding alone gives 0.29; 62 real sheets show 0.6 with their makers' own unevenness.
const honestScatter = 0.6

// scatterWeight is how many observations the scatter above is worth against the sheet's own.
const scatterWeight = 3

// line is one quantity over the power classes: ln y against ln Pmax is straight, with a slope that product lines share (envelope.SlopeOf).
// A quantity without a known slope is drawn with the wide one given.
type line struct {
	x, y  []float64 // ln Pmax, ln y
	unit  []float64 // one printed unit as a share of y
	slope envelope.Slope
}

// missed is how far a value lies from the line through the others.
type missed struct {
	off    float64 // from the line, in printed units, signed
	line   float64 // the line's own uncertainty there, one standard deviation in printed units
	scale  float64 // how much wider than honest the others scatter, at least 1
	expect float64 // the value on the line
}

// without predicts value k from the others by a Bayesian regression: the slope's prior is the spread over product lines,
// the scatter's is honestScatter.
func (l *line) without(k int) missed {
	n := len(l.x)
	sigma := honestScatter * l.unit[k]
	w := 1 / (sigma * sigma)
	spread := (l.slope.Q95 - l.slope.Q05) / 3.29 // 5th to 95th percentile of a normal distribution
	prior := 1 / (spread * spread)
	var sw, sx, sxx, sy, sxy float64
	for i := range n {
		if i == k {
			continue
		}
		dx, y := l.x[i]-l.x[k], l.y[i]
		sw, sx, sxx, sy, sxy = sw+w, sx+w*dx, sxx+w*dx*dx, sy+w*y, sxy+w*dx*y
	}
	sxx, sxy = sxx+prior, sxy+prior*l.slope.Median
	det := sw*sxx - sx*sx
	at := (sxx*sy - sx*sxy) / det
	slope := (sw*sxy - sx*sy) / det
	square := 0.0
	for i := range n {
		if i != k {
			r := (l.y[i] - at - slope*(l.x[i]-l.x[k])) / sigma
			square += r * r
		}
	}
	return missed{
		off:    (l.y[k] - at) / l.unit[k],
		line:   math.Sqrt(sxx/det) / l.unit[k],
		scale:  max(1, math.Sqrt((scatterWeight+square)/(scatterWeight+float64(max(n-2, 0))))),
		expect: math.Exp(at),
	}
}

// worst is the value that lies farthest beyond what its own scatter (own printed units) and the line's uncertainty (z deviations) explain;
// beyond is negative where all is explained.
func (l *line) worst(own, z float64) (k int, m missed, beyond float64) {
	beyond = math.Inf(-1)
	for i := range l.x {
		c := l.without(i)
		if b := math.Abs(c.off) - c.scale*(own+z*c.line); b > beyond {
			k, m, beyond = i, c, b
		}
	}
	return k, m, beyond
}
