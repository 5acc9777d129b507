package extract

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"pvtally/extract/page"
	"pvtally/extract/quantity"
	"pvtally/schema"
)

// claim is one place on the page that could fill a field.
type claim struct {
	field    string // RFC 6901 pointer
	literal  string // a JSON number, or the text of a text field
	text     bool
	halfStep string // of a converted value
	printed  string
	unit     string
	label    string
	page     int
	box      page.Box
	by       page.By
	score    float64 // how well label, unit and place fit; see the weights
	note     string
	row      string  // of a table: claims of one row share it, class by class
	readings int     // independent readings that agree; 0 counts as 1
	step     bool    // of a warranty in steps: the longest step is the warranty's
	after    float64 // of an output promised after some years: the years; the latest is the warranty's end
	part     int     // of a sheet with several series: the one it speaks of, from 1; 0 is all
	open     string  // why its reading is not to be trusted; such a claim fills no field, and keeps weaker ones from filling it with something else
	instead  string  // what else it may read, where open
}

// asides are fields whose printed values go under "also" only: nothing measures yet how well they are read.
var asides = map[string]bool{"/cell/busbars": true, "/tolerance/voc_pct": true, "/tolerance/isc_pct": true}

// Weights of a claim. They are compared within one field only; claims nearer than margin that differ leave the field unresolved.
const (
	labelled  = 1.0 // a label of its own on the same line, the unit fits
	inTable   = 1.2 // in an electrical table
	worded    = 0.7 // a sentence
	loosely   = 0.5 // by its place alone: a number over or under its words
	converted = 0.8 // times: the record's unit is not printed
	unitless  = 0.9 // times: no unit printed
	margin    = 0.12
)

// ledger collects the claims of a sheet and settles them.
type ledger struct {
	claims []claim
	refuse []schema.Unresolved
	part   int // given to claims as they come
}

func (l *ledger) add(c claim) {
	if c.part == 0 {
		c.part = l.part
	}
	l.claims = append(l.claims, c)
}

// of gives the claims that speak of one series; what speaks of it alone goes before what speaks of all.
func (l *ledger) of(part int) *ledger {
	own := map[string]bool{}
	for _, c := range l.claims {
		own[c.field] = own[c.field] || c.part == part
	}
	out := &ledger{refuse: l.refuse}
	for _, c := range l.claims {
		if c.part == part || c.part == 0 && !own[c.field] {
			out.claims = append(out.claims, c)
		}
	}
	return out
}

// refused notes what was seen and not decided.
func (l *ledger) refused(field, label, why string, c *cell, candidates ...string) {
	u := schema.Unresolved{Field: field, Label: label, Candidates: candidates, Why: why}
	if c != nil {
		u.Page, u.Box = c.page, schemaBox(c.box)
	}
	l.refuse = append(l.refuse, u)
}

func schemaBox(b page.Box) schema.Box { return schema.Box{b.X0, b.Y0, b.X1, b.Y1} }

// claimOf makes a claim of one term of a quantity in the unit the field wants, converting where the sheet prints another. ok is false where the unit
// cannot be the field's.
func claimOf(field string, c *cell, label string, q quantity.Quantity, term int, want quantity.Unit, score float64) (claim, bool) {
	t := q.Terms[term]
	unit := t.Unit
	if unit == quantity.None {
		unit = q.Unit
	}
	k := claim{field: field, literal: t.Literal, printed: c.text[q.Start:q.End], unit: string(unit), label: label, page: c.page, box: c.boxOf(q.Start, q.End), by: c.by, score: score}
	if c.by == page.ByPicture && likeDigit(c.text, t.Start, t.End) {
		k.open = "a sign that may be a misread digit stands at the number"
	}
	switch {
	case unit == want:
	case unit == quantity.None:
		k.score *= unitless
	default:
		_, half, literal, ok := quantity.Convert(t, unit, want)
		if !ok {
			return claim{}, false
		}
		k.literal, k.halfStep = literal, literalOf(half)
		k.score *= converted
	}
	if q.UnitCut {
		k.score *= unitless
	}
	return k, true
}

// likeDigit tells whether a sign touches the number at start..end that a picture's reader often makes of a one, and that belongs to
// nothing else there: "51.4]", "|500".
func likeDigit(text string, start, end int) bool {
	before, _ := utf8.DecodeLastRuneInString(text[:start])
	after, _ := utf8.DecodeRuneInString(text[end:])
	return strings.ContainsRune("]|!}", after) && !strings.ContainsAny(text[:start], "[|{") ||
		strings.ContainsRune("[|!{", before) && !strings.ContainsAny(text[end:], "]|}")
}

// settle groups the claims by field, takes the best where it is clear, and writes values, evidence, repetitions and refusals into the record.
func (l *ledger) settle(s *schema.Sheet) {
	s.Evidence = map[string]schema.Evidence{}
	byField := map[string][]claim{}
	var fields []string
	for _, c := range l.claims {
		if _, ok := byField[c.field]; !ok {
			fields = append(fields, c.field)
		}
		byField[c.field] = append(byField[c.field], c)
	}
	slices.Sort(fields)
	for _, f := range fields {
		l.settleField(s, f, byField[f])
	}
	for _, u := range l.refuse {
		if _, filled := s.Evidence[u.Field]; !filled {
			s.Unresolved = append(s.Unresolved, u)
		}
	}
	slices.SortStableFunc(s.Unresolved, func(a, b schema.Unresolved) int { return cmp.Compare(a.Field, b.Field) })
}

func (l *ledger) settleField(s *schema.Sheet, field string, claims []claim) {
	claims, ok := l.closed(s, field, longestStep(claims))
	if !ok {
		return
	}
	slices.SortStableFunc(claims, func(a, b claim) int { return cmp.Compare(b.score, a.score) })
	best := claims[0]
	for _, c := range claims[1:] {
		if sameValue(c, best) {
			if len(c.literal) > len(best.literal) && best.score-c.score < margin && best.halfStep == "" && c.halfStep == "" {
				best = c // the finer print of the same value
			}
			continue
		}
		if best.score-c.score < margin {
			l.disagree(s, field, best, c, claims)
			return
		}
	}
	if asides[field] {
		s.Also = append(s.Also, alsoOf(field, best))
		return
	}
	if err := write(s, field, best); err != nil {
		s.Unresolved = append(s.Unresolved, unresolvedOf(field, best, []string{best.printed}, err.Error()))
		return
	}
	s.Evidence[field] = evidenceOf(best)
	for _, c := range claims {
		if c.text || c.page == best.page && c.box == best.box || sameValue(c, best) && c.halfStep == best.halfStep && c.unit == best.unit && c.page == best.page {
			continue
		}
		s.Also = append(s.Also, alsoOf(field, c))
	}
}

// closed takes out the claims whose reading is open. The field stays open with them where what is left is weaker and says neither of their readings.
func (l *ledger) closed(s *schema.Sheet, field string, claims []claim) ([]claim, bool) {
	var left []claim
	var doubt *claim
	for i, c := range claims {
		if c.open == "" {
			left = append(left, c)
		} else if doubt == nil || c.score > doubt.score {
			doubt = &claims[i]
		}
	}
	if doubt == nil {
		return left, true
	}
	for _, c := range left {
		if c.halfStep != "" && doubt.halfStep == "" && c.unit != doubt.unit && sameValue(c, *doubt) && !saysOther(*doubt, c) { // "5,400 Pa / 113 psf"
			doubt.open, doubt.note = "", joinNotes(doubt.note, "the same in "+c.unit+" stands beside it")
			return append(left, *doubt), true
		}
		if c.score-doubt.score >= margin || sameValue(c, *doubt) || strings.Contains(doubt.instead, c.literal) {
			return left, true
		}
	}
	var candidates []string
	for _, text := range []string{doubt.printed, doubt.instead} {
		if text != "" {
			candidates = append(candidates, text)
		}
	}
	s.Unresolved = append(s.Unresolved, unresolvedOf(field, *doubt, candidates, doubt.open))
	return nil, false
}

// longestStep keeps of the steps of a warranty the longest.
func longestStep(claims []claim) []claim {
	longest := 0.0
	for _, c := range claims {
		if v, err := strconv.ParseFloat(c.literal, 64); err == nil && c.step {
			longest = max(longest, v)
		}
	}
	latest := 0.0
	for _, c := range claims {
		latest = max(latest, c.after)
	}
	return slices.DeleteFunc(claims, func(c claim) bool {
		if c.after > 0 && c.after < latest {
			return true
		}
		v, err := strconv.ParseFloat(c.literal, 64)
		return c.step && err == nil && v < longest
	})
}

// saysOther: the doubt's other reading goes with the claim as well, so that the claim decides nothing.
func saysOther(doubt, c claim) bool {
	other := literalIn(doubt.instead, doubt)
	return other != "" && other != doubt.literal && sameValue(claim{literal: other}, c)
}

// disagree leaves a field open: two places of equal right print different values.
func (l *ledger) disagree(s *schema.Sheet, field string, best, other claim, claims []claim) {
	var candidates []string
	for _, c := range claims {
		if best.score-c.score < margin && !slices.Contains(candidates, c.printed) {
			candidates = append(candidates, c.printed)
		}
	}
	s.Unresolved = append(s.Unresolved, unresolvedOf(field, best, candidates, "printed differently at places of equal right; the other stands on page "+itoa(other.page)))
}

func unresolvedOf(field string, c claim, candidates []string, why string) schema.Unresolved {
	return schema.Unresolved{Field: field, Label: c.label, Candidates: candidates, Page: c.page, Box: schemaBox(c.box), Why: why}
}

func evidenceOf(c claim) schema.Evidence {
	e := schema.Evidence{Label: c.label, Printed: c.printed, Unit: c.unit, Page: c.page, Box: schemaBox(c.box), By: string(c.by), Readings: max(1, c.readings), Note: c.note}
	if c.halfStep != "" {
		e.HalfStep = schema.MustNumber(c.halfStep)
	}
	return e
}

func alsoOf(field string, c claim) schema.Also {
	a := schema.Also{Field: field, Label: c.label, Printed: c.printed, Page: c.page, Box: schemaBox(c.box), By: string(c.by)}
	if n, err := schema.ParseNumber(c.literal); err == nil {
		a.Value = n
	}
	if c.halfStep != "" {
		a.HalfStep = schema.MustNumber(c.halfStep)
	}
	return a
}
