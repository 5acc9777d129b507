package rules

var nmotPredictedVoc, noctPredictedVoc = twice(Rule{
	ID:      "nmot/predicted-voc",
	Title:   "Voc at NMOT follows from STC and β",
	Why:     "Voc falls with the temperature by β and a little with the logarithm of the light.",
	Formula: "Voc(NMOT) = Voc (1 + β (T - 25)) + n Ns (kT/q) ln 0.8",
	Sources: []Source{
		{"IEC 60891:2009 procedure 2", "from memory"},
		{"148 tables of real sheets: within -1…+1 % for nine in ten", "calculated"},
	},
	Grade:   Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 1.3, Warning: 2, Error: 5},
	Needs:   []string{"models[].nmot.voc_v", "models[].stc.voc_v", "thermal.nmot_c or thermal.noct_c", "thermal.beta_voc"},
	Yields:  []string{"nmot/order", "nmot/copied"},
	Caution: voltageCaution,
}, func(p *Pass, o *operating) {
	if p.translate(o); o.Voc.Printed() {
		p.predicted(&o.Voc, &p.stc[o.i].Voc, o.voc, o, &p.coef[o.i].Beta.src)
	}
})
