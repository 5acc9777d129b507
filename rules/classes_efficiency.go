package rules

import (
	"fmt"
	"math"

	"pvtally/schema/relate"
)

var classesEfficiency = &Rule{
	ID:       "classes/efficiency",
	Title:    "the efficiency grows with the nominal power in every class alike",
	Why:      "All classes share one area, so efficiency over Pmax is one number, whatever the area. A class that breaks it has a digit wrong, though its efficiency by itself would pass for rounding.",
	Formula:  "efficiency(k) / Pmax(k) is the same for all classes, to the rounding of the efficiency",
	Sources:  []Source{{"Arithmetic; the habit of the sheet itself", "calculated"}},
	Grade:    Grade{Of: "distance from the nearest value that the other classes allow", Unit: "printed units", Note: 0.05, Warning: 0.15, Error: Never},
	Settings: []Setting{{"least_pct", 0.05, "%", "distance below which a finding is a note: some sheets round to one decimal and print two"}},
	Needs:    []string{"models[].stc.efficiency_pct, pmax_w of three classes or more"},
	Yields:   []string{"stc/efficiency-area", "classes/name-power", "classes/monotone", "classes/slipped-row"},
	Check: func(p *Pass) {
		if len(p.stc) < 3 {
			return
		}
		for i := range p.stc {
			e := &p.stc[i]
			if !e.Efficiency.Printed() || !e.Pmax.Printed() || e.Pmax.V <= 0 {
				return
			}
		}
		// the one class without which the others agree on an area
		worst, beyond, shared := -1, 0.0, relate.All
		for k := range p.stc {
			others := relate.All
			for i := range p.stc {
				if i != k {
					others = meet(others, p.stc[i].Efficiency.Scale(1/p.stc[i].Pmax.V))
				}
			}
			if others.Lo > others.Hi {
				continue
			}
			e := &p.stc[k]
			if b := e.Efficiency.Gap(others.Scale(e.Pmax.V)) / (2 * e.Efficiency.Half()); b > beyond {
				worst, beyond, shared = k, b, others.Scale(e.Pmax.V)
			}
		}
		if worst < 0 {
			return
		}
		v := &p.stc[worst].Efficiency
		l := p.Grade(beyond)
		if l > Note && 200*beyond*v.Half() < p.Setting("least_pct")*v.V {
			l = Note
		}
		p.Report(l, Finding{
			Message: fmt.Sprintf("efficiency %s: the other classes' efficiencies over their powers put this one between %s and %s %%", v, around(shared.Lo), around(shared.Hi)),
			Implied: span(shared),
		}, v, &p.stc[worst].Pmax)
	},
}

// meet is the part two intervals share; its ends stand the wrong way round where there is none.
func meet(a, b relate.Interval) relate.Interval {
	return relate.Interval{Lo: math.Max(a.Lo, b.Lo), Hi: math.Min(a.Hi, b.Hi)}
}
