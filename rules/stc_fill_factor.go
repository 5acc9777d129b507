package rules

import "pvtally/rules/envelope"

var stcFillFactor = &Rule{
	ID:      "stc/fill-factor",
	Title:   "the fill factor is what the cell technology gives",
	Why:     "The fill factor measures how square the curve is. Production keeps it in a narrow band; outside of it Pmax, Voc or Isc is misprinted.",
	Formula: "FF = Pmax / (Voc × Isc), lo ≤ FF ≤ hi, by technology",
	Sources: []Source{envelopeSource},
	Grade:   rangeGrade,
	Needs:   []string{"models[].stc.pmax_w", "models[].stc.voc_v", "models[].stc.isc_a"},
	Yields:  []string{"stc/voltage-order", "stc/current-order", "stc/voltage-ratio", "stc/current-ratio", "stc/fill-factor-limit", "stc/power-product", "classes/name-power"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		for i := range p.stc {
			if e := &p.stc[i]; e.Pmax.Printed() && e.Voc.Printed() && e.Isc.Printed() {
				p.inRange(envelope.FillFactor, e.Pmax.Div(e.Voc.Mul(e.Isc.Interval)), "fill factor Pmax / (Voc × Isc)", "", &e.Pmax, &e.Voc, &e.Isc)
			}
		}
	},
}
