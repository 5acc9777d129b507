package extract

import (
	"slices"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
	"pvtally/schema"
)

// years reads a labelled row of warranty years.
func years(field string) fact {
	return func(d *document, r *row) {
		r.each(func(c *cell, q quantity.Quantity) {
			if abs(c.base-r.base) > 0.5*c.size && countLetters(c.text[:q.Start]) > 3 || label.Find(c.text[:q.Start]).Has("standardmodule") {
				return // a sentence that begins on another line, another module
			}
			if field == "/warranty/performance_years" && c.stepped(q) { // "10 years (90 % of power), 25 years (80 %)"
				if k, ok := claimOf(field, c, r.text(), q, 0, q.Unit, labelled*r.weight); ok {
					k.step = true
					d.ledger.add(k)
				}
				return
			}
			if q.Start != c.quantities[0].Start {
				return // what follows in the cell speaks of something else; its sentence is read apart
			}
			if behind := label.Find(c.text[q.End:]); behind.Has("product") != behind.Has("performance") && behind.Has("product") != (field == "/warranty/product_years") {
				return // "10 years product warranty" beside the label of a power warranty's curve
			}
			if q.Shape == quantity.Single && (q.Unit == quantity.Year || q.Unit == quantity.None && r.found.Has("year")) {
				d.claim(field, r, c, q, 0, q.Unit, 2, 50, labelled)
			}
		})
	}
}

// stepped: the years stand by a share of the power that they hold: "10 years (90 % of power), 25 years (80 %)", "90 % - 10 years, 80 % - 25 years".
// What the cell begins with tells which share goes with which years.
func (c *cell) stepped(q quantity.Quantity) bool {
	if q.Unit != quantity.Year || q.Shape != quantity.Single {
		return false
	}
	leads := true // the years stand first
	for _, o := range c.quantities {
		if o.Unit == quantity.Year {
			break
		}
		leads = leads && !isShare(o)
	}
	return slices.ContainsFunc(c.quantities, func(o quantity.Quantity) bool {
		if leads {
			return isShare(o) && o.Start >= q.End && o.Start-q.End < 16
		}
		return isShare(o) && o.End <= q.Start && q.Start-o.End < 16
	})
}

// isShare: a share of the power that a warranty may promise.
func isShare(q quantity.Quantity) bool {
	return q.Unit == quantity.Percent && q.Terms[0].Value >= 70 && q.Terms[0].Value < 100
}

// yearlyLoss reads a labelled row of yearly loss.
func yearlyLoss(d *document, r *row) {
	if r.found.Has("firstyear") {
		firstYear(d, r)
		return
	}
	r.each(func(c *cell, q quantity.Quantity) {
		if q.Unit == quantity.Percent && q.Shape == quantity.Single && !label.Find(c.behind(q)).Has("firstyear") { // "yearly loss after 1 % in the first year"
			d.claim("/warranty/annual_loss_pct", r, c, unsigned(q), 0, quantity.Percent, 0.01, 1.6, labelled)
		}
	})
}

// behind is what a cell says after a quantity, before the next.
func (c *cell) behind(q quantity.Quantity) string {
	end := len(c.text)
	for _, o := range c.quantities {
		if o.Start >= q.End {
			end = min(end, o.Start)
		}
	}
	return c.text[q.End:end]
}

// firstYear reads a labelled row about the first year: a loss, or an output whose complement is the loss.
func firstYear(d *document, r *row) {
	r.each(func(c *cell, q quantity.Quantity) {
		if q.Unit != quantity.Percent || q.Shape != quantity.Single || c.followsPercent(q) {
			return // "≤ 1 %, then ≤ 0.4 % a year"
		}
		if q.Terms[0].Value < 50 {
			d.claim("/warranty/first_year_loss_pct", r, c, unsigned(q), 0, quantity.Percent, 0.01, 10, labelled)
			return
		}
		k, ok := claimOf("/warranty/first_year_loss_pct", c, r.text(), q, 0, quantity.Percent, labelled*r.weight)
		n, err := schema.ParseNumber(k.literal)
		if ok && err == nil && n.Float() > 90 && n.Float() < 100 {
			k.literal, k.note = complement(n), "complement of the printed output"
			d.ledger.add(k)
		}
	})
}

// followsPercent: another per cent stands before this one in the cell.
func (c *cell) followsPercent(q quantity.Quantity) bool {
	return slices.ContainsFunc(c.quantities, func(o quantity.Quantity) bool { return o.Unit == quantity.Percent && o.Start < q.Start })
}

// unsigned takes a dash before a loss for what it is: no sign.
func unsigned(q quantity.Quantity) quantity.Quantity {
	q.Terms = slices.Clone(q.Terms)
	t := &q.Terms[0]
	t.Literal = strings.TrimPrefix(t.Literal, "-")
	t.Value = abs(t.Value)
	return q
}

// yearsOf reads the years of a row that names only the power or the product, as under the heading "Warranty".
func yearsOf(d *document, r *row) {
	ofYears := false
	r.each(func(c *cell, q quantity.Quantity) {
		ofYears = ofYears || q.Unit == quantity.Year && (c != r.label[0] || countLetters(c.text[q.End:]) < 3) // "Power, 25-year yield" promises nothing
	})
	switch {
	case !ofYears:
	case r.concept == "pmax" || r.concept == "power":
		d.nearest(facts["warranty_power"], r)
	case r.concept == "model": // "Product: 15 years"
		d.nearest(facts["warranty_product"], r)
	}
}
