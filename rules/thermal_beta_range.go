package rules

import "pvtally/rules/envelope"

var thermalBetaRange = &Rule{
	ID:      "thermal/beta-range",
	Title:   "β(Voc) is what the cell technology gives",
	Why:     "How fast the voltage falls per kelvin follows from the voltage of the junction; sheets that print V/K or mV/K as %/K stand far outside.",
	Formula: "lo ≤ β(Voc) ≤ hi in %/K, by technology",
	Sources: []Source{envelopeSource},
	Grade:   rangeGrade,
	Needs:   []string{"thermal.beta_voc"},
	Yields:  []string{"thermal/sign", "thermal/units-agree"},
	Check: func(p *Pass) {
		if len(p.coef) > 0 {
			p.coefficientRange(envelope.Beta, &p.coef[0].Beta, &p.stc[0].Voc, "β(Voc)")
		}
	},
}
