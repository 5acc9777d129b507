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
			var w worstGain
			for r := range p.Sheet.Models[i].RearGain {
				row := &p.Sheet.Models[i].RearGain[r]
				if gain := p.value(row.Gain, "rear_gain", "gain_pct", i, r); gain.Printed() {
					w.row(p.electrical(&row.Electrical, "rear_gain", i, r), &p.stc[i], relate.Exactly(1+gain.V/100), gain)
				}
			}
			w.report(p)
		}
	},
}

// worstGain keeps, for each quantity of a table under more light than STC, the row that lies farthest off: one cause, one finding.
type worstGain [6]struct {
	v, from, by Value
	expected    relate.Interval
	gap         relate.Gap
	rows        int
}

// steady is how far voltages may move under some tens of per cent more light.
var steady = relate.Interval{Lo: 0.99, Hi: 1.01}

// row compares a row with STC: the factor goes to power, currents and efficiency, not to the voltages. Currents may be off by a per cent:
// some tables give Isc what they give Pmax exactly.
func (w *worstGain) row(e Electrical, s *Electrical, factor relate.Interval, by Value) {
	for i, c := range [...]struct {
		v, from *Value
		factor  relate.Interval
	}{
		{&e.Pmax, &s.Pmax, factor}, {&e.Isc, &s.Isc, factor.Inflate(0.01)}, {&e.Imp, &s.Imp, factor.Inflate(0.01)},
		{&e.Voc, &s.Voc, steady}, {&e.Vmp, &s.Vmp, steady}, {&e.Efficiency, &s.Efficiency, factor},
	} {
		if !c.v.Printed() || !c.from.Printed() {
			continue
		}
		expected := c.from.Mul(c.factor)
		g := Compare(c.v, expected)
		if g.Holds() {
			continue
		}
		w[i].rows++
		if g.Pct > w[i].gap.Pct {
			w[i].v, w[i].from, w[i].by, w[i].expected, w[i].gap = *c.v, *c.from, by, expected, g
		}
	}
}

func (w *worstGain) report(p *Pass) {
	for i := range w {
		x := &w[i]
		l := p.Grade(x.gap.Pct)
		if l == 0 {
			continue
		}
		f := apart(x.gap, x.expected, fmt.Sprintf("%s %s at STC with %s %s gives %s%s, printed %s", x.from.Symbol(), x.from, x.by.Symbol(), x.by, around(x.expected.Mid()), unitOf(x.v.at.name), x.v))
		if x.rows > 1 {
			f.Message += fmt.Sprintf("; %d rows are off", x.rows)
		}
		p.Report(l, f, &x.v, &x.from, &x.by)
	}
}
