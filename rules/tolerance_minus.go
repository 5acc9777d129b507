package rules

import "fmt"

var toleranceMinus = &Rule{
	ID:      "tolerance/minus",
	Title:   "the power tolerance has no minus",
	Why:     "With a minus tolerance a module may be sold below its nominal power. It is lawful, and rare since sorting is positive; the buyer should know.",
	Formula: "minus tolerance = 0",
	Sources: []Source{{"Positive sorting as makers do it", "common practice"}},
	Levels:  []Threshold{{Note, "a minus tolerance is printed"}, {Warning, "it exceeds 5 %"}},
	Needs:   []string{"tolerance.power_minus_w or tolerance.power_minus_pct"},
	Check: func(p *Pass) {
		t := &p.Sheet.Tolerance
		watts, share := p.value(t.PowerMinusW, "tolerance", "power_minus_w", -1, -1), p.value(t.PowerMinusPct, "tolerance", "power_minus_pct", -1, -1)
		for _, v := range []*Value{&watts, &share} {
			if !v.Printed() || v.V == 0 {
				continue
			}
			l := Note
			if pct := v.V; v == &share && pct > 5 || v == &watts && len(p.stc) > 0 && p.stc[0].Pmax.V > 0 && 100*v.V/p.stc[0].Pmax.V > 5 {
				l = Warning
			}
			p.Report(l, Finding{Message: fmt.Sprintf("the power may lie %s below its nominal value", v)}, v)
		}
	},
}
