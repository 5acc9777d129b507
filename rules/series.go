package rules

import (
	"math"

	"pvtally/rules/envelope"
	"pvtally/schema"
)

// SeriesCells is the number of cells in series that the rules take for a count and a module's Voc in V: half cells stand in two parallel
// halves. It is 0 where the cell's cut leaves it open.
func SeriesCells(cell schema.Cell, count, voc float64) float64 {
	return seriesCells(count, cell, voc, envelope.For(cell.Technology)[envelope.VocCell])
}

// KnownSizes are the outer sizes, length and width in mm, that are common for a number of series cells and a wafer's longer side in mm; 0 for
// any wafer (see body/format).
func KnownSizes(series, wafer float64) (sizes [][2]float64) {
	for _, f := range formats {
		if f.cells == series && (wafer == 0 || math.Abs(f.wafer-wafer) <= 1.5) {
			sizes = append(sizes, [2]float64{f.length, f.width})
		}
	}
	return sizes
}
