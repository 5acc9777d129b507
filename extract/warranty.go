package extract

import (
	"slices"
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

// surroundings is what a long text says around a figure, of a short one all that it says.
func (c clause) surroundings(whole label.Found) label.Found {
	if len(whole.Text) < 2*surrounding {
		return whole
	}
	text := c.flow.text
	return label.Find(strings.ToValidUTF8(text[max(0, c.q.Start-surrounding):min(len(text), c.q.End+surrounding)], ""))
}

// surrounding is how far, in bytes, the word warranty may stand from its years in a long text.
const surrounding = 200

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
	yearly := slash || annual < first || strings.Contains(c.after, "p.a") || near.Has("degradation") && !isFirst
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

// besideYearOne: the figure before or behind is the first year: "im 1. Jahr 97 %", "97 % in year 1".
func besideYearOne(i int, clauses []clause) bool {
	return i > 0 && clauses[i-1].yearOne() && saidOf(clauses[i-1], clauses[i]) || i+1 < len(clauses) && clauses[i+1].yearOne() && saidOf(clauses[i], clauses[i+1])
}

// yearOne tells whether a figure is the one of "1 year", "1. Jahr" or "1年目".
func (c clause) yearOne() bool {
	if c.q.Shape != quantity.Single || c.q.Terms[0].Value != 1 {
		return false
	}
	behind := strings.TrimLeft(c.flow.text[c.q.End:], ". ")
	return c.q.Unit == quantity.Year || c.q.Unit == quantity.None && label.Find(firstWords(behind, 1)).Has("year")
}

// saidOf: two figures stand near each other with no comma between.
func saidOf(a, b clause) bool {
	between := a.flow.text[min(a.q.End, b.q.Start):b.q.Start]
	return len(between) < maxBetween && !strings.ContainsAny(between, ",;:、，")
}

// maxBetween is how many bytes stand between a year and what it is said of at most.
const maxBetween = 24

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

// yearsNear is the count of years that a clause's neighbours or its own words name: "83 % after 25 years", "in the 25th year 80.7 %".
func yearsNear(i int, clauses []clause) (float64, bool) {
	around := []int{i + 1, i - 1}
	if yearsLead(clauses) && i > 0 && clauses[i-1].q.Unit == quantity.Year {
		around = []int{i - 1}
	}
	for _, j := range around {
		if j < 0 || j >= len(clauses) || clauses[j].flow != clauses[i].flow {
			continue
		}
		q := clauses[j].q
		isYear := q.Unit == quantity.Year || q.Unit == quantity.None && label.Find(lastWords(clauses[j].before, 2)).Any("year", "finaloutput")
		if v := abs(q.Terms[0].Value); isYear && v <= 50 && (v >= 20 || len(around) == 1) {
			return v, v >= 20
		}
	}
	text := clauses[i].before + " " + clauses[i].after
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return (r < '0' || r > '9') && r != '.' && r != ',' }) {
		if v, err := strconv.ParseFloat(word, 64); err == nil && v >= 20 && v <= 50 {
			return v, true
		}
	}
	return 0, false
}

// yearsLead: the text names the years before the share that they hold: "10 years to 90 %, 25 years to 80 %".
func yearsLead(clauses []clause) bool {
	for i := 1; i < len(clauses); i++ {
		a, b := clauses[i-1].q, clauses[i].q
		switch {
		case strings.ContainsAny(clauses[i].flow.text[min(a.End, b.Start):b.Start], ":;,、，；"): // "25 years: 90 % after 10 years, 80 % after 25 years"
		case a.Unit == quantity.Year && b.Unit == quantity.Percent && b.Terms[0].Value >= 70:
			return true
		case a.Unit == quantity.Percent && a.Terms[0].Value >= 70 && b.Unit == quantity.Year:
			return false
		}
	}
	return false
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

// afterComma and beforeComma keep the part of a sentence that a figure stands in.
func afterComma(s string) string {
	for _, comma := range []string{", ", "、", "，"} {
		if at := strings.LastIndex(s, comma); at >= 0 {
			s = s[at+len(comma):]
		}
	}
	return s
}

func beforeComma(s string) string {
	for _, comma := range []string{", ", "、", "，"} {
		s, _, _ = strings.Cut(s, comma)
	}
	return s
}

// distanceTo is how far the nearest word with the atom stands from a figure; far beyond any text where there is none.
func distanceTo(before, after label.Found, atom string) int {
	const none = 1 << 20
	d := none
	for _, m := range before.Matches {
		if slices.Contains(m.Atoms, atom) {
			d = min(d, len(before.Text)-m.End)
		}
	}
	for _, m := range after.Matches {
		if slices.Contains(m.Atoms, atom) {
			d = min(d, m.Start)
		}
	}
	return d
}

// sinceLast is what stands between the figure before and this one.
func (c clause) sinceLast() string {
	from := 0
	for _, o := range c.flow.clauses() {
		if o.q.End <= c.q.Start {
			from = max(from, o.q.End)
		}
	}
	return c.flow.text[from:c.q.Start]
}

// onlyYears: the sentence has no other count of years.
func (c clause) onlyYears() bool {
	n := 0
	for _, q := range quantity.Scan(c.sentence()) {
		if q.Unit == quantity.Year {
			n++
		}
	}
	return n < 2
}

// lastYears: no other count of years follows in the sentence.
func (c clause) lastYears() bool {
	for _, o := range c.flow.clauses() {
		if o.q.Start > c.q.Start && o.q.Unit == quantity.Year && o.q.Start < c.q.End+len(c.sentence()) {
			return false
		}
	}
	return true
}

// headed is a flow's text with the short title right over it.
func headed(before []*flow, f *flow) string {
	for _, h := range slices.Backward(before) {
		gap := f.box.Y0 - h.box.Y1
		if h.page == f.page && len(h.text) < 40 && gap > -2 && gap < 20 && abs(h.box.X0-f.box.X0) < 3 {
			return h.text + " | " + f.text
		}
	}
	return f.text
}

// beforeShare: right behind the years stands a share of the power: "25 Jahre auf 80 %".
func (c clause) beforeShare() bool {
	for _, o := range c.flow.clauses() {
		if o.q.Start > c.q.Start {
			v := o.q.Terms[0].Value
			return o.q.Unit == quantity.Percent && v >= 70 && v < 100 && o.q.Start-c.q.End < 16
		}
	}
	return false
}

// afterShare: right before the years stands a share of the power: "80 % for 25 years".
func (c clause) afterShare() bool {
	last := clause{}
	for _, o := range c.flow.clauses() {
		if o.q.Start >= c.q.Start {
			break
		}
		last = o
	}
	if last.flow == nil || last.q.Unit != quantity.Percent {
		return false
	}
	v := last.q.Terms[0].Value
	return v >= 70 && v < 100 && c.q.Start-last.q.End < 40
}

// forBoth: the words name product and power before they come to the warranty; "warranty of power output, manufacturer's warranty" are two.
func forBoth(list label.Found) bool {
	product, power := false, false
	for _, m := range list.Matches {
		product = product || slices.Contains(m.Atoms, "product")
		power = power || slices.Contains(m.Atoms, "performance") || product && slices.Contains(m.Atoms, "power")
		if product && power {
			return true
		}
		if slices.Contains(m.Atoms, "warranty") {
			return false
		}
	}
	return false
}

// ofOthers: the figure stands in a bracket that speaks of other makers' modules: "(efficiency 19.8 %, after 25 years 80.7 %)" behind "conventional modules".
func ofOthers(c clause) bool {
	before := c.flow.text[:c.q.Start]
	open := max(strings.LastIndex(before, "("), strings.LastIndex(before, "（"))
	if open < 0 || strings.ContainsAny(before[open:], ")）") {
		return false
	}
	return label.Find(lastRunes(before[:open], 24)).Has("standardmodule")
}

// sentenceOfOthers: the sentence begins with other makers' modules or their warranty: "Usual step warranty: 90 % after 10, 80 % after 25 years".
func (c clause) sentenceOfOthers() bool {
	begun := c.flow.text[:c.q.Start]
	if at := lastStop(begun); at >= 0 {
		begun = begun[at:]
	}
	head, _, colon := strings.Cut(begun, ":")
	return colon && label.Find(head).Has("standardmodule") && !strings.ContainsAny(head, "0123456789")
}

func lastRunes(s string, n int) string {
	r := []rune(s)
	return string(r[max(0, len(r)-n):])
}
