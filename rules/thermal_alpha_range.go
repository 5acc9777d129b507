package rules

import "pvtally/rules/envelope"

var thermalAlphaRange = &Rule{
	ID:      "thermal/alpha-range",
	Title:   "α(Isc) is what the cell technology gives",
	Why:     "How much the current gains per kelvin follows from how the gap narrows; sheets that print A/K as %/K, or slip a decimal, stand far outside.",
	Formula: "lo ≤ α(Isc) ≤ hi in %/K, by technology",
	Sources: []Source{envelopeSource},
	Grade:   rangeGrade,
	Needs:   []string{"thermal.alpha_isc"},
	Yields:  []string{"thermal/sign", "thermal/units-agree"},
	Check: func(p *Pass) {
		if len(p.coef) > 0 {
			p.coefficientRange(envelope.Alpha, &p.coef[0].Alpha, &p.stc[0].Isc, "α(Isc)")
		}
	},
}
