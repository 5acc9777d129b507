package rules

import (
	"fmt"
	"math"

	"pvtally/rules/envelope"
	"pvtally/rules/physics"
	"pvtally/schema/relate"
)

// seriesCounts are the counts of series cells that silicon modules have (half cells counted in pairs).
var seriesCounts = [...]float64{36, 40, 44, 48, 50, 54, 60, 66, 72, 78, 80, 84, 88, 96, 110, 120, 128}

var stcCellCount = &Rule{
	ID:    "stc/cell-count",
	Title: "the count of cells suits voltage, current and area together",
	Why: "A wrong count moves Voc per cell one way and the current density the other way, while the efficiency stays: the three drift apart as no real module's do. " +
		"The printed count is weighed against every usual one by how far each leaves the module from the lab-rated ones of its efficiency.",
	Formula: "D²(n) of (ln Voc/n, ln Isc n/area, β Voc/n - theory) given ln efficiency; D²(printed) - D²(best other) small",
	Sources: []Source{{"Mahalanobis distance in the California Energy Commission's list, edition 2019-03; coefficients in rules/envelope/likeness.csv", "calculated"}},
	Grade:   Grade{Of: "difference of the squared distances", Unit: "(twice a log likelihood ratio)", Note: Never, Warning: 25, Error: 150},
	Settings: []Setting{
		{"printed_beyond", 30, "squared distance", "how badly the printed count must fit to be questioned"},
		{"other_within", 25, "squared distance", "how well the other count must fit to be named"},
	},
	Needs:  []string{"cell.count", "cell.technology", "body.length_mm", "body.width_mm", "models[].stc.pmax_w", "models[].stc.voc_v", "models[].stc.isc_a"},
	Yields: []string{"stc/efficiency-area", "body/sides"},
	Check: func(p *Pass) {
		like := envelope.LikenessOf(p.Sheet.Cell.Technology)
		if like == nil || p.series <= 0 || p.area == relate.All || len(p.stc) == 0 {
			return
		}
		i := p.rank[len(p.rank)/2]
		e, c := &p.stc[i], &p.coef[i]
		if !e.Pmax.Printed() || !e.Voc.Printed() || !e.Isc.Printed() {
			return
		}
		efficiency := e.Pmax.V / p.area.Mid() / 10
		distance := func(n float64) float64 {
			cell, theory := e.Voc.V/n, math.NaN()
			if c.Beta.Known() {
				theory = 1000 * (c.Beta.V/100*cell - physics.SiliconVocSlope(cell))
			}
			return like.Distance(efficiency, cell, e.Isc.V*n/p.area.Mid()/10, theory)
		}
		printed := distance(p.series)
		if math.IsNaN(printed) || printed < p.Setting("printed_beyond") {
			return
		}
		best, other := math.Inf(1), 0.0
		for _, n := range seriesCounts {
			if d := distance(n); d < best {
				best, other = d, n
			}
		}
		if other == p.series || best > p.Setting("other_within") {
			return
		}
		l := p.Grade(printed - best)
		if cell := p.vocCell(i); l != 0 && cell.Lo > physics.SiliconMaxVoc {
			l = Error // no junction has that voltage, and another count explains it
		}
		p.Report(l, Finding{
			Message: fmt.Sprintf("Voc %s, Isc %s and %s × %s do not suit %s cells in series (%s V per cell, %s mA/cm2); %s in series would be like other modules (%s V, %s mA/cm2)",
				e.Voc, e.Isc, p.length, p.width, around(p.series), around(e.Voc.V/p.series), around(e.Isc.V*p.series/p.area.Mid()/10), around(other), around(e.Voc.V/other), around(e.Isc.V*other/p.area.Mid()/10)),
			Implied: []string{around(other * p.count.V / p.series)},
		}, &p.count, &e.Voc, &e.Isc, &p.length, &p.width)
	},
}
