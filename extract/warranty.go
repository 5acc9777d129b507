package extract

import (
	"strconv"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
	"pvtally/schema"
)

// warranties reads the sentences and large-type claims about warranty: years and the course of the power over them.
func (d *document) warranties(flows []*flow) {
	for i, f := range flows {
		whole := label.Find(headed(flows[:i], f))
		if whole.Any("standardmodule") && !whole.Any("warranty") {
			continue
		}
		if !whole.Any("warranty", "performance", "product", "firstyear", "annual", "degradation", "finaloutput") || len(f.text) > 4000 {
			continue
		}
		d.warrantyFlow(f, whole)
	}
}

func (d *document) warrantyFlow(f *flow, whole label.Found) {
	clauses := f.clauses()
	for i, c := range clauses {
		c.q = unsigned(c.q)
		list := c.after
		c.before, c.after = afterComma(c.before), beforeComma(c.after)
		near := label.Find(c.before + " | " + c.after)
		after := label.Find(c.after)
		before := label.Find(c.before)
		t := c.q.Terms[len(c.q.Terms)-1]
		switch {
		case near.Has("standardmodule") && !near.Has("warranty") || ofOthers(c) || c.sentenceOfOthers():
		case c.q.Unit == quantity.Year && (c.q.Shape == quantity.Single || c.q.Shape == quantity.Slash) && t.Value >= 1 && t.Value <= 50:
			d.warrantyYears(c, before, after, label.Find(list), c.surroundings(whole))
		case c.q.Unit == quantity.Percent && c.q.Shape == quantity.Single:
			d.warrantyShare(c, i, clauses, before, after, near, whole)
		}
	}
}

// warrantyYears tells a product warranty from a power warranty by the words after the years, else by those before. list is what follows up
// to the next figure, commas and all.
func (d *document) warrantyYears(c clause, before, after, list, whole label.Found) {
	if (c.afterShare() || c.beforeShare()) && whole.Has("warranty") && !after.Has("product") { // "80 % of power for 25 years"
		k := c.claim("/warranty/performance_years", len(c.q.Terms)-1, worded)
		k.step = true
		d.ledger.add(k)
		return
	}
	if c.lastYears() && forBoth(list) && (list.Has("warranty") || whole.Has("warranty")) { // "25 years product and power warranty", "25 years for product, power and service"
		d.ledger.add(c.claim("/warranty/product_years", 0, worded))
		d.ledger.add(c.claim("/warranty/performance_years", len(c.q.Terms)-1, worded))
		return
	}
	sides := []label.Found{after, before}
	if head := label.Find(c.sinceLast()); strings.HasSuffix(strings.TrimSpace(head.Text), ":") && head.Any("product", "performance", "power") { // "Product: 12 years; linear power: 30 years"
		sides = []label.Found{head}
	} else if c.onlyYears() {
		sides = append(sides, label.Find(c.sentence()))
	}
	for _, side := range sides {
		product, power := side.Has("product"), side.Any("performance") || side.Has("power") && !side.Has("product")
		if len(c.q.Terms) > 1 || product == power || !whole.Any("warranty") && !side.Any("performance", "product") {
			continue
		}
		if !side.Has("warranty") && !whole.Has("warranty") {
			continue
		}
		field := "/warranty/product_years"
		if power {
			field = "/warranty/performance_years"
		}
		d.ledger.add(c.claim(field, 0, worded))
		return
	}
}

// warrantyShare files a per cent figure: first-year loss or output, yearly loss, output at the end.
func (d *document) warrantyShare(c clause, i int, clauses []clause, before, after, near, whole label.Found) {
	v := c.q.Terms[0].Value
	slash := strings.HasPrefix(strings.TrimSpace(c.after), "/") && after.Has("year")
	first, annual := distanceTo(before, after, "firstyear"), distanceTo(before, after, "annual")
	if slash {
		annual = 0
	}
	isFirst := first < annual || besideYearOne(i, clauses) || !slash && distanceTo(label.Found{}, after, "firstyear") < 8 // "power degradation 1 % in the first year"
	yearly := slash || annual < first || c.yearlySentence() || strings.Contains(c.after, "p.a") || near.Has("degradation") && !isFirst
	switch {
	case v > 50 && v <= 100 && isFirst && v > 90 && !(before.Has("annual") && !before.Has("firstyear")):
		d.firstYearOutput(c, worded)
	case v > 0 && v <= 5 && isFirst && whole.Any("degradation", "annual", "warranty"):
		k := c.claim("/warranty/first_year_loss_pct", 0, worded)
		d.ledger.add(k)
	case v > 0 && v < 1.6 && yearly && !isFirst:
		d.ledger.add(c.claim("/warranty/annual_loss_pct", 0, worded))
	case v >= 70 && v < 97 && whole.Any("warranty", "performance", "degradation", "finaloutput", "annual"):
		if years, ok := yearsNear(i, clauses); ok && years >= 20 {
			k := c.claim("/warranty/final_output_pct", 0, worded)
			k.after = years
			d.ledger.add(k)
		}
	}
}

// firstYearOutput stores the complement of a printed output: the record keeps losses.
func (d *document) firstYearOutput(c clause, score float64) {
	k := c.claim("/warranty/first_year_loss_pct", 0, score)
	n, err := schema.ParseNumber(k.literal)
	if err != nil {
		return
	}
	k.literal = complement(n)
	k.note = "complement of the printed output"
	d.ledger.add(k)
}

// complement is 100 less a printed per cent, with its decimals.
func complement(n schema.Number) string {
	text := strconv.FormatFloat(100-n.Float(), 'f', n.Decimals(), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// badgeClaims reads large figures: the words around are few and all speak of the figure.
func (d *document) badgeClaims(badges []*flow) {
	for _, f := range badges {
		clauses := f.clauses()
		if len(clauses) == 0 || clauses[0].q.Start > 2 {
			continue
		}
		c := clauses[0]
		c.after = f.text[c.q.End:]
		words := label.Find(c.after)
		t := c.q.Terms[len(c.q.Terms)-1]
		switch {
		case c.q.Unit == quantity.Year && (c.q.Shape == quantity.Single || c.q.Shape == quantity.Slash) && t.Value >= 5 && t.Value <= 50:
			d.warrantyYears(c, label.Found{}, words, words, words)
		case c.q.Shape == quantity.Spread && words.Has("tol"):
			d.toleranceSentence(c, words)
		case c.q.Unit == quantity.Percent && c.q.Shape == quantity.Single:
			d.warrantyShare(c, 0, []clause{c}, label.Found{}, words, words, words)
		case pressure(c.q.Unit) && c.q.Shape == quantity.Single:
			d.loadSentence(c)
		}
	}
}
