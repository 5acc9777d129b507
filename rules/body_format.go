package rules

import (
	"fmt"
	"math"
)

// formats are outer sizes that are common for a count of series cells and a wafer, mm.
var formats = []struct{ cells, wafer, length, width float64 }{
	{60, 156.75, 1650, 992}, {60, 156, 1640, 992}, {72, 156.75, 1956, 992}, {60, 158.75, 1684, 1002}, {72, 158.75, 2008, 1002},
	{60, 166, 1755, 1038}, {72, 166, 2094, 1038}, {54, 182, 1722, 1134}, {60, 182, 1908, 1134}, {66, 182, 2094, 1134}, {72, 182, 2278, 1134}, {78, 182, 2465, 1134},
	{48, 210, 1754, 1096}, {54, 210, 1961, 1134}, {60, 210, 2172, 1303}, {66, 210, 2384, 1303}, {66, 182, 2382, 1134},
}

var bodyFormat = &Rule{
	ID:      "body/format",
	Title:   "the outer size is one of those known for the count and size of cells",
	Why:     "Makers agree on sizes. A size far from every known one for these cells is worth a look: it may be another format's.",
	Formula: "|length - known| ≤ 40 mm and |width - known| ≤ 25 mm for some known format of the count and wafer",
	Sources: []Source{{"Sizes seen in the California Energy Commission's list and the makers' agreements of 2020 to 2023", "from memory"}},
	Levels:  []Threshold{{Note, "no known format of this count and wafer is near"}},
	Settings: []Setting{
		{"length_within", 40, "mm", "how near a known length must be"},
		{"width_within", 25, "mm", "how near a known width must be"},
	},
	Needs:  []string{"body.length_mm", "body.width_mm", "cell.count", "cell.width_mm", "cell.height_mm"},
	Yields: []string{"body/sides", "body/cells-fit", "stc/efficiency-area"},
	Check: func(p *Pass) {
		if !p.length.Printed() || !p.width.Printed() || p.series <= 0 {
			return
		}
		w := p.wafer()
		side := max(w.width.V, w.height.V)
		known := false
		for _, f := range formats {
			if f.cells != p.series || math.Abs(f.wafer-side) > 1.5 {
				continue
			}
			known = true
			if math.Abs(p.length.V-f.length) <= p.Setting("length_within") && math.Abs(p.width.V-f.width) <= p.Setting("width_within") {
				return
			}
		}
		if known {
			p.Report(Note, Finding{Message: fmt.Sprintf("%s × %s is no known format for %s series cells of %s mm", p.length, p.width, around(p.series), around(side))}, &p.length, &p.width, &p.count)
		}
	},
}
