package extract

import (
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
)

// container ranks the containers of a sheet: the record keeps the 40 ft high cube where several are printed.
func container(f label.Found) float64 {
	switch {
	case f.Has("container40hq"):
		return 1
	case f.Has("truck"):
		return 0
	case f.Has("container20"):
		return 0
	case f.Has("container40"):
		return 0.85
	case f.Has("container"):
		return 0.8
	}
	return 0
}

// packingRow reads counts of modules and pallets from a labelled row.
func packingRow(d *document, r *row) {
	if r.found.Any("palletsize", "palletmass", "mass") {
		return
	}
	for _, c := range r.values {
		for i, q := range c.quantities {
			if d.packedTogether(r, c, q) {
				return
			}
			if q.Shape != quantity.Single || q.Unit != quantity.None && q.Unit != quantity.Piece || q.Terms[0].Value != float64(int(q.Terms[0].Value)) {
				continue
			}
			end := len(c.text)
			if i+1 < len(c.quantities) {
				end = c.quantities[i+1].Start
			}
			start := 0
			if i > 0 {
				start = c.quantities[i-1].End
			}
			beside := label.Find(c.text[q.End:end])
			if !beside.Any("pallet", "palletcount", "container", "container20", "container40", "container40hq", "truck") && (i == 0 || strings.ContainsAny(c.text[start:q.Start], ",;")) {
				beside = label.Find(c.text[start:q.Start])
			}
			d.packed(r, c, q, beside)
		}
	}
}

// packed decides what a count counts: the words beside it go before the row's label.
func (d *document) packed(r *row, c *cell, q quantity.Quantity, beside label.Found) {
	own := beside.Any("pallet", "palletcount", "container", "container20", "container40", "container40hq", "truck")
	f := beside
	if !own {
		f = r.found
	}
	v := q.Terms[0].Value
	rank := container(f)
	if over, ok := d.containerOver(c); ok {
		if over == 0 && (f.Any("palletcount", "container") || rank > 0) {
			return // the column of another container
		}
		rank = max(rank, over)
	}
	switch {
	case f.Has("truck"):
	case own && q.Unit == quantity.None && f.Has("pallet") && container(f) == 0 && container(c.whole()) > 0 && countsPallets(r, c, q):
		d.claim("/packing/pallets_per_container", r, c, q, 0, q.Unit, 4, 100, labelled*container(c.whole()))
	case f.Has("palletcount") || f.Has("pallet") && container(f) > 0 && countsPallets(r, c, q):
		if rank == 0 {
			rank = 0.8
		}
		if v >= 4 && v <= 100 {
			d.claim("/packing/pallets_per_container", r, c, q, 0, q.Unit, 4, 100, labelled*rank)
		}
	case rank > 0 && v >= 50 && (container(f) > 0 || !f.Has("pallet") || v > 100):
		d.claim("/packing/modules_per_container", r, c, q, 0, q.Unit, 50, 3000, labelled*rank)
	case f.Has("pallet") && container(f) == 0 && !f.Has("container20"):
		d.claim("/packing/modules_per_pallet", r, c, q, 0, q.Unit, leastPerPallet(q), 100, labelled)
	}
}

// countsPallets: "26 pallets / 40'HQ" or a label "Pallets per container".
func countsPallets(r *row, c *cell, q quantity.Quantity) bool {
	after := label.Find(firstWords(c.text[q.End:], 2))
	if len(after.Matches) > 0 {
		return after.Matches[0].Atoms[0] == "pallet" && q.Unit == quantity.None
	}
	for _, m := range r.found.Matches {
		for _, a := range m.Atoms {
			switch a {
			case "pallet", "palletcount":
				return true
			case "container", "container40", "container40hq", "model", "product":
				return false
			}
		}
	}
	return false
}

func firstWords(s string, n int) string {
	at := 0
	for range n {
		for at < len(s) && s[at] == ' ' {
			at++
		}
		for at < len(s) && s[at] != ' ' {
			at++
		}
	}
	return s[:at]
}

// packedSentence reads "31 pcs/pallet, 26 pallets per container, 806 pcs/40' HQ container" where no label stands beside.
func (d *document) packedSentence(c clause) {
	rest := c.flow.text[c.q.End:]
	if at := strings.IndexAny(rest, ",;()"); at >= 0 {
		rest = rest[:at]
	}
	after := label.Find(firstWords(rest, 6))
	v, rank := c.q.Terms[0].Value, container(after)
	first := ""
	if len(after.Matches) > 0 {
		first = after.Matches[0].Atoms[0]
	}
	if before := label.Find(c.before); rank == 0 && strings.HasSuffix(strings.TrimSpace(c.before), "(") && container(before) > 0 {
		rank = container(before) // "26 pallets per 40' HC container (936 modules)"
	}
	switch {
	case after.Any("truck", "palletsize", "palletmass") || after.Has("container20") && rank == 0 || v != float64(int(v)):
	case rank > 0 && v >= 50 && v <= 3000:
		d.ledger.add(c.claim("/packing/modules_per_container", 0, worded*rank))
	case rank > 0 && (first == "pallet" || first == "palletcount") && c.q.Unit == quantity.None && v >= 4 && v <= 100:
		d.ledger.add(c.claim("/packing/pallets_per_container", 0, worded*rank))
	case rank == 0 && after.Has("pallet") && (c.q.Unit == quantity.Piece || first != "pallet" || strings.Contains(rest, "/") || len(after.Matches[0].Atoms) > 0 && after.Matches[0].Length > 10) && v >= 2 && v <= 100:
		d.ledger.add(c.claim("/packing/modules_per_pallet", 0, worded))
	}
}

// containerOver ranks the container that heads a figure's column, where the lines above name one there.
func (d *document) containerOver(c *cell) (float64, bool) {
	for _, v := range d.views {
		if v.page.Number != c.page {
			continue
		}
		for i := c.line - 1; i >= 0 && c.base-v.lines[i].Baseline < 9*c.size; i-- {
			for k := range v.cells[i] {
				h := &v.cells[i][k]
				if min(h.box.X1, c.box.X1) <= max(h.box.X0, c.box.X0) {
					continue
				}
				if f := h.whole(); f.Any("container20", "container40", "container40hq", "truck") {
					return container(f), true
				}
			}
		}
	}
	return 0, false
}

// packedTogether reads the counts of one cell in the order that the label names them: "modules per pallet / pallets / modules: 31 / 22 / 682".
func (d *document) packedTogether(r *row, c *cell, q quantity.Quantity) bool {
	if q.Shape != quantity.Slash && q.Shape != quantity.List || len(q.Terms) < 2 || len(q.Terms) > 3 {
		return false
	}
	last := len(q.Terms) - 1
	if q.Terms[0].Value > 100 || q.Terms[last].Value < 50 || q.Terms[0].Value >= q.Terms[last].Value {
		return false
	}
	if last == 2 && q.Terms[0].Value*q.Terms[1].Value != q.Terms[2].Value {
		return false // which count is which would be a guess
	}
	d.claim("/packing/modules_per_pallet", r, c, q, 0, q.Unit, leastPerPallet(q), 100, labelled)
	if last == 2 {
		d.claim("/packing/pallets_per_container", r, c, q, 1, q.Unit, 4, 100, labelled)
	}
	d.claim("/packing/modules_per_container", r, c, q, last, q.Unit, 50, 3000, labelled)
	return true
}

// leastPerPallet: a bare small figure beside the word pallet is an axis mark or a footnote sooner than a number of modules.
func leastPerPallet(q quantity.Quantity) float64 {
	if q.Unit == quantity.None {
		return 10
	}
	return 2
}
