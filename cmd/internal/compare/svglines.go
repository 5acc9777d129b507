package compare

import "fmt"

// The frame of a plot of lines, in the picture's own units.
const (
	lineWidth, lineHeight = 640.0, 400.0
	frameLeft, frameRight = 58.0, 620.0
	frameTop, frameBottom = 48.0, 350.0
)

var (
	grid  = []any{"stroke", gridInk, "stroke-width", 1}
	frame = []any{"stroke", softInk, "stroke-width", 1}
)

// lines draws curves over a grid, with a legend above and marks on the x axis.
func (s *svg) lines(p *Plot) {
	s.open(p, lineWidth, lineHeight)
	x, y := p.X.scale(frameLeft, frameRight), p.Y.scale(frameBottom, frameTop)
	for _, t := range p.X.Ticks {
		s.line(x.of(t), frameTop, x.of(t), frameBottom, grid...)
		s.words(x.of(t), frameBottom+18, "middle", t.String())
	}
	for _, t := range p.Y.Ticks {
		s.line(frameLeft, y.of(t), frameRight, y.of(t), grid...)
		s.words(frameLeft-8, y.of(t)+4, "end", t.String())
	}
	s.line(frameLeft, frameBottom, frameRight, frameBottom, frame...)
	s.line(frameLeft, frameTop, frameLeft, frameBottom, frame...)
	s.words((frameLeft+frameRight)/2, lineHeight-12, "middle", p.X.title())
	s.upright(14, (frameTop+frameBottom)/2, p.Y.title())
	for i, m := range p.Marks {
		at := x.of(m.X)
		s.line(at, frameTop, at, frameBottom, "stroke", softInk, "stroke-width", 1.5, "stroke-dasharray", "3 3")
		anchor, shift := "start", 5.0
		if at > (frameLeft+frameRight)/2 {
			anchor, shift = "end", -5
		}
		s.words(at+shift, frameBottom-8-18*float64(i), anchor, fmt.Sprintf("%s, %s", m.Label, withUnit(m.X, p.X.Unit)), "class", "soft")
	}
	for i, l := range p.Lines {
		look := []any{"stroke", hue(l.Option), "stroke-width", 2.5, "stroke-dasharray", dash(l.Option)}
		var points [][2]float64
		for _, c := range l.Curve {
			points = append(points, [2]float64{x.of(c[0]), y.of(c[1])})
		}
		s.path(points, look...)
		for _, c := range l.Points {
			s.marker(x.of(c[0]), y.of(c[1]), l.Option)
		}
		at := frameLeft + 46*float64(i)
		s.path([][2]float64{{at, 24}, {at + 24, 24}}, look...)
		s.marker(at+12, 24, l.Option)
		s.words(at+29, 28, "start", l.Option, bold...)
	}
}
