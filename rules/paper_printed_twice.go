package rules

import "fmt"

var paperPrintedTwice = &Rule{
	ID:      "paper/printed-twice",
	Title:   "a quantity printed twice has one value",
	Why:     "Front page, table and drawing repeat the same quantity. Where they differ, one of them was not revised.",
	Formula: "value here = value there, to the rounding of the coarser",
	Sources: []Source{{"One sheet, one module", "common practice"}},
	Grade:   Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 0, Warning: 0.5, Error: 10},
	Needs:   []string{"also[] in the record's own unit"},
	Check: func(p *Pass) {
		p.agains(func(a *again) {
			if a.converted {
				return
			}
			g := Compare(&a.first, a.interval)
			where := ""
			if a.second.Page > 0 {
				where = fmt.Sprintf(" on page %d", a.second.Page)
			}
			p.Report(p.Grade(g.Pct), apart(g, a.interval, fmt.Sprintf("%s is %s, and%s again %q", a.first.Symbol(), a.first, where, a.second.Printed)), &a.first)
		})
	},
}
