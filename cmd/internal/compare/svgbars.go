package compare

// bars stacks the parts of each option's bar from left to right, the total at its end.
func (s *svg) bars(p *Plot) {
	const barHeight, step, left, right, top = 30.0, 46.0, 40.0, 540.0, 14.0
	bottom := top + step*float64(len(p.Bars))
	legend := bottom + 62
	parts := p.Bars[0].Parts
	s.open(p, lineWidth, legend+20*float64((len(parts)+2)/3))
	x := p.X.scale(left, right)
	for _, t := range p.X.Ticks {
		s.line(x.of(t), top-6, x.of(t), bottom, grid...)
		s.words(x.of(t), bottom+18, "middle", t.String())
	}
	s.words((left+right)/2, bottom+38, "middle", p.X.title())
	for i, bar := range p.Bars {
		y := top + step*float64(i)
		s.words(left-12, y+20, "end", bar.Option, bold...)
		sum := 0.0
		for k, part := range bar.Parts {
			from, to := x.at(sum), x.at(sum+part.Value.Float())
			sum += part.Value.Float()
			if to <= from {
				continue
			}
			s.rect(from, y, to-from, barHeight, "fill", shades[k], "stroke", darkInk, "stroke-width", 1)
			if to-from > 9*float64(len(part.Value.String())) {
				s.words((from+to)/2, y+20, "middle", part.Value.String(), "style", "fill:"+ink(k))
			}
		}
		s.words(x.at(sum)+8, y+20, "start", bar.Total.String(), bold...)
	}
	for k, part := range parts {
		at, y := left+200*float64(k%3), legend+20*float64(k/3)
		s.rect(at, y-11, 14, 14, "fill", shades[k], "stroke", darkInk, "stroke-width", 1)
		s.words(at+20, y+1, "start", part.Label)
	}
}

// ink is what can be read on a shade.
func ink(k int) string {
	if k < 2 {
		return "#ffffff"
	}
	return darkInk
}
