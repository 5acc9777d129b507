package extract

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
	"pvtally/extract/table"
)

// cell is a stretch of a run between wide gaps: what may be a label, a value, or a label with its value.
type cell struct {
	page int
	line int // index of the page's lines
	text string
	box  page.Box
	base float64
	size float64
	bold bool
	by   page.By
	run  *table.Run
	off  int // of text in the run's

	quantities []quantity.Quantity
	head       label.Found // the text before the first quantity, the whole text where there is none
	concept    label.Concept
	letters    int // letters outside the quantities

	found *label.Found // of the whole text, once asked for
	cond  *condition
}

// labelShare is the share of a text that the lexicon must know for the text to be a label rather than a sentence.
const labelShare = 0.5

func newCell(r *table.Run, off int, text string, pageNumber, line int) cell {
	c := cell{page: pageNumber, line: line, text: text, run: r, off: off, base: r.Baseline, size: r.Size, bold: r.Bold, by: r.By}
	c.box = r.BoxOf(off, off+len(text))
	c.quantities = slices.DeleteFunc(quantity.Scan(text), isContainer)
	head := text
	if len(c.quantities) > 0 {
		head = text[:c.quantities[0].Start]
	}
	c.head = label.Find(head)
	c.concept = conceptOf(c.head)
	at := 0
	for _, q := range c.quantities {
		c.letters += countLetters(text[at:max(at, q.Start)])
		at = q.End
	}
	c.letters += countLetters(text[min(at, len(text)):])
	return c
}

// conceptOf is a label's meaning where the lexicon knows enough of it; a symbol that ends an unknown phrase ("Capacity rating – Pmax (Wp)") is enough.
func conceptOf(f label.Found) label.Concept {
	if f.Share() >= labelShare {
		return f.Concept()
	}
	f.Text = unitBracket.ReplaceAllString(f.Text, "")
	at := strings.LastIndexAny(strings.TrimRight(f.Text, " )]"), "–—-(:[,")
	for range 2 {
		if at < 0 {
			break
		}
		if tail := label.Find(f.Text[at:]); tail.Share() > 0.85 && electrical[tail.Concept()] {
			return tail.Concept()
		}
		at = strings.LastIndexAny(f.Text[:at], "–—-(:[,")
	}
	return ""
}

// unitBracket is the unit at a label's end: "(V)", "[%/K]".
var unitBracket = regexp.MustCompile(`\s*[\[(（]\s*(?:[VAW%]|Wp|%/\S{1,2})\s*[\])）]\s*$`)

// cells cuts a line's runs at their tabs.
func cells(l *table.Line, pageNumber, line int) []cell {
	var out []cell
	for i := range l.Runs {
		r := &l.Runs[i]
		off := 0
		for part := range strings.SplitSeq(r.Text, "\t") {
			lead := len(part) - len(strings.TrimLeft(part, " "))
			if text := strings.TrimSpace(part); text != "" {
				out = append(out, newCell(r, off+lead, text, pageNumber, line))
			}
			off += len(part) + 1
		}
	}
	return out
}

// boxOf is the place of text[start:end].
func (c *cell) boxOf(start, end int) page.Box { return c.run.BoxOf(c.off+start, c.off+end) }

// whole is the text seen with the lexicon's eyes.
func (c *cell) whole() label.Found {
	if c.found == nil {
		f := label.Find(c.text)
		c.found = &f
	}
	return *c.found
}

// condition is the condition the text speaks of.
func (c *cell) condition() condition {
	if c.cond == nil {
		k := conditionOf(c.text, c.whole())
		c.cond = &k
	}
	return *c.cond
}

// isValue: quantities and hardly anything else.
func (c *cell) isValue() bool {
	if len(c.quantities) == 0 {
		return false
	}
	if q := c.quantities[0]; countLetters(c.head.Text) >= 2 && q.Unit == quantity.None && q.Bound == quantity.Exact {
		return false // "OC 125" is a name
	}
	covered := 0
	for _, q := range c.quantities {
		covered += len([]rune(c.text[q.Start:q.End]))
	}
	return countLetters(c.head.Text) <= 3 && c.head.Concept() == "" && c.letters <= covered+3
}

// isLabel: words that the lexicon knows, before any quantity.
func (c *cell) isLabel() bool { return c.concept != "" }

// isUnit: a unit or a symbol on its own: "(V)", "[%/K]", "Pmax", "W".
func (c *cell) isUnit() bool {
	return len(c.quantities) == 0 && (c.letters <= 5 || strings.HasPrefix(c.text, "[") && len([]rune(c.text)) <= 12)
}

func countLetters(s string) int {
	n := 0
	for _, r := range s {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			n++
		}
	}
	return n
}

// isContainer: "40'" and "20 ft" name shipping containers; no other length on a sheet is printed in whole feet of these sizes.
func isContainer(q quantity.Quantity) bool {
	v := q.Terms[0].Value
	return q.Unit == quantity.Foot && len(q.Terms) == 1 && (v == 20 || v == 40 || v == 45 || v == 53)
}
