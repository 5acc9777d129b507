package extract

import (
	"cmp"
	"slices"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
	"pvtally/schema"
)

// shareLabel is a per cent figure within a warranty graph.
type shareLabel struct {
	c *cell
	q quantity.Quantity
	v float64
}

// higher orders labels by output: of two curves the maker's own is the upper one, the "standard module" the lower.
func higher(a, b shareLabel) int { return cmp.Compare(a.v, b.v) }

func (l shareLabel) x() float64 { return (l.c.box.X0 + l.c.box.X1) / 2 }

// warrantyGraphs reads the labels on a drawn warranty curve: the output after the first year and at the end. Graphs only fill what words leave open.
func (d *document) warrantyGraphs() {
	for _, v := range d.views {
		for i := range v.cells {
			if axis := yearAxis(v.cells[i]); axis != nil {
				d.warrantyGraph(v, axis)
			}
		}
	}
}

// yearAxis is a line of whole years, ascending, that ends at 20 to 40.
func yearAxis(line []cell) []*cell {
	var out []*cell
	last := -1.0
	for k := range line {
		c := &line[k]
		if !c.isValue() || len(c.quantities) != 1 || len(c.quantities[0].Terms) != 1 {
			continue
		}
		q := c.quantities[0]
		t := q.Terms[0].Value
		if q.Unit != quantity.None && q.Unit != quantity.Year || t > 40 || t != float64(int(t)) {
			continue
		}
		if t <= last {
			out = nil
		}
		last = t
		out = append(out, c)
	}
	if len(out) < 3 || last < 20 || last != float64(int(last/5)*5) {
		return nil
	}
	return out
}

func (d *document) warrantyGraph(v *view, axis []*cell) {
	left, right, foot := axis[0].box.X0, axis[len(axis)-1].box.X1, axis[0].base
	width := right - left
	var labels []shareLabel
	for i := range v.cells {
		for k := range v.cells[i] {
			c := &v.cells[i][k]
			if c.base >= foot || c.base < foot-0.9*width-20 || c.box.X1 < left-0.2*width-10 || c.box.X0 > right+0.2*width+10 {
				continue
			}
			for _, q := range c.quantities {
				if q.Unit == quantity.Percent && q.Shape == quantity.Single && q.Terms[0].Value > 60 && q.Terms[0].Value <= 100 {
					labels = append(labels, shareLabel{c, q, q.Terms[0].Value})
				}
			}
		}
	}
	labels = withoutTicks(labels)
	var starts []shareLabel
	for _, l := range labels {
		if l.v >= 94 && l.x() < left+0.35*width {
			starts = append(starts, l)
		}
	}
	if len(starts) > 0 {
		d.graphClaim("/warranty/first_year_loss_pct", slices.MaxFunc(starts, higher), true, v.half(starts))
	}
	var ends []shareLabel
	last := left + 0.75*width
	for _, l := range labels {
		if l.v < 96 {
			last = max(last, l.x())
		}
	}
	for _, l := range labels {
		if l.v < 96 && l.x() > last-0.06*width {
			ends = append(ends, l)
		}
	}
	if len(ends) == 0 || last == left+0.75*width {
		ends = nil
		for _, l := range labels { // a curve's end may be marked on the scale
			if l.v < 95 && l.x() < left+0.1*width && strings.Contains(l.q.Terms[0].Literal, ".") {
				ends = append(ends, l)
			}
		}
		if len(ends) > 2 { // two curves' ends at most; more are marks along the way
			ends = nil
		}
	}
	switch last := axis[len(axis)-1]; {
	case len(ends) > 0:
		d.graphClaim("/warranty/final_output_pct", slices.MaxFunc(ends, higher), false, v.half(ends))
	case last.by == page.ByPicture:
		d.ledger.add(claim{field: "/warranty/final_output_pct", label: "warranty curve", page: last.page, box: last.box, by: last.by, score: loosely, open: "what the drawn curve is labelled with cannot be made out"})
	}
}

// half tells whether a picture gives one label only where two curves are drawn: it may be the other module's, and the maker's own was not
// made out among the lines.
func (v *view) half(labels []shareLabel) bool {
	if len(labels) != 1 || labels[0].c.by != page.ByPicture {
		return false
	}
	return slices.ContainsFunc(v.cells, func(line []cell) bool {
		return slices.ContainsFunc(line, func(c cell) bool { return label.Find(c.text).Has("standardmodule") })
	})
}

func (d *document) graphClaim(field string, l shareLabel, isOutput, half bool) {
	k, ok := claimOf(field, l.c, "warranty curve", l.q, 0, quantity.Percent, loosely)
	if !ok {
		return
	}
	k.note = "label on the drawn curve"
	if half {
		k.open = "two curves are drawn, and one label only can be made out"
	}
	if isOutput {
		n, err := schema.ParseNumber(k.literal)
		if err != nil {
			return
		}
		k.literal, k.note = complement(n), "complement of the output printed on the drawn curve"
	}
	d.ledger.add(k)
}

// withoutTicks drops the scale of the per cent axis: three or more figures flush in one column at even steps.
func withoutTicks(labels []shareLabel) []shareLabel {
	tick := map[int]bool{}
	for _, a := range labels {
		var column []int
		for j, b := range labels {
			if abs(a.c.box.X1-b.c.box.X1) < 3 || abs(a.c.box.X0-b.c.box.X0) < 3 {
				column = append(column, j)
			}
		}
		for _, j := range column {
			for _, k := range column {
				for _, m := range column {
					dv1, dv2 := labels[j].v-labels[k].v, labels[k].v-labels[m].v
					dy1, dy2 := labels[k].c.base-labels[j].c.base, labels[m].c.base-labels[k].c.base
					if dv1 > 0 && dv1 == dv2 && dy1 > 0 && abs(dy1-dy2) < 2 {
						tick[j], tick[k], tick[m] = true, true, true
					}
				}
			}
		}
	}
	var out []shareLabel
	for i, l := range labels {
		if !tick[i] && l.v != 100 {
			out = append(out, l)
		}
	}
	return out
}
