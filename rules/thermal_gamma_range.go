package rules

import "pvtally/rules/envelope"

var thermalGammaRange = &Rule{
	ID:      "thermal/gamma-range",
	Title:   "γ(Pmax) is what the cell technology gives",
	Why:     "How fast the power falls per kelvin is the sum of what voltage, current and fill factor do; it is narrow for each technology.",
	Formula: "lo ≤ γ(Pmax) ≤ hi in %/K, by technology",
	Sources: []Source{envelopeSource},
	Grade:   rangeGrade,
	Needs:   []string{"thermal.gamma_pmax"},
	Yields:  []string{"thermal/sign", "thermal/units-agree"},
	Check: func(p *Pass) {
		if len(p.coef) > 0 {
			p.coefficientRange(envelope.Gamma, &p.coef[0].Gamma, &p.stc[0].Pmax, "γ(Pmax)")
		}
	},
}
