package rules

import (
	"fmt"

	"pvtally/schema/relate"
)

var rearGainArithmetic = &Rule{
	ID:    "rear/gain-arithmetic",
	Title: "power with a rear side gain is Pmax raised by the gain",
	Why: "The gain table only multiplies: with 10 % gain the power is 1.1 times Pmax. The light adds current, so the currents carry the gain; the voltages hardly move. " +
		"A Pmax that grows more than Isc, or a voltage that rises with the gain, is another column's.",
	Formula: "Pmax(g) = Pmax (1 + g); Isc(g) ≈ Isc (1 + g); Voc(g), Vmp(g) within 1 % of STC; efficiency(g) = efficiency (1 + g)",
	Sources: []Source{{"Arithmetic of the table's heading", "common practice"}, {"Single-diode model: Vmp changes by less than 0.5 % for 10 % more light", "calculated"}},
	Grade:   Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 0.3, Warning: 1, Error: 4},
	Needs:   []string{"models[].rear_gain", "models[].stc"},
	Check: func(p *Pass) {
		for i := range p.Sheet.Models {
			s := &p.stc[i]
			for r := range p.Sheet.Models[i].RearGain {
				row := &p.Sheet.Models[i].RearGain[r]
				gain := p.value(row.Gain, "rear_gain", "gain_pct", i, r)
				if !gain.Printed() {
					continue
				}
				e := p.electrical(&row.Electrical, "rear_gain", i, r)
				p.gained(&e, s, relate.Exactly(1+gain.V/100), &gain)
			}
		}
	},
}

// gained compares a block under more light than STC with STC's: the factor goes to power, current and efficiency, not to the voltages.
// Some tables leave out a per cent of the power for the warmer cell, some add to Isc what they add to Pmax exactly.
func (p *Pass) gained(e, s *Electrical, factor relate.Interval, by *Value) {
	one := relate.Interval{Lo: 0.99, Hi: 1.01}
	for _, c := range []struct {
		v, from *Value
		factor  relate.Interval
	}{
		{&e.Pmax, &s.Pmax, factor}, {&e.Isc, &s.Isc, factor.Inflate(0.01)}, {&e.Imp, &s.Imp, factor.Inflate(0.01)},
		{&e.Voc, &s.Voc, one}, {&e.Vmp, &s.Vmp, one}, {&e.Efficiency, &s.Efficiency, factor},
	} {
		if !c.v.Printed() || !c.from.Printed() {
			continue
		}
		expected := c.from.Mul(c.factor)
		g := Compare(c.v, expected)
		if l := p.Grade(g.Pct); l != 0 {
			p.Report(l, apart(g, expected, fmt.Sprintf("%s %s at STC with %s %s gives %s%s, printed %s", c.from.Symbol(), c.from, by.Symbol(), by, around(expected.Mid()), unitOf(c.v.at.name), c.v)), c.v, c.from, by)
		}
	}
}
