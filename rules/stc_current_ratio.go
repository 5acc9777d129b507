package rules

import "pvtally/rules/envelope"

var stcCurrentRatio = &Rule{
	ID:      "stc/current-ratio",
	Title:   "Imp/Isc is what the cell technology gives",
	Why:     "The knee of a cell's curve lies at a share of Isc that its technology narrowly sets; a ratio far outside means that one of the two currents is misprinted.",
	Formula: "lo ≤ Imp / Isc ≤ hi, by technology",
	Sources: []Source{envelopeSource},
	Grade:   rangeGrade,
	Needs:   []string{"models[].stc.imp_a", "models[].stc.isc_a"},
	Yields:  []string{"stc/current-order", "stc/five-parameter", "stc/power-product", "classes/slipped-row"},
	Check: func(p *Pass) {
		for i := range p.stc {
			if e := &p.stc[i]; e.Imp.Printed() && e.Isc.Printed() {
				p.inRange(envelope.ImpIsc, e.Imp.Div(e.Isc.Interval), "Imp / Isc", "", &e.Isc, &e.Imp)
			}
		}
	},
}
