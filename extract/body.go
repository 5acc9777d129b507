package extract

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"pvtally/extract/quantity"
)

// side is one printed outer side.
type side struct {
	k     claim
	value float64 // mm
}

// dimensions reads a row of outer sizes: "1722 × 1134 × 30 mm", in any order, with inches beside or alone.
func dimensions(d *document, r *row) {
	if r.found.Any("pallet", "packing", "container", "cells", "jbox") {
		return
	}
	if r.found.Has("mass") { // one word for both, as German "Maße" without its ß: the unit tells
		mass(d, r)
	}
	labelUnit := sizeUnit(r.text())
	for _, c := range r.values {
		unit := labelUnit
		if unit == quantity.None {
			unit = sizeUnit(c.text)
		}
		for _, q := range c.quantities {
			if q.Shape != quantity.Product || len(q.Terms) < 2 {
				continue
			}
			score := labelled * r.weight
			if len(q.Terms) == 2 {
				score *= 0.85 // all three sides say more: a folded size, an opening
			}
			d.sides(r.text(), c, q, unit, score)
		}
	}
}

func sizeUnit(text string) quantity.Unit {
	switch t := strings.ToLower(text); {
	case strings.Contains(t, "mm"):
		return quantity.MM
	case strings.Contains(t, "inch"), strings.Contains(t, "(in"), strings.Contains(t, "[in"):
		return quantity.Inch
	case strings.Contains(t, "(cm") || strings.Contains(t, "[cm"):
		return quantity.CM
	}
	return quantity.None
}

// sides files a product of lengths as longest, middle and shortest side.
func (d *document) sides(lab string, c *cell, q quantity.Quantity, unit quantity.Unit, score float64) {
	var sides []side
	for i, t := range q.Terms {
		if t.Unit == quantity.None && q.Unit == quantity.None {
			q.Terms = slices.Clone(q.Terms)
			q.Terms[i].Unit = unit
		}
		k, ok := claimOf("", c, lab, q, i, quantity.MM, score)
		if !ok {
			return
		}
		v, _, _, _ := quantity.Convert(q.Terms[i], cmp.Or(q.Terms[i].Unit, q.Unit, quantity.MM), quantity.MM)
		k.box = c.boxOf(t.Start, t.End)
		sides = append(sides, side{k, v})
	}
	d.file3(sides)
}

// file3 sorts sides by length and files them; a pair without a depth fills two fields.
func (d *document) file3(sides []side) {
	slices.SortStableFunc(sides, func(a, b side) int { return cmp.Compare(b.value, a.value) })
	if len(sides) < 2 || len(sides) > 3 || sides[0].value < 250 || sides[0].value > 4000 || sides[1].value < 150 || sides[len(sides)-1].value > 2500 {
		return
	}
	if len(sides) == 3 && (sides[2].value > 200 || sides[2].value < 1) {
		return
	}
	for i, f := range []string{"/body/length_mm", "/body/width_mm", "/body/depth_mm"}[:len(sides)] {
		k := sides[i].k
		k.field = f
		d.ledger.add(k)
	}
}

// oneSide collects sides printed in rows of their own: length, width, thickness.
func (d *document) oneSide(r *row) {
	unit := sizeUnit(r.text())
	for _, c := range r.values {
		for _, q := range c.quantities {
			if q.Shape != quantity.Single && q.Shape != quantity.Within {
				continue
			}
			if q.Unit == quantity.None {
				q.Unit = unit
				q.Terms = slices.Clone(q.Terms)
				q.Terms[0].Unit = unit
			}
			if q.Unit != quantity.MM && q.Unit != quantity.CM && q.Unit != quantity.M && q.Unit != quantity.Inch {
				continue
			}
			k, ok := claimOf("", c, r.text(), q, 0, quantity.MM, labelled)
			if !ok {
				continue
			}
			v, _, _, _ := quantity.Convert(q.Terms[0], q.Unit, quantity.MM)
			d.lengths[r.concept] = append(d.lengths[r.concept], side{k, v})
		}
	}
}

// separateSides files length, width and depth rows as one size, where each was printed.
func (d *document) separateSides() {
	l, w, t := d.lengths["length"], d.lengths["width"], d.lengths["depth"]
	if len(l) == 0 || len(w) == 0 || l[0].value < 250 || w[0].value < 150 {
		return
	}
	sides := []side{l[0], w[0]}
	if len(t) > 0 && t[0].value < 200 {
		sides = append(sides, t[0])
	}
	d.file3(sides)
}

// glass reads the thickness of a cover; "2.0 + 2.0 mm" and "dual glass" tell of both sides.
func glass(field string) fact {
	return func(d *document, r *row) {
		for _, c := range r.values {
			var mm []claim
			for _, q := range c.quantities {
				for i, t := range q.Terms {
					unit := cmp.Or(t.Unit, q.Unit)
					if unit != quantity.MM && unit != quantity.Inch || q.Shape == quantity.Within && i > 0 {
						continue
					}
					if mm, _, _, ok := quantity.Convert(t, unit, quantity.MM); !ok || mm < 0.5 || mm > 12 || unit == quantity.Inch && inMillimetres(c) {
						continue
					}
					if k, ok := claimOf(field, c, r.text(), q, i, quantity.MM, labelled); ok {
						mm = append(mm, k)
					}
				}
			}
			for i, k := range mm {
				switch {
				case i == 0:
					d.ledger.add(k)
				case i == 1 && field == "/body/front_glass_mm":
					k.field = "/body/rear_glass_mm"
					d.ledger.add(k)
				}
			}
		}
	}
}

// inMillimetres: the cell prints millimetres too; inches beside them say the same.
func inMillimetres(c *cell) bool {
	return slices.ContainsFunc(c.quantities, func(q quantity.Quantity) bool { return q.Unit == quantity.MM })
}

var ipPattern = regexp.MustCompile(`(?i)\bIP\s*-?\s?(6[5-9])\b`)

var diodeWord = regexp.MustCompile(`(?i)by-?\s?pass|diod|ダイオード|二极管|二極體`)

var countWord = regexp.MustCompile(`(?i)(?:^|[^\pL\d.])(\d{1,2}|two|three|four|six|zwei|drei|deux|trois|dos|tres|due|tre|dois|três|twee|drie|trzy|üç|三|3)(?:$|[^\pL\d.]|\p{Han})`)

var numberWords = map[string]string{"two": "2", "zwei": "2", "deux": "2", "dos": "2", "due": "2", "dois": "2", "twee": "2", "three": "3", "drei": "3", "trois": "3", "tres": "3", "tre": "3", "três": "3", "drie": "3", "trzy": "3", "üç": "3", "三": "3", "four": "4", "six": "6"}

// junctionBox reads the ingress protection and the bypass diodes of a junction box row.
func junctionBox(d *document, r *row) {
	if r.found.Has("connector") && !r.found.Has("jbox") {
		return
	}
	for _, c := range append(slices.Clone(r.label), r.values...) {
		d.ingress(r.text(), c, labelled)
		d.diodesIn(r.text(), c, labelled)
	}
}

func (d *document) ingress(lab string, c *cell, score float64) {
	if m := ipPattern.FindStringSubmatchIndex(c.text); m != nil {
		d.ledger.add(claim{field: "/body/junction_box_ip", text: true, literal: "IP" + c.text[m[2]:m[3]], printed: c.text[m[0]:m[1]], label: lab, page: c.page, box: c.boxOf(m[0], m[1]), by: c.by, score: score})
	}
}

// diodesIn takes the last count before the word for diodes, within the same phrase ("IP68, three diodes" has three), else the first right behind it.
func (d *document) diodesIn(lab string, c *cell, score float64) {
	word := diodeWord.FindStringIndex(c.text)
	if word == nil {
		return
	}
	from := strings.LastIndexAny(c.text[:word[0]], ",;/") + 1
	var at []int
	for _, m := range countWord.FindAllStringSubmatchIndex(c.text[from:word[0]], -1) {
		at = []int{from + m[2], from + m[3]}
	}
	if at == nil {
		if m := countWord.FindStringSubmatchIndex(c.text[word[1]:]); m != nil && m[2] < 14 {
			at = []int{word[1] + m[2], word[1] + m[3]}
		}
	}
	if at == nil {
		return
	}
	literal := c.text[at[0]:at[1]]
	if n, ok := numberWords[strings.ToLower(literal)]; ok {
		literal = n
	}
	literal = strings.TrimLeft(literal, "0")
	d.ledger.add(claim{field: "/body/bypass_diodes", literal: literal, printed: c.text[at[0]:at[1]], label: lab, page: c.page, box: c.boxOf(at[0], at[1]), by: c.by, score: score})
}

// cable reads cross-section and lengths.
func cable(d *document, r *row) {
	for _, c := range r.values {
		for _, q := range c.quantities {
			switch {
			case q.Unit == quantity.MM2:
				last := len(q.Terms) - 1
				d.claim("/body/cable_mm2", r, c, q, last, quantity.MM2, 1, 20, labelled)
			case q.Unit == quantity.MM || q.Unit == quantity.M || q.Unit == quantity.CM || q.Unit == quantity.Inch:
				for i := range q.Terms {
					if q.Shape == quantity.Product && i == 0 && q.Terms[0].Value <= 2 || q.Shape == quantity.Within && i > 0 {
						continue
					}
					if k, ok := claimOf("/body/cable_length_mm", c, r.text(), q, i, quantity.MM, labelled); ok {
						k.literal = strings.TrimPrefix(k.literal, "-")
						d.cables = append(d.cables, k)
					}
				}
			}
		}
		d.diodesIn(r.text(), c, labelled*0.8)
	}
}

func textFact(field string) fact {
	return func(d *document, r *row) {
		var parts []string
		var first *cell
		for _, c := range r.values {
			if first == nil {
				first = c
			}
			if c.base-first.base > 3*c.size {
				break
			}
			parts = append(parts, c.text)
		}
		if first == nil {
			return
		}
		text := strings.Join(parts, " ")
		if r.tail != "" && first == r.label[0] {
			text = r.tail
		}
		if n := len([]rune(text)); n < 2 || n > 120 {
			return
		}
		d.ledger.add(claim{field: field, text: true, literal: text, printed: text, label: r.text(), page: first.page, box: first.box, by: first.by, score: labelled * r.weight})
	}
}

var classPattern = regexp.MustCompile(`(?:^|[\s(/])(?:[Cc][Ll][Aa][Ss][Ss][Ee]?|[Kk]lasse|[Cc]lase|[Kk]lasa|[Kk]las|[Ss]ınıf)?\s*(III|II|Ⅱ|Ⅲ|I{1,3}|2|0)(?:$|[\s),;/])`)

func safetyClass(d *document, r *row) {
	for _, c := range r.values {
		m := classPattern.FindStringSubmatchIndex(c.text)
		if m == nil {
			continue
		}
		literal := strings.NewReplacer("Ⅱ", "II", "Ⅲ", "III", "2", "II").Replace(c.text[m[2]:m[3]])
		d.ledger.add(claim{field: "/limits/safety_class", text: true, literal: literal, printed: c.text[m[2]:m[3]], label: r.text(), page: c.page, box: c.boxOf(m[2], m[3]), by: c.by, score: labelled})
		return
	}
}

var firePattern = regexp.MustCompile(`(?i)(?:^|class|klasse|clase|classe|type|typ|tipo|rating|/|\s|\()\s*([ABC]|[12]?[0-9])(?:$|[\s),;/])`)

func fireClass(d *document, r *row) {
	var parts []string
	for _, c := range r.values {
		if firePattern.MatchString(c.text) {
			parts = append(parts, c.text)
		}
	}
	if len(parts) == 0 {
		return
	}
	c := r.values[0]
	text := strings.Join(parts, ", ")
	if m := regexp.MustCompile(`(?i)^(?:class|klasse|clase|classe)\s+([ABC])$`).FindStringSubmatch(text); m != nil {
		text = strings.ToUpper(m[1])
	}
	d.ledger.add(claim{field: "/limits/fire_class", text: true, literal: text, printed: strings.Join(parts, ", "), label: r.text(), page: c.page, box: c.box, by: c.by, score: labelled})
}
