package rules

import (
	"pvtally/rules/envelope"
	"pvtally/schema"
)

// SeriesCells is the number of cells in series that the rules take for a count and a module's Voc in V: half cells stand in two parallel
// halves. It is 0 where the cell's cut leaves it open.
func SeriesCells(cell schema.Cell, count, voc float64) float64 {
	return seriesCells(count, cell, voc, envelope.For(cell.Technology)[envelope.VocCell])
}
