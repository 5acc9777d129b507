package rules

import "pvtally/rules/envelope"

var stcVoltageRatio = &Rule{
	ID:      "stc/voltage-ratio",
	Title:   "Vmp/Voc is what the cell technology gives",
	Why:     "The knee of a cell's curve lies at a share of Voc that its technology narrowly sets; a ratio far outside means that one of the two voltages is misprinted.",
	Formula: "lo ≤ Vmp / Voc ≤ hi, by technology",
	Sources: []Source{envelopeSource},
	Grade:   rangeGrade,
	Needs:   []string{"models[].stc.vmp_v", "models[].stc.voc_v"},
	Yields:  []string{"stc/voltage-order", "stc/five-parameter", "stc/power-product", "classes/slipped-row"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		for i := range p.stc {
			if e := &p.stc[i]; e.Vmp.Printed() && e.Voc.Printed() {
				p.inRange(envelope.VmpVoc, e.Vmp.Div(e.Voc.Interval), "Vmp / Voc", "", &e.Voc, &e.Vmp)
			}
		}
	},
}
