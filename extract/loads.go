package extract

import (
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
)

// load reads a pressure whose side the label tells; of several in one row the sheet's pascals go before its pounds.
func load(field string) fact {
	return func(d *document, r *row) {
		r.each(func(c *cell, q quantity.Quantity) {
			if len(q.Terms) == 1 && pressure(q.Unit) {
				score := labelled
				if q.Unit == quantity.KgPerM2 {
					score *= 0.7
				}
				d.claim(field, r, c, q, 0, quantity.Pa, 400, 20000, score)
			} else if q.Unit == quantity.None && strings.Contains(r.text(), "Pa") && len(q.Terms) == 1 {
				d.claim(field, r, c, q, 0, quantity.Pa, 400, 20000, labelled)
			} else if len(q.Terms) == 2 && q.Shape == quantity.Slash && (pressure(q.Unit) || strings.Contains(r.text(), "Pa")) {
				d.pair(r, c, q)
			}
		})
	}
}

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

// loads reads a row of loads whose sides stand beside the figures ("5400 Pa (front), 2400 Pa (rear)"), or nowhere: then the one figure is the front's.
func loads(d *document, r *row) {
	infix := "_load_pa"
	if r.concept == "load_design" {
		infix = "_design_load_pa"
	}
	for _, c := range r.values {
		var figures []quantity.Quantity
		for _, q := range c.quantities {
			if pressure(q.Unit) || q.Unit == quantity.None && strings.Contains(r.text(), "Pa") {
				figures = append(figures, q)
			}
		}
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
			near := sideOf(c.text[before:q.Start], c.text[q.End:after])
			score := labelled * 0.9
			switch {
			case near != "":
				score = labelled
			case len(figures) == 1 && (strings.HasPrefix(c.text, "+") || strings.Contains(c.text[:q.Start], "(+)")):
				near = "front"
			case len(figures) == 1 && (strings.HasPrefix(c.text, "-") || strings.Contains(c.text[:q.Start], "(-)")):
				near = "rear"
			case len(figures) == 1:
				near, score = "front", labelled*0.8
			default:
				continue
			}
			if q.Unit == quantity.KgPerM2 {
				score *= 0.7
			}
			d.claim("/limits/"+near+infix, r, c, q, 0, quantity.Pa, 400, 20000, score)
		}
	}
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
	if s := sideWord(before); s != "" {
		return s
	}
	return sideWord(after)
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
