package compare

import "fmt"

// The frame of a plot of lines, in the picture's own units.
const (
	lineWidth, lineHeight = 640.0, 400.0
	frameLeft, frameRight = 58.0, 620.0
	frameTop, frameBottom = 48.0, 350.0
	grid                  = `stroke="#d9d6cb" stroke-width="1"`
	frame                 = `stroke="#4a555c" stroke-width="1"`
)

// drawLines draws curves over a grid, with a legend above and marks on the x axis.
func drawLines(p *Plot) string {
	var s svg
	s.open(p, lineWidth, lineHeight)
	x, y := p.X.scale(frameLeft, frameRight), p.Y.scale(frameBottom, frameTop)
	for _, t := range p.X.Ticks {
		s.line(x.of(t), frameTop, x.of(t), frameBottom, grid)
		s.text(x.of(t), frameBottom+18, "middle", "", t.String())
	}
	for _, t := range p.Y.Ticks {
		s.line(frameLeft, y.of(t), frameRight, y.of(t), grid)
		s.text(frameLeft-8, y.of(t)+4, "end", "", t.String())
	}
	s.line(frameLeft, frameBottom, frameRight, frameBottom, frame)
	s.line(frameLeft, frameTop, frameLeft, frameBottom, frame)
	s.text((frameLeft+frameRight)/2, lineHeight-12, "middle", "", p.X.title())
	s.text(0, 0, "middle", fmt.Sprintf(`transform="translate(14 %.0f) rotate(-90)"`, (frameTop+frameBottom)/2), p.Y.title())
	for i, m := range p.Marks {
		at := x.of(m.X)
		s.line(at, frameTop, at, frameBottom, `stroke="#4a555c" stroke-width="1.5" stroke-dasharray="3 3"`)
		anchor, shift := "start", 5.0
		if at > (frameLeft+frameRight)/2 {
			anchor, shift = "end", -5
		}
		s.text(at+shift, frameBottom-8-18*float64(i), anchor, `class="soft"`, fmt.Sprintf("%s, %s", m.Label, withUnit(m.X, p.X.Unit)))
	}
	for i, l := range p.Lines {
		style := fmt.Sprintf(`stroke="%s" stroke-width="2.5" stroke-dasharray="%s"`, hue(l.Option), dash(l.Option))
		var points [][2]float64
		for _, c := range l.Curve {
			points = append(points, [2]float64{x.of(c[0]), y.of(c[1])})
		}
		s.path(points, style)
		for _, c := range l.Points {
			s.marker(x.of(c[0]), y.of(c[1]), l.Option)
		}
		at := frameLeft + 44*float64(i)
		s.path([][2]float64{{at, 24}, {at + 24, 24}}, style)
		s.marker(at+12, 24, l.Option)
		s.text(at+29, 28, "start", `font-weight="700"`, l.Option)
	}
	return s.shut()
}
