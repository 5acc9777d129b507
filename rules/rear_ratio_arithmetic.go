package rules

import "pvtally/schema/relate"

var rearRatioArithmetic = &Rule{
	ID:      "rear/ratio-arithmetic",
	Title:   "power at a rear irradiance ratio is Pmax raised by ratio times bifaciality",
	Why:     "A rear-to-front irradiance ratio is not yet a gain: of 10 % light on the rear a module of 80 % bifaciality makes 8 %. A table that raises the power by the whole ratio has taken one for the other.",
	Formula: "Pmax(r) = Pmax (1 + r φ); Isc(r) ≈ Isc (1 + r φ); voltages within 1 %",
	Sources: []Source{{"IEC TS 60904-1-2, equivalent irradiance", "from memory"}},
	Grade:   Grade{Of: "part of the gap that rounding and the bifaciality's tolerance cannot explain", Unit: "%", Note: 0.3, Warning: 1, Error: 4},
	Needs:   []string{"models[].rear_ratio", "models[].stc", "bifacial.factor_pct"},
	Check: func(p *Pass) {
		phi, ok := p.bifaciality()
		if !ok {
			return
		}
		for i := range p.Sheet.Models {
			var w worstGain
			for r := range p.Sheet.Models[i].RearRatio {
				row := &p.Sheet.Models[i].RearRatio[r]
				if ratio := p.value(row.Ratio, "rear_ratio", "ratio_pct", i, r); ratio.Printed() {
					w.row(p.electrical(&row.Electrical, "rear_ratio", i, r), &p.stc[i], phi.Scale(ratio.V/100).Add(relate.Exactly(1)), ratio)
				}
			}
			w.report(p)
		}
	},
}

// bifaciality is φ as a share, with the printed tolerance.
func (p *Pass) bifaciality() (phi relate.Interval, ok bool) {
	b := &p.Sheet.Bifacial
	v := p.value(b.Factor, "bifacial", "factor_pct", -1, -1)
	if !v.Printed() {
		return relate.All, false
	}
	return v.Inflate(b.FactorTolerance.Float()).Scale(0.01), true
}
