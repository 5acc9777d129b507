package extract

import (
	"slices"

	"pvtally/extract/label"
)

// dropRivals takes the values of other makers' modules out of a comparison: a column headed "typical PERC" beside the module's own.
func (v *view) dropRivals() {
	for i := range v.cells {
		for k := range v.cells[i] {
			head := &v.cells[i][k]
			if len(v.cells[i]) < 2 || len([]rune(head.text)) > 30 || head.isValue() || !label.Find(head.text).Has("standardmodule") {
				continue
			}
			base := head.base
			for _, r := range v.rows {
				if r.base <= head.base {
					continue
				}
				if r.base-base > headerReach*head.size {
					break
				}
				base = r.base
				if len(r.values) > 1 {
					r.values = slices.DeleteFunc(r.values, func(c *cell) bool {
						mid := (c.box.X0 + c.box.X1) / 2
						return nearest(v.cells[i], mid) == head
					})
				}
			}
		}
	}
}

func nearest(line []cell, x float64) *cell {
	cells := make([]*cell, len(line))
	for i := range line {
		cells[i] = &line[i]
	}
	return nearestCell(cells, x)
}
