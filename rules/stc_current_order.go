package rules

var stcCurrentOrder = &Rule{
	ID:      "stc/current-order",
	Title:   "Imp lies below Isc",
	Why:     "Power is drawn at a current below the short circuit's; at Isc no voltage is left. Two values the other way round have changed places.",
	Formula: "Imp < Isc",
	Sources: []Source{{"Shape of the I-V curve, IEC TS 61836", "read"}},
	Levels:  []Threshold{{Error, "Imp is not below Isc"}},
	Needs:   []string{"models[].stc.imp_a", "models[].stc.isc_a"},
	Check: func(p *Pass) {
		for i := range p.stc {
			p.below(&p.stc[i].Imp, &p.stc[i].Isc)
		}
	},
}
