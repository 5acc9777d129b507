package extract

import (
	"slices"
	"strconv"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
)

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
	text := between(a, b)
	return len(text) < maxBetween && !strings.ContainsAny(text, ",;:、，")
}

// between is what stands between two figures of one text.
func between(a, b clause) string { return a.flow.text[min(a.q.End, b.q.Start):b.q.Start] }

// maxBetween is how many bytes stand between a year and what it is said of at most.
const maxBetween = 24

// yearsNear is the count of years that a clause's neighbours or its own words name: "83 % after 25 years", "in the 25th year 80.7 %".
func yearsNear(i int, clauses []clause) (float64, bool) {
	around := []int{i + 1, i - 1}
	if yearsLead(clauses) {
		around = []int{i - 1, i + 1}
	}
	for _, apart := range []string{":;；", ""} { // what no colon parts goes before what one does
		for _, j := range around {
			if j < 0 || j >= len(clauses) || clauses[j].flow != clauses[i].flow || strings.ContainsAny(between(clauses[min(i, j)], clauses[max(i, j)]), apart) {
				continue
			}
			q := clauses[j].q
			if q.Unit == quantity.Year || q.Unit == quantity.None && label.Find(lastWords(clauses[j].before, 2)).Any("year", "finaloutput") {
				v := abs(q.Terms[0].Value)
				return v, v >= 20 && v <= 50
			}
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
		case strings.ContainsAny(between(clauses[i-1], clauses[i]), ":;,、，；"): // "25 years: 90 % after 10 years, 80 % after 25 years"
		case a.Unit == quantity.Year && isShare(b):
			return true
		case isShare(a) && b.Unit == quantity.Year:
			return false
		}
	}
	return false
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

// begun is the sentence up to the figure.
func (c clause) begun() string {
	text := c.flow.text[:c.q.Start]
	if at := lastStop(text); at >= 0 {
		return text[at:]
	}
	return text
}

// yearlySentence: the sentence speaks of a yearly loss and this is its first per cent: "yearly degradation from the 2nd to the 25th year 0.55 %".
func (c clause) yearlySentence() bool {
	found := label.Find(c.begun())
	return found.Has("annual") && !found.Has("firstyear") && !slices.ContainsFunc(quantity.Scan(c.begun()), func(q quantity.Quantity) bool { return q.Unit == quantity.Percent })
}

// sentenceOfOthers: the sentence begins with other makers' modules or their warranty: "Usual step warranty: 90 % after 10, 80 % after 25 years".
func (c clause) sentenceOfOthers() bool {
	head, _, colon := strings.Cut(c.begun(), ":")
	return colon && label.Find(head).Has("standardmodule") && !strings.ContainsAny(head, "0123456789")
}

func lastRunes(s string, n int) string {
	r := []rune(s)
	return string(r[max(0, len(r)-n):])
}
