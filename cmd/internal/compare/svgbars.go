package compare

import "fmt"

// drawBars stacks the parts of each option's bar from left to right, the total at its end.
func drawBars(p *Plot) string {
	const barHeight, step, left, right, top = 30.0, 46.0, 40.0, 540.0, 14.0
	bottom := top + step*float64(len(p.Bars))
	legend := bottom + 62
	parts := p.Bars[0].Parts
	var s svg
	s.open(p, lineWidth, legend+20*float64((len(parts)+2)/3))
	x := p.X.scale(left, right)
	for _, t := range p.X.Ticks {
		s.line(x.of(t), top-6, x.of(t), bottom, grid)
		s.text(x.of(t), bottom+18, "middle", "", t.String())
	}
	s.text((left+right)/2, bottom+38, "middle", "", p.X.title())
	for i, bar := range p.Bars {
		y := top + step*float64(i)
		s.text(left-12, y+20, "end", `font-weight="700"`, bar.Option)
		sum := 0.0
		for k, part := range bar.Parts {
			from, to := x.at(sum), x.at(sum+part.Value.Float())
			sum += part.Value.Float()
			if to <= from {
				continue
			}
			s.rect(from, y, to-from, barHeight, fmt.Sprintf(`fill="%s" stroke="#1d2429" stroke-width="1"`, shades[k]))
			if to-from > 9*float64(len(part.Value.String())) {
				s.text((from+to)/2, y+20, "middle", fmt.Sprintf(`style="fill:%s"`, ink(k)), part.Value.String())
			}
		}
		s.text(x.at(sum)+8, y+20, "start", `font-weight="700"`, bar.Total.String())
	}
	for k, part := range parts {
		at, y := left+200*float64(k%3), legend+20*float64(k/3)
		s.rect(at, y-11, 14, 14, fmt.Sprintf(`fill="%s" stroke="#1d2429" stroke-width="1"`, shades[k]))
		s.text(at+20, y+1, "start", "", part.Label)
	}
	return s.shut()
}

// ink is what can be read on a shade.
func ink(k int) string {
	if k < 2 {
		return "#ffffff"
	}
	return "#1d2429"
}
