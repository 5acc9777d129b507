package rules

import (
	"fmt"

	"pvtally/rules/physics"
	"pvtally/schema/relate"
)

var rearBNPI = &Rule{
	ID:      "rear/bnpi",
	Title:   "the values at BNPI follow from STC and the bifaciality",
	Why:     "Bifacial nameplate irradiance is 1000 W/m2 in front and 135 W/m2 behind: the current grows by 0.135 φ, the power a little less because the larger current loses more in the series resistance.",
	Formula: "Isc(BNPI) = Isc (1 + 0.135 φ); Pmax(BNPI)/Pmax is 0 to 0.6 % below that ratio; voltages within 1 %",
	Sources: []Source{{"IEC 61215-1:2021 clause 3", "secondary"}, {"Single-diode model: Pmax(BNPI) 0.3 to 0.6 % below the current ratio", "calculated"}},
	Grade:   Grade{Of: "part of the gap that rounding and the bifaciality's tolerance cannot explain", Unit: "%", Note: 0.3, Warning: 1, Error: 4},
	Needs:   []string{"models[].bnpi", "models[].stc", "bifacial.factor_pct"},
	Check: func(p *Pass) {
		phi, ok := p.bifaciality()
		if !ok {
			return
		}
		factor := p.value(p.Sheet.Bifacial.Factor, "bifacial", "factor_pct", -1, -1)
		ratio := phi.Scale(physics.BNPIRear / physics.STCIrradiance).Add(relate.Exactly(1))
		for i := range p.Sheet.Models {
			e, s := p.electrical(&p.Sheet.Models[i].BNPI, "bnpi", i, -1), &p.stc[i]
			for _, c := range []struct {
				v, from *Value
				factor  relate.Interval
			}{
				{&e.Isc, &s.Isc, ratio.Inflate(0.005)}, {&e.Pmax, &s.Pmax, relate.Interval{Lo: ratio.Lo * 0.994, Hi: ratio.Hi}},
				{&e.Voc, &s.Voc, steady}, {&e.Vmp, &s.Vmp, steady},
			} {
				if !c.v.Printed() || !c.from.Printed() {
					continue
				}
				expected := c.from.Mul(c.factor)
				g := Compare(c.v, expected)
				if l := p.Grade(g.Pct); l != 0 {
					p.Report(l, apart(g, expected, fmt.Sprintf("%s %s at STC with bifaciality %s gives %s%s at BNPI, printed %s", c.from.Symbol(), c.from, factor, around(expected.Mid()), unitOf(c.v.at.name), c.v)), c.v, c.from, &factor)
				}
			}
		}
	},
}
