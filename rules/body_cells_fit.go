package rules

import (
	"fmt"

	"pvtally/schema/relate"
)

var bodyCellsFit = &Rule{
	ID:      "body/cells-fit",
	Title:   "the cells fit into the module and fill it",
	Why:     "Cells times their size is most of the module's area, and never more than it. Many sheets print the whole wafer's size for half cells: the rule takes series cells times the wafer then.",
	Formula: "0.83 ≤ cells × cell area / (length × width) ≤ 0.97; never above 1",
	Sources: []Source{{"Geometry of the common wafers (125 to 210 mm) in the common modules", "calculated"}},
	Levels:  []Threshold{{Note, "coverage outside 0.83 to 0.97"}, {Warning, "below 0.72"}, {Error, "above 1: the cells do not fit"}},
	Settings: []Setting{
		{"lowest", 0.83, "share of the area", "usual least coverage"},
		{"highest", 0.97, "share of the area", "usual greatest coverage"},
	},
	Needs:  []string{"cell.count", "cell.width_mm", "cell.height_mm", "body.length_mm", "body.width_mm"},
	Yields: []string{"body/sides", "stc/efficiency-area", "stc/cell-count"},
	Check: func(p *Pass) {
		w := p.wafer()
		if w.area == relate.All || p.area == relate.All || p.series <= 0 {
			return
		}
		coverage := w.area.Scale(p.series * 1e-6).Div(p.area)
		lo, hi := p.Setting("lowest"), p.Setting("highest")
		l, text := Note, "usual is"
		switch {
		case coverage.Lo > 1:
			l, text = Error, "they do not fit; usual is"
		case coverage.Hi < 0.72:
			l = Warning
		case coverage.Hi >= lo && coverage.Lo <= hi:
			return
		}
		p.Report(l, Finding{Message: fmt.Sprintf("%s wafers of %s × %s in %s × %s cover %s of the area, %s %s to %s", around(p.series), w.width, w.height, p.length, p.width, around(coverage.Mid()), text, around(lo), around(hi))},
			&w.width, &w.height, &p.count, &p.length, &p.width)
	},
}
