package extract

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"pvtally/extract/page"
	"pvtally/extract/quantity"
)

// place is where a value was read.
type place struct {
	page int
	box  page.Box
}

// reread settles values that come from a picture by a second reading, of the cell alone. Agreement counts as two readings. Where the two differ, one of them may
// be impossible (the row's decimals, the order of the classes): then the other stands, and its evidence says why. Else the field stays open with both.
func (l *ledger) reread(second map[place]page.CellReading) {
	shapes := l.rowShapes()
	for i := range l.claims {
		c := &l.claims[i]
		if c.by != page.ByPicture {
			continue
		}
		r, asked := second[place{c.page, c.box}]
		agree := asked && sameDigits(*c, r.Text) && (r.Sure >= secondLeast || r.Sure >= sameLeast && sameText(c.printed, r.Text))
		switch row := shapes[c.row]; {
		case (!asked || agree) && row.decimals >= 0 && !row.possible(c.literal) && !(agree && row.possible(c.literal+"0") && decimals(c.literal) > 0): // some rows print 9.3 beside 9.24
			c.open = "read from a picture, and the row rules it out"
		case !asked || c.text: // digits that agree say nothing of the letters between them
		case agree:
			c.readings = 2
		default:
			c.decide(r, row)
		}
	}
	l.openTogether()
}

// openTogether: the numbers of one quantity stand or fall together. Where one of a size's three is misread, the others may have changed places.
func (l *ledger) openTogether() {
	type whole struct {
		page           int
		printed, label string
	}
	open := map[whole]claim{}
	for _, c := range l.claims {
		if c.open != "" {
			open[whole{c.page, c.printed, c.label}] = c
		}
	}
	for i := range l.claims {
		c := &l.claims[i]
		if o, ok := open[whole{c.page, c.printed, c.label}]; ok && c.open == "" && c.by == page.ByPicture && len(digitRuns(c.printed)) > 1 && abs(o.box.Y0-c.box.Y0) < c.box.H() {
			c.open, c.instead, c.readings = "part of what is not read with certainty", "", 0
		}
	}
}

// The least confidence with which a second reading counts, and with which it does where it is the first letter by letter: units and
// signs that come out the same twice are no chance.
const (
	secondLeast = 0.3
	sameLeast   = 0.1
)

// sameText: the same letters, digits and signs; spaces and specks aside.
func sameText(a, b string) bool {
	bare := func(s string) string {
		return strings.Map(func(r rune) rune {
			if unicode.IsSpace(r) || strings.ContainsRune("'’‘`´\"“”|_;:", r) {
				return -1
			}
			return r
		}, strings.TrimRight(s, " .,"))
	}
	return bare(a) == bare(b)
}

// sameDigits: the second reading holds the same numbers as the first, in order; one may hold more than the other at its ends (a place is a part of a cell), but
// not less than the value's own.
func sameDigits(c claim, second string) bool {
	a, b := digitRuns(c.printed), digitRuns(second)
	if len(a) == 0 || len(b) == 0 || !holds(a, b) && !holds(b, a) {
		return false
	}
	own := digitRuns(c.literal)
	return !holds(a, own) || holds(b, own)
}

// holds: the runs stand in the others one after another.
func holds(all, runs []string) bool {
	for i := 0; i+len(runs) <= len(all); i++ {
		if slices.Equal(all[i:i+len(runs)], runs) {
			return true
		}
	}
	return false
}

// digitRuns are the numbers of a text as digits with their decimal point; signs, units and spaces are another matter.
func digitRuns(text string) []string {
	var out []string
	for _, run := range strings.FieldsFunc(text, func(r rune) bool { return (r < '0' || r > '9') && r != '.' && r != ',' }) {
		if run = strings.Trim(strings.ReplaceAll(run, ",", "."), "."); run != "" {
			out = append(out, run)
		}
	}
	return out
}

// shape is what the values of a row have in common.
type shape struct {
	decimals int // of most values; -1 where there is no majority
	values   []float64
}

// rowShapes takes the decimals that most values of each row print.
func (l *ledger) rowShapes() map[string]shape {
	count := map[string]map[int]int{}
	values := map[string][]float64{}
	for _, c := range l.claims {
		if c.row == "" {
			continue
		}
		if count[c.row] == nil {
			count[c.row] = map[int]int{}
		}
		count[c.row][decimals(c.literal)]++
		if v, err := strconv.ParseFloat(c.literal, 64); err == nil {
			values[c.row] = append(values[c.row], v)
		}
	}
	out := map[string]shape{"": {decimals: -1}} // what stands in no table's row
	for row, n := range count {
		s := shape{decimals: -1, values: values[row]}
		all := 0
		for d, k := range n {
			all += k
			if s.decimals < 0 || k > n[s.decimals] || k == n[s.decimals] && d > s.decimals {
				s.decimals = d
			}
		}
		if all < 3 || n[s.decimals]*2 <= all {
			s.decimals = -1
		}
		out[row] = s
	}
	return out
}

// possible: the literal has the row's decimals and lies among the row's values.
func (s shape) possible(literal string) bool {
	if s.decimals < 0 {
		return true
	}
	v, err := strconv.ParseFloat(literal, 64)
	if err != nil || len(s.values) == 0 || decimals(literal) != s.decimals {
		return false
	}
	sorted := slices.Sorted(slices.Values(s.values))
	middle := sorted[len(sorted)/2]
	return v > middle*0.8 && v < middle*1.25
}

// decide chooses between two readings that differ, or leaves the claim open.
func (c *claim) decide(r page.CellReading, row shape) {
	text := r.Text
	if r.Sure < secondLeast {
		text = ""
	}
	other := literalIn(text, *c)
	first, second := row.possible(c.literal), other != "" && row.possible(other)
	switch {
	case first && !second && row.decimals >= 0 && (other != "" || text == ""):
		c.note = joinNotes(c.note, fmt.Sprintf("the cell alone reads %q, which the row rules out", text))
	case second && !first:
		c.note = joinNotes(c.note, fmt.Sprintf("the page reads %q, which the row rules out; the cell alone reads this", c.printed))
		c.literal, c.printed = other, text
	default:
		c.open, c.instead = "the page and the cell alone read differently", r.Text
	}
}

// literalIn is the one number of a second reading that can stand for the claim's; "" where there are none or several.
func literalIn(text string, c claim) string {
	qs := quantity.Scan(text)
	if len(qs) != 1 || len(qs[0].Terms) != 1 {
		return ""
	}
	literal := qs[0].Terms[0].Literal
	if strings.HasPrefix(c.literal, "-") && !strings.HasPrefix(literal, "-") {
		return "" // a sign lost in one of the readings settles nothing
	}
	return literal
}

func joinNotes(a, b string) string {
	return cmp.Or(strings.TrimPrefix(a+"; "+b, "; "), b)
}
