package extract

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
	"pvtally/schema"
)

// sentences reads what footnotes and running text tell: the low-light promise, tolerances, measurement uncertainty, conditions.
func (d *document) sentences(flows []*flow) {
	for _, f := range flows {
		if len(f.text) > 4000 {
			continue
		}
		whole := label.Find(f.text)
		for _, c := range f.clauses() {
			before := label.Find(c.before)
			switch {
			case (c.q.Unit == quantity.Piece || c.q.Unit == quantity.None) && c.q.Shape == quantity.Single && whole.Any("pallet", "container", "container40", "container40hq"):
				d.packedSentence(c)
			case pressure(c.q.Unit) && c.q.Shape == quantity.Single:
				d.loadSentence(c)
			case c.q.Shape == quantity.Spread && c.q.Unit == quantity.Percent && !before.Has("tol") && label.Find(firstWords(c.after, 2)).Has("tol"):
				d.toleranceSentence(c, before)
			case c.q.Shape == quantity.Spread && before.Has("tol") && !before.Has("uncertainty") && (c.q.Unit == quantity.Percent || c.q.Unit == quantity.W):
				d.toleranceSentence(c, before)
			case c.q.Unit == quantity.Percent && before.Has("uncertainty") && c.q.Shape == quantity.Spread:
				d.ledger.add(c.claim("/tolerance/measurement_pct", 1, footnote(f)))
			case c.q.Unit == quantity.Percent && c.q.Bound == quantity.AtMost && c.q.Shape == quantity.Single && c.q.Terms[0].Value <= 10 && label.Find(lastWords(c.before, 4)).Has("uncertainty"):
				d.ledger.add(c.claim("/tolerance/measurement_pct", 0, footnote(f)))
			case c.q.Unit == quantity.Percent && c.q.Shape == quantity.Spread && c.q.Terms[0].Value == c.q.Terms[1].Value && ofAll(c.sentence()):
				d.ledger.add(c.claim("/tolerance/measurement_pct", 1, worded))
			case c.q.Unit == quantity.Percent && c.q.Shape == quantity.Single:
				d.lowLight(f, c)
			}
		}
	}
}

// lowLight reads "at 200 W/m2 at least 97 % of the STC efficiency" and "a loss of 3 % at 200 W/m2".
func (d *document) lowLight(f *flow, c clause) {
	if !strings.Contains(f.text, "200") {
		return
	}
	var low *quantity.Quantity
	at := 0
	for _, q := range quantity.Scan(f.text) {
		for i, t := range q.Terms {
			if q.Unit == quantity.WPerM2 && t.Value == 200 && low == nil {
				low, at = &q, i
			}
		}
	}
	if low == nil || abs(float64(low.Start-c.q.Start)) > 220 {
		return
	}
	v := c.q.Terms[0].Value
	score := worded
	if stop := firstStop(f.text[min(low.End, c.q.Start):max(low.Start, c.q.Start)]); stop >= 0 {
		score = loosely // another sentence
	}
	k := c.claim("/low_light/relative_efficiency_pct", 0, score)
	switch {
	case v >= 85 && v <= 100:
	case abs(v) > 0 && abs(v) < 10 && label.Find(c.sentence()).Any("reduction", "lowlight", "degradation", "relative", "irradiance"):
		n, err := schema.ParseNumber(strings.TrimPrefix(k.literal, "-"))
		if err != nil {
			return
		}
		k.literal, k.note = complement(n), "complement of the printed loss"
	default:
		return
	}
	d.ledger.add(k)
	box, by := f.place(low.Start, low.End)
	d.ledger.add(claim{field: "/low_light/irradiance_w_m2", literal: low.Terms[at].Literal, printed: f.text[low.Start:low.End], unit: string(low.Unit), label: "low irradiance", page: f.page, box: box, by: by, score: worded})
}

var certificatePattern = regexp.MustCompile(`\b(?:IEC|EN|UL|ISO|UNE|UNI)(?:\s?/\s?(?:EN|UL))?\s?(?:TS\s?)?\d{4,5}(?:-\d+)*(?::\s?\d{4})?`)

// certificates lists the standards a sheet names, as printed, in order.
func (d *document) certificates() []string {
	var out []string
	for _, f := range d.flows {
		for _, m := range certificatePattern.FindAllString(f.text, -1) {
			m = strings.Join(strings.Fields(m), " ")
			if !slices.Contains(out, m) {
				out = append(out, m)
			}
		}
	}
	return out
}

// names fills the models' names: the header's own, the product code's pattern, else the series with the class.
func (d *document) names() {
	d.spelledNames()
	d.wholeNames()
	pattern, where := d.pattern()
	series, seriesAt := d.series()
	d.eachClass(func(i int, k *class) {
		field := "/models/" + itoa(i) + "/name"
		watts := strconv.FormatFloat(k.watts, 'f', -1, 64)
		if w, ok := wattsIn(k.name); ok && !d.sharesName(k) {
			watts = strconv.FormatFloat(w, 'f', -1, 64)
		}
		whole := k.named != nil && hasLetters(k.name) && !strings.HasSuffix(k.name, "-") && !strings.HasSuffix(k.name, "/") // half a name is none
		switch {
		case whole && !(pattern != "" && d.sharesName(k)):
			d.ledger.add(claim{field: field, text: true, literal: k.name, printed: k.named.text, label: "model", page: k.named.page, box: k.named.box, by: k.named.by, score: labelled})
		case pattern != "":
			d.ledger.add(claim{field: field, text: true, literal: fillPattern(pattern, watts), printed: pattern, label: "product code", page: where.page, box: where.box, by: where.by, score: labelled, note: "the class put into the printed product code"})
		case k.named != nil && hasLetters(k.name) && k.named.by == page.ByPicture:
			d.ledger.refused(field, "model", "half a name", k.named, k.name)
		case series != "":
			name := series
			if !hasNumber(series, k.watts) {
				name += " " + watts
			}
			d.ledger.add(claim{field: field, text: true, literal: name, printed: series, label: "series", page: seriesAt.page, box: seriesAt.box, by: seriesAt.by, score: labelled, note: "the series with the class"})
		}
	})
	if series != "" {
		d.ledger.add(claim{field: "/series", text: true, literal: series, printed: series, label: "title", page: seriesAt.page, box: seriesAt.box, by: seriesAt.by, score: labelled})
	}
}

// sharesName tells whether another class has the same name, so that it is no class's own.
func (d *document) sharesName(k *class) bool {
	return slices.ContainsFunc(d.classes, func(o *class) bool { return o.name == k.name && o.watts != k.watts })
}

func hasLetters(s string) bool {
	n := 0
	for _, r := range s {
		if (r >= 'A' && r <= 'Z') || (r >= 'a' && r <= 'z') {
			n++
		}
	}
	return n >= 2 && !regexp.MustCompile(`^\d+([.,]\d+)?\s*[Ww][Pp]?$`).MatchString(strings.TrimSpace(s))
}

// pattern finds a product code whose class stands as x's.
func (d *document) pattern() (string, *cell) {
	for _, v := range d.views {
		for i := range v.cells {
			for k := range v.cells[i] {
				c := &v.cells[i][k]
				if m := spacedPattern.FindStringSubmatch(c.text); m != nil {
					return m[1], c
				}
				if at := namePattern.FindStringIndex(c.text); at != nil && at[1]-at[0] > 4 {
					if tail := strings.TrimSpace(c.text[at[1]:]); len(tail) > 0 && len(tail) <= 8 && tail == strings.ToUpper(tail) {
						return c.text[at[0]:at[1]] + " " + tail, c
					}
					return c.text[at[0]:at[1]], c
				}
			}
		}
	}
	return "", nil
}

// series is the largest lettering of the pages' heads that looks like a product name: short, with letters, no sentence.
func (d *document) series() (string, *cell) {
	var best *cell
	for _, v := range d.views {
		for i := range v.cells {
			for k := range v.cells[i] {
				c := &v.cells[i][k]
				if c.box.Y0 > 0.5*v.page.Height || len([]rune(c.text)) > 30 || len([]rune(c.text)) < 3 || !strings.ContainsAny(c.text, "0123456789") || !hasLetters(c.text) {
					continue
				}
				if c.by == page.ByPicture && (len([]rune(c.text)) < 5 || !unicode.IsUpper([]rune(c.text)[0])) {
					continue // scraps of a logo
				}
				if c.whole().Share() > 0.4 || formal.MatchString(c.text) {
					continue
				}
				if len(c.quantities) > 0 && (c.isValue() || !coded.MatchString(c.text)) || c.isLabel() {
					continue
				}
				if best == nil || c.size > best.size*1.05 && coded.MatchString(c.text) == coded.MatchString(best.text) || coded.MatchString(c.text) && !coded.MatchString(best.text) {
					best = c
				}
			}
		}
	}
	if best == nil {
		return "", nil
	}
	return strings.TrimSpace(seriesWord.ReplaceAllString(powerRange.ReplaceAllString(best.text, ""), "")), best
}

// seriesWord ends many titles and belongs to no name.
var seriesWord = regexp.MustCompile(`(?i)[\s·|–-]*(?:series|serie|série|seria)?\s*$`)

// formal are the marks of standards and of a document's own issue.
var formal = regexp.MustCompile(`\b(?:IEC|UL|ISO|EN|DIN|NEC|CE|IP\d\d)\b|(?i)\b(?:rev|version|edition|ver)\b`)

// coded is a token of letters and digits, as product names have.
var coded = regexp.MustCompile(`\pL+[-./]?\d|\d+[-./]?\p{Lu}`)

// powerRange is the classes' range behind a series name: "340-350", "405~425 W".
var powerRange = regexp.MustCompile(`\s*\(?\b\d{2,3}\s*W?p?\s*[-–~/]\s*\d{2,3}\s*(?:W|Wp|M)?\)?$`)

// footnote weighs a measuring tolerance by its footnote's number: the first is the STC table's, later ones belong to other conditions.
func footnote(f *flow) float64 {
	text := strings.TrimLeft(f.text, " *[(")
	if text != "" && text[0] >= '2' && text[0] <= '9' && (len(text) < 2 || text[1] < '0' || text[1] > '9') {
		return loosely
	}
	return worded
}

// ofAll: a tolerance said of power, voltage and current together is the measurement's, no sorting.
func ofAll(sentence string) bool {
	f := label.Find(sentence)
	return f.Any("tol", "uncertainty") && f.Has("pmax") && f.Has("voc") && f.Has("isc")
}

// lowLightRow reads a labelled row: an efficiency at low irradiance relative to STC's, or its reduction. The irradiance stands in the label or the words around.
func lowLightRow(d *document, r *row) {
	low := d.cellNear(r.label[0], "200")
	if low == nil {
		return
	}
	r.each(func(c *cell, q quantity.Quantity) {
		v := abs(q.Terms[0].Value)
		k, ok := claimOf("/low_light/relative_efficiency_pct", c, r.text(), q, 0, quantity.Percent, labelled*r.weight)
		n, err := schema.ParseNumber(strings.TrimPrefix(k.literal, "-"))
		switch {
		case !ok || err != nil || q.Unit != quantity.Percent:
			return
		case v >= 85 && v <= 100:
		case v > 0 && v < 10:
			k.literal, k.note = complement(n), "complement of the printed loss"
		default:
			return
		}
		d.ledger.add(k)
		at := strings.Index(low.text, "200")
		d.ledger.add(claim{field: "/low_light/irradiance_w_m2", literal: "200", printed: "200", unit: "W/m2", label: r.text(), page: low.page, box: low.boxOf(at, at+3), by: low.by, score: worded})
	})
}

// cellNear is a cell with the given figure on the label's line or one next to it.
func (d *document) cellNear(c *cell, figure string) *cell {
	for _, v := range d.views {
		if v.page.Number != c.page {
			continue
		}
		for i := max(0, c.line-2); i < min(len(v.cells), c.line+3); i++ {
			for k := range v.cells[i] {
				o := &v.cells[i][k]
				if strings.Contains(o.text, figure) && abs(o.base-c.base) < 2*c.size && (o == c || min(o.box.X1, c.box.X1) > max(o.box.X0, c.box.X0)) {
					return o
				}
			}
		}
	}
	return nil
}

// toleranceSentence reads "power tolerance −0/+5 %" and "tolerance of Voc and Isc ±3 %" from running text.
func (d *document) toleranceSentence(c clause, before label.Found) {
	voc, isc, pmax := before.Has("voc"), before.Has("isc"), before.Any("pmax", "power")
	symmetric := c.q.Terms[0].Value == c.q.Terms[1].Value
	switch {
	case before.Any("dim", "length", "width", "depth", "mass"):
	case voc && isc && pmax && symmetric:
		d.ledger.add(c.claim("/tolerance/measurement_pct", 1, worded))
	case (voc || isc) && symmetric && c.q.Unit == quantity.Percent:
		if voc {
			d.ledger.add(c.claim("/tolerance/voc_pct", 1, worded))
		}
		if isc {
			d.ledger.add(c.claim("/tolerance/isc_pct", 1, worded))
		}
	case !symmetric:
		suffix := "_w"
		if c.q.Unit == quantity.Percent {
			suffix = "_pct"
		}
		d.ledger.add(c.claim("/tolerance/power_minus"+suffix, 0, worded))
		d.ledger.add(c.claim("/tolerance/power_plus"+suffix, 1, worded))
	}
}
