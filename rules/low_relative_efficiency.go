package rules

import "fmt"

var lowRelativeEfficiency = &Rule{
	ID:      "low/relative-efficiency",
	Title:   "the efficiency kept at 200 W/m2 lies between 90 and 100 %",
	Why:     "In low light the voltage falls with the logarithm of the light and shunts weigh more: silicon keeps 95 to 98 % of its efficiency. More than 100 % is not a loss; less than 90 % is a loss printed as a share, or a bad module.",
	Formula: "90 ≤ relative efficiency at 200 W/m2 ≤ 100 %",
	Sources: []Source{{"Single-diode model: 98.7 % for a sound 60-cell module", "calculated"}, {"Sheets claim 95 to 98 %", "from memory"}},
	Levels:  []Threshold{{Warning, "outside 90 to 100 %"}, {Error, "below 60 %: the loss stands in the place of what is kept"}},
	Needs:   []string{"low_light.relative_efficiency_pct"},
	Check: func(p *Pass) {
		v := p.value(p.Sheet.LowLight.RelativeEfficiency, "low_light", "relative_efficiency_pct", -1, -1)
		if !v.Printed() || v.Hi >= 90 && v.Lo <= 100 {
			return
		}
		l := Warning
		if v.V < 60 {
			l = Error
		}
		p.Report(l, Finding{Message: fmt.Sprintf("relative efficiency in low light %s, usual is 90 to 100 %%", v), Implied: []string{"90", "100"}}, &v)
	},
}
