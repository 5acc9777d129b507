package extract

import (
	"regexp"
	"slices"
	"strings"

	"pvtally/extract/label"
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
