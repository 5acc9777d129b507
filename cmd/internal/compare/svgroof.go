package compare

// roofs draws every option's layout, all to one scale.
func (s *svg) roofs(p *Plot) {
	const width, margin, head, foot = 1000.0, 46.0, 28.0, 30.0
	wide, deep := p.Roofs[0].Width.Float(), p.Roofs[0].Depth.Float()
	columns := 2
	switch aspect := wide / deep; {
	case len(p.Roofs) == 1 || aspect > 5:
		columns = 1
	case len(p.Roofs) > 2 && aspect < 1.2:
		columns = 3
	}
	cell := width / float64(columns)
	k := min((cell-margin-10)/wide, 500/deep) // picture units per unit of length
	high := head + deep*k + foot
	s.open(p, width, high*float64((len(p.Roofs)+columns-1)/columns))
	for i := range p.Roofs {
		s.roof(p, &p.Roofs[i], cell*float64(i%columns)+margin, high*float64(i/columns)+head, k)
	}
}

// roof draws one area with its top left corner at x, y and k picture units per unit of length.
func (s *svg) roof(p *Plot, r *Roof, x, y, k float64) {
	w, d := r.Width.Float()*k, r.Depth.Float()*k
	left, right, eaves, ridge := r.Left.Float()*k, r.Right.Float()*k, r.Eaves.Float()*k, r.Ridge.Float()*k
	s.words(x, y-9, "start", r.Caption, bold...)
	s.rect(x, y, w, d, "fill", roofPaint, "stroke", softInk, "stroke-width", 1.5)
	s.rect(x+left, y+ridge, w-left-right, d-eaves-ridge, "fill", "none", "stroke", softInk, "stroke-width", 1, "stroke-dasharray", "5 4")
	along, up, gap, rowGap := r.Along.Float()*k, r.Up.Float()*k, r.Gap.Float()*k, r.RowGap.Float()*k
	for row, n := range r.Counts {
		top := y + d - eaves - float64(row)*(up+rowGap) - up
		for c := range n {
			s.rect(x+left+float64(c)*(along+gap), top, along, up, "fill", hue(r.Option), "stroke", "#fff", "stroke-width", 0.5)
		}
	}
	s.words(x+w/2, y+d+19, "middle", withUnit(p.X.Ticks[1], p.X.Unit))
	s.upright(x-9, y+d/2, withUnit(p.Y.Ticks[1], p.Y.Unit))
}
