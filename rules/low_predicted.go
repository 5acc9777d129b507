package rules

import (
	"fmt"

	"pvtally/rules/physics"
	"pvtally/schema/relate"
)

var lowPredicted = &Rule{
	ID:      "low/predicted",
	Title:   "the values in low light follow from those at STC",
	Why:     "Isc goes with the light, Voc with its logarithm, and the single-diode model through the STC values says what the power becomes.",
	Formula: "Isc(G) = Isc G/1000; Voc(G) = Voc + n Ns (kT/q) ln(G/1000); Pmax(G) of the fitted single-diode model",
	Sources: []Source{
		{"De Soto, Klein, Beckman, Solar Energy 80 (2006) 78, DOI 10.1016/j.solener.2005.06.010", "secondary"},
		{"IEC 61215-2 MQT 07, low irradiance 200 W/m2 at 25 °C", "from memory"},
	},
	Grade: Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 2, Warning: 5, Error: 15},
	Needs: []string{"models[].low", "models[].stc"},
	Check: func(p *Pass) {
		for i := range p.Sheet.Models {
			m := &p.Sheet.Models[i]
			g := p.value(m.Low.Irradiance, "low", "irradiance_w_m2", i, -1)
			if !g.Printed() || g.V <= 0 || g.V >= physics.STCIrradiance {
				continue
			}
			e, s := p.electrical(&m.Low.Electrical, "low", i, -1), &p.stc[i]
			share := g.Scale(1 / physics.STCIrradiance)
			if s.Isc.Printed() {
				p.inLowLight(&e.Isc, &s.Isc, s.Isc.Mul(share), &g)
			}
			if fit, ok, _ := p.Fit(i); ok {
				gap, _ := gapOf(p.Sheet.Cell.Technology)
				low := fit.At(g.V, physics.STCTemperature, 0, gap)
				p.inLowLight(&e.Voc, &s.Voc, relate.Exactly(low.Voc()), &g)
				p.inLowLight(&e.Pmax, &s.Pmax, relate.Exactly(low.MPP().Power()).Hull(s.Pmax.Mul(share).Scale(0.97)), &g)
			} else if s.Pmax.Printed() {
				p.inLowLight(&e.Pmax, &s.Pmax, s.Pmax.Mul(share).Mul(relate.Interval{Lo: 0.93, Hi: 1}), &g)
			}
		}
	},
}

func (p *Pass) inLowLight(v, from *Value, expected relate.Interval, g *Value) {
	if !v.Printed() || !from.Printed() {
		return
	}
	gap := Compare(v, expected)
	if l := p.Grade(gap.Pct); l != 0 {
		p.Report(l, apart(gap, expected, fmt.Sprintf("%s %s at STC gives %s%s at %s, printed %s", v.Symbol(), from, around(expected.Mid()), unitOf(v.at.name), g, v)), v, from, g)
	}
}
