package extract

import (
	"math"
	"slices"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
	"pvtally/extract/table"
)

// flow is text that runs on over lines: a paragraph, a footnote, a large number with the words beside and under it.
type flow struct {
	page int
	text string
	runs []*table.Run
	at   []int // byte offset in text of each run
	box  page.Box
	cut  []clause // once asked for
}

const (
	flowPitch = 1.75 // lines of one flow stand no farther apart, in sizes of the lettering
	flowGap   = 2.2  // runs on one line that a flow joins
)

// flows gathers a page's runs into paragraphs, column by column.
func (v *view) flows() []*flow {
	var out []*flow
	var last []*table.Run // last run of each open flow
	for i := range v.lines {
		for k := range v.lines[i].Runs {
			r := &v.lines[i].Runs[k]
			best := -1
			for f := len(out) - 1; f >= 0 && f >= len(out)-40; f-- {
				if continues(last[f], r) {
					best = f
					break
				}
			}
			if best < 0 {
				out = append(out, &flow{page: v.page.Number, box: r.Box})
				last = append(last, nil)
				best = len(out) - 1
			}
			f := out[best]
			if len(f.text) > 0 {
				if joined, ok := strings.CutSuffix(f.text, "-"); ok && startsLower(r.Text) {
					f.text = joined
				} else {
					f.text += " "
				}
			}
			f.at = append(f.at, len(f.text))
			f.text += strings.ReplaceAll(r.Text, "\t", " ")
			f.runs = append(f.runs, r)
			f.box = f.box.Union(r.Box)
			last[best] = r
		}
	}
	return out
}

func startsLower(s string) bool {
	return s != "" && strings.ToLower(s[:1]) == s[:1] && strings.ToUpper(s[:1]) != s[:1]
}

// continues: the run goes on where the last one ended, on the same line or the next.
func continues(last, r *table.Run) bool {
	if math.Abs(last.Baseline-r.Baseline) < 0.3*last.Size {
		gap := r.Box.X0 - last.Box.X1
		return gap >= 0 && gap < flowGap*last.Size && math.Max(last.Size, r.Size) < 1.3*math.Min(last.Size, r.Size)
	}
	pitch := r.Baseline - last.Baseline
	if pitch <= 0 || pitch > flowPitch*math.Max(last.Size, r.Size) || math.Max(last.Size, r.Size) > 1.15*math.Min(last.Size, r.Size) {
		return false
	}
	mid := math.Abs((r.Box.X0+r.Box.X1)/2 - (last.Box.X0+last.Box.X1)/2)
	return math.Abs(r.Box.X0-last.Box.X0) < 1.6*r.Size || mid < 0.8*r.Size
}

// place is the cell-like place of text[start:end] for evidence.
func (f *flow) place(start, end int) (page.Box, page.By) {
	var box page.Box
	var by page.By
	found := false
	for i, r := range f.runs {
		from, to := f.at[i], f.at[i]+len(r.Text)
		if to <= start || from >= end {
			continue
		}
		b := r.BoxOf(max(0, start-from), min(end, to)-from)
		if found {
			b = b.Union(box)
		}
		box, by, found = b, r.By, true
	}
	return box, by
}

// clause is a stretch of a flow around one quantity: the words before it and after it, up to the neighbouring quantities.
type clause struct {
	flow          *flow
	q             quantity.Quantity
	before, after string
}

// clauses cuts a flow at its quantities; sentences end at full stops and bullets.
func (f *flow) clauses() []clause {
	if f.cut != nil {
		return f.cut
	}
	qs := slices.DeleteFunc(singly(quantity.Scan(f.text)), f.isYearNumber)
	var out []clause
	for i, q := range qs {
		lo, hi := 0, len(f.text)
		if i > 0 {
			lo = qs[i-1].End
		}
		if i+1 < len(qs) {
			hi = qs[i+1].Start
		}
		before, after := f.text[lo:q.Start], f.text[q.End:hi]
		if at := lastStop(before); at >= 0 {
			before = before[at:]
		}
		if at := firstStop(after); at >= 0 {
			after = after[:at]
		}
		out = append(out, clause{f, q, before, after})
	}
	f.cut = out
	return out
}

var stops = []string{". ", "; ", "• ", "● ", "▪ ", "。", "；", "! "}

// lastStop is the byte offset behind the last end of a sentence in s, firstStop that of the first one; -1 where there is none.
func lastStop(s string) int {
	_, at := stopsIn(s)
	return at
}

func firstStop(s string) int {
	at, _ := stopsIn(s)
	return at
}

func stopsIn(s string) (first, last int) {
	first, last = -1, -1
	for _, stop := range stops {
		for from := 0; ; {
			i := strings.Index(s[from:], stop)
			if i < 0 {
				break
			}
			i += from
			from = i + len(stop)
			if ordinal(s, i) {
				continue
			}
			if first < 0 || i < first {
				first = i
			}
			last = max(last, from)
		}
	}
	return first, last
}

// ordinal tells whether the point at i belongs to a number of two digits at most and ends no sentence: a small letter follows ("od 2. do
// 25. roku"), or the word for year, which German writes large ("im 25. Jahr").
func ordinal(s string, i int) bool {
	digits := 0
	for k := i - 1; k >= 0 && s[k] >= '0' && s[k] <= '9'; k-- {
		digits++
	}
	decimal := i > digits && (s[i-digits-1] == '.' || s[i-digits-1] == ',')
	if s[i] != '.' || digits == 0 || digits > 2 || decimal {
		return false
	}
	rest := strings.TrimSpace(s[i+1:])
	return startsLower(rest) || label.Find(firstWords(rest, 1)).Has("year")
}

// claim makes a claim of the clause's quantity.
func (c clause) claim(field string, term int, score float64) claim {
	box, by := c.flow.place(c.q.Start, c.q.End)
	return claim{field: field, literal: c.q.Terms[term].Literal, printed: c.flow.text[c.q.Start:c.q.End], unit: string(c.q.Unit), label: strings.TrimSpace(shorten(c.before) + " … " + shortenEnd(c.after)), page: c.flow.page, box: box, by: by, score: score}
}

func shorten(s string) string {
	r := []rune(strings.TrimSpace(s))
	if len(r) > 40 {
		r = slices.Concat([]rune("…"), r[len(r)-40:])
	}
	return string(r)
}

func shortenEnd(s string) string {
	r := []rune(strings.TrimSpace(s))
	if len(r) > 40 {
		r = append(r[:40:40], '…')
	}
	return string(r)
}

// sentence is the whole sentence the clause stands in.
func (c clause) sentence() string {
	lo, hi := 0, len(c.flow.text)
	if at := lastStop(c.flow.text[:c.q.Start]); at >= 0 {
		lo = at
	}
	if at := firstStop(c.flow.text[c.q.End:]); at >= 0 {
		hi = c.q.End + at
	}
	return c.flow.text[lo:hi]
}

// lastWords are the last n words of a text.
func lastWords(s string, n int) string {
	words := strings.Fields(s)
	return strings.Join(words[max(0, len(words)-n):], " ")
}

// isYearNumber: "year 1", "Jahr 30": the number counts a year, it is no quantity of its own.
func (f *flow) isYearNumber(q quantity.Quantity) bool {
	v := q.Terms[0].Value
	if q.Unit != quantity.None || q.Shape != quantity.Single || v > 40 || v < 1 {
		return false
	}
	found := label.Find(lastWords(f.text[:q.Start], 1))
	return found.Has("year")
}

// singly takes the members of lists apart: in a sentence "25 years, 2 years" are two statements.
func singly(qs []quantity.Quantity) []quantity.Quantity {
	var out []quantity.Quantity
	for _, q := range qs {
		if q.Shape != quantity.List {
			out = append(out, q)
			continue
		}
		for i, t := range q.Terms {
			one := q
			one.Shape, one.Terms, one.Start, one.End = quantity.Single, q.Terms[i:i+1], t.Start, t.End
			if i == 0 {
				one.Start = q.Start
			}
			if i+1 == len(q.Terms) {
				one.End = q.End
			}
			out = append(out, one)
		}
	}
	return out
}
