package extract

import (
	"pvtally/extract/label"
	"pvtally/extract/quantity"
)

// described reads what stands in a cell's own words, wherever it stands and whatever label is missing beside it: "60 mono PERC cells", "3.2 mm tempered
// glass", "4 mm² solar cable", "10 busbars". Such a claim gives way to any labelled one.
func (d *document) described() {
	for _, v := range d.views {
		for i := range v.cells {
			for k := range v.cells[i] {
				d.describedCell(&v.cells[i][k])
			}
		}
	}
}

func (d *document) describedCell(c *cell) {
	if len(c.quantities) == 0 || c.letters == 0 {
		return
	}
	whole := c.whole()
	for i, q := range c.quantities {
		end := len(c.text)
		if i+1 < len(c.quantities) {
			end = c.quantities[i+1].Start
		}
		after := label.Find(firstWords(c.text[q.End:end], 4))
		v := q.Terms[len(q.Terms)-1].Value
		integer := q.Shape == quantity.Single && v == float64(int(v)) && (q.Unit == quantity.None || q.Unit == quantity.Piece)
		switch {
		case integer && v >= fewCells && v <= mostCells && after.Any("cells", "halfcut") && !after.Any("celleff", "cellsize"):
			d.describe("/cell/count", c, q, quantity.None)
		case integer && v >= 2 && v <= 40 && after.Has("busbar"):
			d.describe("/cell/busbars", c, q, quantity.None)
		case q.Unit == quantity.MM && q.Shape == quantity.Single && v >= 1.5 && v <= 6 && (after.Has("glass") || label.Find(lastWords(c.text[:q.Start], 3)).Has("glass")) && !whole.Any("cell", "frame"):
			d.describe("/body/front_glass_mm", c, q, quantity.MM)
		case q.Unit == quantity.MM2 && whole.Any("cable"):
			d.describe("/body/cable_mm2", c, q, quantity.MM2)
		}
	}
}

func (d *document) describe(field string, c *cell, q quantity.Quantity, unit quantity.Unit) {
	if unit == quantity.None {
		unit = q.Unit
	}
	if k, ok := claimOf(field, c, c.text, q, len(q.Terms)-1, unit, loosely); ok {
		d.ledger.add(k)
	}
}
