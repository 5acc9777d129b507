package rules

import (
	"fmt"
	"strings"

	"pvtally/schema/relate"
)

var nmotPredictedPower, noctPredictedPower = twice(Rule{
	ID:    "nmot/predicted-power",
	Title: "Pmax at NMOT follows from STC and γ",
	Why: "Less light and warmer cells lower the power by what the sheet's own coefficient says. The single-diode model through the sheet's values gives the same within a per cent or two. " +
		"Where the sheet has a NOCT temperature only, that one is used.",
	Formula: "Pmax(NMOT) = 0.8 Pmax (1 + γ (T - 25)), or the fitted single-diode model at 800 W/m2 and T",
	Sources: []Source{
		{"IEC 60891, coefficient form; De Soto et al. 2006, DOI 10.1016/j.solener.2005.06.010", "secondary"},
		{"148 tables of real sheets: within -1.6…+1.6 % for nine in ten", "calculated"},
	},
	Grade:   Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 1.2, Warning: 2.5, Error: 6},
	Needs:   []string{"models[].nmot.pmax_w", "models[].stc.pmax_w", "thermal.nmot_c or thermal.noct_c", "thermal.gamma_pmax"},
	Yields:  []string{"nmot/order", "nmot/copied", "nmot/power-product"},
	Caution: "",
}, func(p *Pass, o *operating) {
	if p.translate(o); o.Pmax.Printed() {
		p.predicted(&o.Pmax, &p.stc[o.i].Pmax, o.pmax, o, &p.coef[o.i].Gamma.src)
	}
})

// predicted compares a value at an operating condition with its translation.
func (p *Pass) predicted(v, from *Value, expected relate.Interval, o *operating, coefficient *Value) {
	if expected == relate.All {
		return
	}
	g := Compare(v, expected)
	l := p.Grade(g.Pct)
	if l == 0 {
		return
	}
	by := ""
	if coefficient.Printed() {
		by = " and " + coefficient.Symbol() + " " + coefficient.String()
	}
	text := fmt.Sprintf("%s %s at STC gives %s%s at 800 W/m2 and %s %s%s, printed %s", v.Symbol(), from, around(expected.Mid()), unitOf(v.at.name), o.temperature.Symbol(), o.temperature, by, v)
	p.Report(l, apart(g, expected, text), v, from, &o.temperature, coefficient)
}

// upper is the first name that is there, as the trade writes it.
func upper(groups ...string) string {
	for _, g := range groups {
		if g != "" {
			return strings.ToUpper(g)
		}
	}
	return ""
}
