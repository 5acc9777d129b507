package rules

import (
	"fmt"

	"pvtally/rules/physics"
	"pvtally/schema/relate"
)

var stcPTCPower = &Rule{
	ID:      "stc/ptc-power",
	Title:   "PTC power follows from Pmax, γ, NOCT and efficiency",
	Why:     "The Californian rating at 1000 W/m2, 20 °C ambient and 1 m/s wind is calculated, not measured: it must follow from the values it is calculated from.",
	Formula: "PTC = Pmax (1 + γ (Tc - 25)), Tc = 20 + 1.25 (NOCT - 20)(1 - efficiency/0.9)",
	Sources: []Source{{"Identity of the California Energy Commission's list, edition 2021-12: residual -0.5 to +0.2 % for 99 % of silicon modules", "calculated"}},
	Grade:   Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 0.3, Warning: 0.6, Error: 3},
	Needs:   []string{"models[].ptc_w", "models[].stc.pmax_w", "models[].stc.efficiency_pct", "thermal.gamma_pmax", "thermal.noct_c"},
	Check: func(p *Pass) {
		noct := p.value(p.Sheet.Thermal.NOCT, "thermal", "noct_c", -1, -1)
		for i := range p.stc {
			e, g := &p.stc[i], &p.coef[i].Gamma
			ptc := p.value(p.Sheet.Models[i].PTC, "", "ptc_w", i, -1)
			if !ptc.Printed() || !e.Pmax.Printed() || !e.Efficiency.Printed() || !g.Known() || !noct.Printed() {
				continue
			}
			eta := e.Efficiency.V / 100
			ratio := relate.Exactly(physics.PTCRatio(g.Lo/100, noct.Hi, eta)).Hull(relate.Exactly(physics.PTCRatio(g.Hi/100, noct.Lo, eta)))
			expected := e.Pmax.Mul(ratio)
			gap := Compare(&ptc, expected)
			p.Report(p.Grade(gap.Pct), apart(gap, expected, fmt.Sprintf("PTC power from Pmax %s, γ %s, NOCT %s is %s W, printed %s", e.Pmax, g.src, noct, around(expected.Mid()), ptc)), &ptc, &e.Pmax, &g.src, &noct)
		}
	},
}
