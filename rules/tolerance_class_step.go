package rules

import (
	"fmt"
	"math"
)

var toleranceClassStep = &Rule{
	ID:      "tolerance/class-step",
	Title:   "the tolerance is not much wider than the step between classes",
	Why:     "Classes are sorted by power: a module within the tolerance of a class should not belong to one two classes away.",
	Formula: "plus + minus tolerance ≤ 2 × step between classes",
	Sources: []Source{{"Sorting into classes of 5 W with 0/+5 W", "common practice"}},
	Levels:  []Threshold{{Note, "the tolerance spans more than the settings' steps"}},
	Settings: []Setting{
		{"steps", 4, "class steps", "widest tolerance that is not noted: 0/+3 % of 400 W is 12 W, two and a half steps"},
	},
	Needs: []string{"tolerance.power_plus_w or power_plus_pct", "models[].stc.pmax_w of two classes or more"},
	Check: func(p *Pass) {
		if len(p.rank) < 2 {
			return
		}
		step := math.Inf(1)
		for r := 1; r < len(p.rank); r++ {
			if d := p.stc[p.rank[r]].Pmax.V - p.stc[p.rank[r-1]].Pmax.V; d > 0 {
				step = min(step, d)
			}
		}
		t := &p.Sheet.Tolerance
		plus, minus := p.value(t.PowerPlusW, "tolerance", "power_plus_w", -1, -1), p.value(t.PowerMinusW, "tolerance", "power_minus_w", -1, -1)
		width := plus.V + minus.V
		if !plus.Printed() && !minus.Printed() {
			plus, minus = p.value(t.PowerPlusPct, "tolerance", "power_plus_pct", -1, -1), p.value(t.PowerMinusPct, "tolerance", "power_minus_pct", -1, -1)
			width = (plus.V + minus.V) / 100 * p.stc[p.rank[0]].Pmax.V
		}
		if width > p.Setting("steps")*step {
			p.Report(Note, Finding{Message: fmt.Sprintf("the tolerance (%s) spans %s W, the classes are %s W apart", list([]*Value{&plus, &minus}), around(width), around(step))}, &plus, &minus)
		}
	},
}
