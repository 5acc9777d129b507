package extract

import (
	"cmp"
	"slices"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
)

func pressure(u quantity.Unit) bool {
	return u == quantity.Pa || u == quantity.KPa || u == quantity.PSF || u == quantity.NPerM2 || u == quantity.KgPerM2
}

// pair files "5400/2400 Pa": test and design where the label says so, else the greater for the front (snow) and the lesser for the rear (wind).
func (d *document) pair(r *row, c *cell, q quantity.Quantity) {
	a, b := q.Terms[0].Value, q.Terms[1].Value
	hi, lo := 0, 1
	if b > a {
		hi, lo = 1, 0
	}
	side := "front"
	if r.concept == "load_r" || r.concept == "load_design_r" {
		side = "rear"
	}
	if r.found.Has("design") && r.found.Has("test") {
		d.claim("/limits/"+side+"_load_pa", r, c, q, hi, quantity.Pa, 400, 20000, labelled)
		d.claim("/limits/"+side+"_design_load_pa", r, c, q, lo, quantity.Pa, 400, 20000, labelled)
		return
	}
	infix := "_load_pa"
	if r.found.Has("design") {
		infix = "_design_load_pa"
	}
	d.claim("/limits/front"+infix, r, c, q, hi, quantity.Pa, 400, 20000, labelled*0.95)
	d.claim("/limits/rear"+infix, r, c, q, lo, quantity.Pa, 400, 20000, labelled*0.95)
}

// loads reads the pressures of a row. The side stands beside the figure ("5400 Pa (front), 2400 Pa (rear)"), or in the label, or nowhere: then a single
// figure is the front's.
func loads(side string, design bool) fact {
	return func(d *document, r *row) {
		infix := "_load_pa"
		if title := d.titleOf(r); design || title.Has("design") && !title.Has("test") {
			infix = "_design_load_pa"
		}
		for _, c := range r.values {
			figures := pressures(r, c)
			last := ""
			for i, q := range figures {
				if len(q.Terms) == 2 && q.Shape == quantity.Slash {
					d.pair(r, c, q)
					continue
				}
				if len(q.Terms) != 1 {
					continue
				}
				before, after := 0, len(c.text)
				if i > 0 {
					before = figures[i-1].End
				}
				if i+1 < len(figures) {
					after = figures[i+1].Start
				}
				near, score := sideOf(c.text[before:q.Start], c.text[q.End:after]), labelled
				if near == "" && i > 0 && strings.TrimSpace(c.text[before:q.Start]) == "(" {
					near = last // "75.2 psf (3600 Pa)": the same load again
				}
				last = near
				if near == "" && c.by == page.ByPicture && len(figures) == 1 && r.found.Has("snow") && r.found.Any("wind", "windload") {
					d.ledger.refused("/limits/front"+infix, r.text(), "the label speaks of snow and wind, and one load is read", c, c.text)
					continue
				}
				if near == "" {
					near = cmp.Or(side, signSide(r.text()))
				}
				if near == "" && !slices.ContainsFunc(figures, func(o quantity.Quantity) bool { return o.Unit == q.Unit && o.Start != q.Start }) {
					near, score = "front", labelled*0.8
				}
				if near == "" {
					d.ledger.refused("/limits/front"+infix, r.text(), "no word tells the side of the load", c, c.text)
					continue
				}
				if q.Unit == quantity.KgPerM2 {
					score *= 0.7 // "244 kg/m²" beside 2400 Pa is a rounding of it
				}
				d.claim("/limits/"+near+infix, r, c, q, 0, quantity.Pa, 400, 20000, score)
			}
		}
	}
}

// titleOf is what a row's label says, or where it is only a side ("Wind: 2400 Pa" over "Snow: 5400 Pa") the label that stands left of both.
func (d *document) titleOf(r *row) label.Found {
	if r.found.Any("load", "pressure", "design", "test") {
		return r.found
	}
	best, least := r.found, 1.4*r.label[0].size
	for _, v := range d.views {
		for i := range v.cells {
			if dist := abs(v.lines[i].Baseline - r.base); v.page.Number == r.page && dist < least {
				for k := range v.cells[i] {
					if c := &v.cells[i][k]; c.box.X1 < r.box.X0 && r.box.X0-c.box.X0 < maxTitled*c.size && c.whole().Any("load", "pressure") && len(c.quantities) == 0 {
						best, least = c.whole(), dist
					}
				}
			}
		}
	}
	return best
}

// maxTitled is how far left, in sizes of the lettering, the label of two sides' rows stands at most.
const maxTitled = 25

// pressures are a cell's figures that can be loads: with a unit of pressure, or bare under a label that has it.
func pressures(r *row, c *cell) []quantity.Quantity {
	var out []quantity.Quantity
	for _, q := range c.quantities {
		if pressure(q.Unit) {
			out = append(out, q)
		}
	}
	if out == nil && strings.Contains(r.text(), "Pa") {
		for _, q := range c.quantities {
			if q.Unit == quantity.None {
				out = append(out, q)
			}
		}
	}
	return out
}

// signSide: "(+)" marks the front (pressure), "(-)" the rear (suction).
func signSide(text string) string {
	switch {
	case strings.Contains(text, "(+)"):
		return "front"
	case strings.Contains(text, "(-)"), strings.Contains(text, "(–)"), strings.Contains(text, "(−)"):
		return "rear"
	}
	return ""
}

// sideOf tells the side a figure belongs to from the words beside it; what follows in brackets speaks of the figure before.
func sideOf(before, after string) string {
	if open := strings.IndexAny(after, "(（"); open >= 0 && open <= 2 {
		if shut := strings.IndexAny(after, ")）"); shut > open {
			if s := sideWord(after[open:shut]); s != "" {
				return s
			}
		}
	}
	if f := label.Find(after); f.Has("front") && f.Has("rear") && !f.Any("load", "pressure") && lastSide(before) == "" {
		return "" // "4000 Pa front and back": its label tells
	}
	was := lastSide(before)
	bracketed := strings.HasSuffix(strings.TrimSpace(before), "(")
	if next, ahead := firstSide(after); next != "" && !bracketed && (was == "" && signSide(before) == "" || strings.Trim(after[:ahead], " -–") == "") {
		return next // "5400 Pa front and 2400 Pa rear"
	}
	return cmp.Or(was, signSide(before))
}

// lastSide is the side that the last word before a figure names.
func lastSide(text string) string {
	for _, m := range slices.Backward(label.Find(text).Matches) {
		if s := sideAtom(m); s != "" {
			return s
		}
	}
	return ""
}

// firstSide is the side that the first word behind a figure names, and how far behind.
func firstSide(text string) (string, int) {
	for _, m := range label.Find(text).Matches {
		if s := sideAtom(m); s != "" {
			return s, m.Start
		}
	}
	return "", 0
}

func sideAtom(m label.Match) string {
	for _, a := range m.Atoms {
		switch a {
		case "front", "snow":
			return "front"
		case "rear", "windload", "wind":
			return "rear"
		}
	}
	return ""
}

func sideWord(text string) string {
	f := label.Find(text)
	front, rear := f.Any("front", "snow"), f.Any("rear", "windload", "wind")
	switch {
	case front && !rear:
		return "front"
	case rear && !front:
		return "rear"
	}
	return ""
}

// loadSentence reads a load from running text: "certified to withstand front side maximum static test load (5400 Pa)".
func (d *document) loadSentence(c clause) {
	before := label.Find(c.before)
	side := sideOf(c.before, c.after)
	if side == "" || !before.Any("load", "pressure", "snow", "windload") && !label.Find(c.after).Any("load", "snow", "windload") {
		return
	}
	field := "/limits/" + side + "_load_pa"
	if before.Has("design") {
		field = "/limits/" + side + "_design_load_pa"
	}
	if v := c.q.Terms[0].Value; c.q.Unit == quantity.Pa && v >= 400 && v <= 20000 {
		d.ledger.add(c.claim(field, 0, worded))
	}
}
