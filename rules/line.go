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

// clearly is by how many standard deviations a row must bend for its bend to be believed.
const clearly = 3

// bends reports that the others alone show that the row bends, and that value k lies on their parabola as far as own printed units and z deviations
// of it explain: some makers' rows flatten towards the top, and their end lies off every line.
func (l *line) bends(k int, own, z float64) bool {
	n := len(l.x) - 1
	if n < 4 {
		return false
	}
	span := l.x[n] - l.x[0]
	sigma := honestScatter * l.unit[k]
	var s [5]float64 // sums of powers of x, from value k on in units of the row's span
	var t [3]float64 // the same times y
	for i := range l.x {
		if i == k {
			continue
		}
		power := 1.0
		for j := range s {
			s[j] += power
			if j < len(t) {
				t[j] += power * (l.y[i] - l.y[k])
			}
			power *= (l.x[i] - l.x[k]) / span
		}
	}
	// the inverse of the normal equations' matrix, by its cofactors
	c00, c01, c02 := s[2]*s[4]-s[3]*s[3], s[2]*s[3]-s[1]*s[4], s[1]*s[3]-s[2]*s[2]
	c11, c12, c22 := s[0]*s[4]-s[2]*s[2], s[1]*s[2]-s[0]*s[3], s[0]*s[2]-s[1]*s[1]
	det := s[0]*c00 + s[1]*c01 + s[2]*c02
	if !(det > 0) {
		return false
	}
	at := (c00*t[0] + c01*t[1] + c02*t[2]) / det
	slope := (c01*t[0] + c11*t[1] + c12*t[2]) / det
	bend := (c02*t[0] + c12*t[1] + c22*t[2]) / det
	square := 0.0
	for i := range l.x {
		if dx := (l.x[i] - l.x[k]) / span; i != k {
			r := (l.y[i] - l.y[k] - at - slope*dx - bend*dx*dx) / sigma
			square += r * r
		}
	}
	scale := max(1, math.Sqrt((scatterWeight+square)/(scatterWeight+float64(n-3))))
	return math.Abs(bend) > clearly*scale*sigma*math.Sqrt(c22/det) && math.Abs(at) <= l.unit[k]*scale*(own+z*honestScatter*math.Sqrt(c00/det))
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
