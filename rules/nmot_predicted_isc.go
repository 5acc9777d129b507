package rules

var nmotPredictedIsc, noctPredictedIsc = twice(Rule{
	ID:      "nmot/predicted-isc",
	Title:   "Isc at NMOT follows from STC and α",
	Why:     "Isc goes with the light: 800 of 1000 W/m2, and a little more for the warmer cell.",
	Formula: "Isc(NMOT) = 0.8 Isc (1 + α (T - 25))",
	Sources: []Source{
		{"IEC 60891, coefficient form", "from memory"},
		{"148 tables of real sheets: within -1.3…+1.5 % for nine in ten", "calculated"},
	},
	Grade:  Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 1.2, Warning: 2.5, Error: 6},
	Needs:  []string{"models[].nmot.isc_a", "models[].stc.isc_a", "thermal.nmot_c or thermal.noct_c"},
	Yields: []string{"nmot/order", "nmot/copied"},
}, func(p *Pass, o *operating) {
	if p.translate(o); o.Isc.Printed() {
		p.predicted(&o.Isc, &p.stc[o.i].Isc, o.isc, o, &p.coef[o.i].Alpha.src)
	}
})
