package rules

import (
	"fmt"

	"pvtally/schema/relate"
)

// bifacialityOf is the usual bifaciality of Pmax by technology, per cent.
func bifacialityOf(technology string) relate.Interval {
	switch technology {
	case "mono-perc", "multi-perc":
		return relate.Interval{Lo: 60, Hi: 80}
	case "topcon":
		return relate.Interval{Lo: 70, Hi: 90}
	case "hjt":
		return relate.Interval{Lo: 80, Hi: 97}
	case "ibc":
		return relate.Interval{Lo: 50, Hi: 85}
	}
	return relate.Interval{Lo: 50, Hi: 97}
}

var rearFactorRange = &Rule{
	ID:      "rear/factor-range",
	Title:   "the bifaciality is what the cell technology gives",
	Why:     "How much of the front's power the rear gives follows from the rear's contacts: PERC about 70 %, TOPCon 80 %, heterojunction 90 %. A gain or a ratio printed as bifaciality stands far outside.",
	Formula: "lo ≤ φ ≤ hi: PERC 60…80, TOPCon 70…90, heterojunction 80…97, back contact 50…85, others 50…97 %",
	Sources: []Source{{"Typical bifacialities of the trade, each side widened by 5 points", "from memory"}, {"IEC TS 60904-1-2 for the definition", "from memory"}},
	Grade:   Grade{Of: "distance outside the range", Unit: "points", Note: 0, Warning: 5, Error: 40},
	Needs:   []string{"bifacial.factor_pct"},
	Check: func(p *Pass) {
		v := p.value(p.Sheet.Bifacial.Factor, "bifacial", "factor_pct", -1, -1)
		if !v.Printed() {
			return
		}
		r := bifacialityOf(p.Sheet.Cell.Technology)
		gap := v.Gap(r)
		if gap == 0 {
			return
		}
		l := p.Grade(gap)
		if v.Lo > 100 {
			l = max(l, Warning)
		}
		p.Report(l, Finding{Message: fmt.Sprintf("bifaciality %s, usual is %s to %s %%", v, around(r.Lo), around(r.Hi)), Implied: span(r)}, &v)
	},
}
