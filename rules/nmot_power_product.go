package rules

var nmotPowerProduct, noctPowerProduct = twice(Rule{
	ID:      "nmot/power-product",
	Title:   "Pmax at NMOT is Vmp times Imp at NMOT",
	Why:     "The maximum-power point at NMOT is one point of one curve, as at STC.",
	Formula: "Pmax = Vmp × Imp, all at NMOT",
	Sources: []Source{{"Arithmetic; IEC 61215-2 for the condition", "secondary"}},
	Grade:   Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 0.05, Warning: 0.2, Error: 1},
	Needs:   []string{"models[].nmot.pmax_w", "models[].nmot.vmp_v", "models[].nmot.imp_a"},
	Yields:  []string{"nmot/order"},
}, func(p *Pass, o *operating) { p.product(&o.Electrical) })
