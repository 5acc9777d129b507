package extract

import (
	"regexp"
	"slices"
	"strconv"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
)

// cellsFact reads a row about the cells: their count, arrangement, size.
func cellsFact(d *document, r *row) {
	if r.found.Any("pallet", "packing", "storage", "celltemp", "celleff") {
		return
	}
	for _, c := range r.values {
		if d.stringsOf(r, c) || slices.ContainsFunc(c.quantities, func(q quantity.Quantity) bool { return q.Unit == quantity.W }) {
			continue
		}
		counts := 0
		for i, q := range c.quantities {
			end := len(c.text)
			if i+1 < len(c.quantities) {
				end = c.quantities[i+1].Start
			}
			d.cellQuantity(r, c, q, label.Find(c.text[q.End:end]), counts)
			if q.Unit != quantity.MM && q.Unit != quantity.Inch {
				counts++
			}
		}
	}
}

// A module's cells, from a portable one's to those of a module of shingled cells; fewer are busbars or strings.
const (
	fewCells  = 20
	mostCells = 450
)

// cellQuantity reads one quantity of a row about cells; i is how many stand before it that are no lengths.
func (d *document) cellQuantity(r *row, c *cell, q quantity.Quantity, after label.Found, i int) {
	a := q.Terms[0].Value
	switch q.Shape {
	case quantity.Product:
		if q.Unit == quantity.MM || len(q.Terms) == 2 && a >= 60 && q.Terms[1].Value >= 25 && q.Unit == quantity.None {
			d.cellSides(r, c, q)
			return
		}
		if q.Unit != quantity.None && q.Unit != quantity.Piece {
			return
		}
		d.arrangement(r, c, q)
	case quantity.Single:
		whole := a == float64(int(a))
		switch {
		case whole && a >= fewCells && a <= mostCells && (q.Unit == quantity.None || q.Unit == quantity.Piece) && !after.Has("busbar") && (i == 0 || q.Unit == quantity.Piece || after.Any("cells", "mono", "multi", "halfcut")):
			score := labelled
			if slices.ContainsFunc(d.classes, func(k *class) bool { return k.watts == a }) {
				return // a class beside the cells' row
			}
			if i > 0 || d.counted == r {
				score *= 0.8 // "6 strings of 20 cells" comes after the count of all
			}
			if d.claim("/cell/count", r, c, q, 0, q.Unit, fewCells, mostCells, score) {
				d.counted = r
			}
		case q.Unit == quantity.MM && a >= 60 && a <= 220:
			d.claim("/cell/width_mm", r, c, q, 0, quantity.MM, 60, 220, labelled*0.8)
		}
	}
}

// arrangement reads "6 × 24": the count is its product where no count of its own is printed.
func (d *document) arrangement(r *row, c *cell, q quantity.Quantity) {
	product := 1
	text := ""
	for i, t := range q.Terms {
		product *= int(t.Value)
		if i > 0 {
			text += "x"
		}
		text += t.Literal
	}
	if product < fewCells || product > mostCells || len(q.Terms) > 3 {
		return
	}
	box := c.boxOf(q.Start, q.End)
	printed := c.text[q.Start:q.End]
	d.ledger.add(claim{field: "/cell/arrangement", text: true, literal: text, printed: printed, label: r.text(), page: c.page, box: box, by: c.by, score: labelled})
	d.ledger.add(claim{field: "/cell/count", literal: itoa(product), printed: printed, label: r.text(), page: c.page, box: box, by: c.by, score: labelled * 0.8, note: "product of the printed arrangement"})
}

func (d *document) cellSides(r *row, c *cell, q quantity.Quantity) {
	terms := slices.Clone(q.Terms[:2])
	w, h := 0, 1
	if terms[h].Value > terms[w].Value {
		w, h = h, w
	}
	if terms[w].Value > 220 || terms[h].Value < 20 {
		return
	}
	d.claim("/cell/width_mm", r, c, q, w, quantity.MM, 60, 220, labelled)
	d.claim("/cell/height_mm", r, c, q, h, quantity.MM, 20, 220, labelled)
}

// asLength reads "156 x 156 mm2", as sheets print a cell's sides, as millimetres.
func asLength(q quantity.Quantity) quantity.Quantity {
	q.Unit = quantity.MM
	q.Terms = slices.Clone(q.Terms)
	for i := range q.Terms {
		q.Terms[i].Unit = quantity.MM
	}
	return q
}

func cellSize(d *document, r *row) {
	r.each(func(c *cell, q quantity.Quantity) {
		switch {
		case q.Shape == quantity.Product && (q.Unit == quantity.MM || q.Unit == quantity.None || q.Unit == quantity.MM2):
			d.cellSides(r, c, asLength(q))
		case q.Shape == quantity.Single && (q.Unit == quantity.MM || q.Unit == quantity.None):
			d.claim("/cell/width_mm", r, c, q, 0, quantity.MM, 60, 220, labelled)
		}
	})
}

// technology reads the cells' technology in words: from the row about the cells, and from the whole sheet where it says more.
func (d *document) technology(all label.Found, rows []*row) {
	var said []string
	var where *cell
	for _, r := range rows {
		if r.concept != "cell_type" && r.concept != "cells" {
			continue
		}
		for _, c := range append(slices.Clone(r.values), r.label...) {
			f := c.whole()
			for _, a := range technologyAtoms {
				if f.Has(a) {
					said = append(said, a)
					if where == nil {
						where = c
					}
				}
			}
		}
	}
	inRow := func(a string) bool { return slices.Contains(said, a) }
	any := func(a string) bool { return all.Has(a) }
	tech := ""
	switch {
	case inRow("cdte") || any("cdte"):
		tech = "cdte"
	case inRow("cigs") || any("cigs") && !any("mono") && !any("multi"):
		tech = "cigs"
	case inRow("a-si") && !any("hjt"):
		tech = "a-si"
	case inRow("tandem"):
		tech = "tandem"
	case inRow("hjt"):
		tech = "hjt"
	case inRow("topcon"):
		tech = "topcon"
	case inRow("ibc"):
		tech = "ibc"
	case any("hjt") && !inRow("mono-perc") && !inRow("multi"):
		tech = "hjt"
	case any("ibc") && !inRow("mono-perc") && !inRow("multi"):
		tech = "ibc"
	case any("topcon") && !inRow("mono-perc") && !inRow("multi"):
		tech = "topcon"
	case inRow("multi") && !inRow("mono"):
		tech = "multi"
		if any("mono-perc") {
			tech = "multi-perc"
		}
	case inRow("mono-perc") || any("mono-perc") && !any("mono-n") && !any("multi"):
		tech = "mono-perc"
	case inRow("mono-n") || any("mono-n"):
		tech = "mono-n"
	case inRow("mono"):
		tech = "mono"
	case any("multi") && !any("mono"):
		tech = "multi"
	case any("mono") && !any("multi"):
		tech = "mono"
	}
	if tech == "" {
		return
	}
	k := claim{field: "/cell/technology", text: true, literal: tech, printed: tech, label: "technology", score: labelled}
	if where == nil {
		where = d.wordPlace(tech)
	}
	if where != nil {
		k.printed, k.page, k.box, k.by = where.text, where.page, where.box, where.by
	}
	d.ledger.add(k)
}

// technologyAtoms are the words of the lexicon that name technologies.
var technologyAtoms = []string{"mono", "multi", "mono-perc", "mono-n", "topcon", "hjt", "ibc", "cdte", "cigs", "a-si", "tandem"}

var stringsPattern = regexp.MustCompile(`(?i)^(\d{1,2})\s*(?:x\s*)?(?:strings?|strang|stränge|chaînes?|cadenas?|stringhe)\s+\pL{1,4}\s+(\d{1,3})\b`)

// stringsOf reads "6 strings of 24": the cells are the product.
func (d *document) stringsOf(r *row, c *cell) bool {
	m := stringsPattern.FindStringSubmatchIndex(c.text)
	if m == nil {
		return false
	}
	a, _ := strconv.Atoi(c.text[m[2]:m[3]])
	b, _ := strconv.Atoi(c.text[m[4]:m[5]])
	if n := a * b; n >= 20 && n <= 400 {
		d.ledger.add(claim{field: "/cell/count", literal: itoa(n), printed: c.text[m[0]:m[1]], label: r.text(), page: c.page, box: c.boxOf(m[0], m[1]), by: c.by, score: labelled * 0.8, note: "product of the printed strings"})
	}
	for _, q := range c.quantities {
		if q.Shape == quantity.Product {
			d.cellQuantity(r, c, q, label.Found{}, 1)
		}
	}
	return true
}
