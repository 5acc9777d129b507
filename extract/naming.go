package extract

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"pvtally/extract/page"
)

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
