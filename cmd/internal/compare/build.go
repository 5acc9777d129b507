package compare

import (
	"fmt"
	"slices"
	"strings"

	"pvtally/cmd/internal/report"
	"pvtally/rules/site"
)

// Candidate is one module that is to be compared.
type Candidate struct {
	*site.Module
	File    string
	Verdict string
	Notes   []string
}

// MaxOptions is how many modules stand side by side: more is a list, not a comparison.
const MaxOptions = 12

// Input is everything a comparison stands on.
type Input struct {
	Version string
	US      bool
	Options []Candidate
	Site    *Site
	Prices  *Prices // nil where there are none
	LeftOut []*report.Unread
}

// builder carries one comparison from calculation to document.
type builder struct {
	Input
	measures
	names []string // the options' letters
	doc   *Doc
	roof  []roof
	heat  []heat
	bills []bill
}

// Build calculates and rounds. It fails only where there is nothing to compare or too much.
func Build(in Input) (*Doc, error) {
	if n := len(in.Options); n == 0 {
		return nil, fmt.Errorf("no module is left to compare")
	} else if n > MaxOptions {
		return nil, fmt.Errorf("%d modules are more than the %d that stand side by side: name fewer files, or pick classes with --class", n, MaxOptions)
	}
	units := "si"
	if in.US {
		units = "us"
	}
	b := &builder{Input: in, measures: measures{us: in.US}, doc: &Doc{Format: Format, Tool: Tool{"pvtally", in.Version}, Units: units, LeftOut: in.LeftOut}}
	if in.Prices != nil {
		b.currency = in.Prices.Currency
	}
	for i, o := range in.Options {
		id := string(rune('A' + i))
		b.names = append(b.names, id)
		notes := slices.Concat(o.Notes, o.Module.Notes)
		if all := o.SystemVoltages(); all != "" {
			notes = append(notes, fmt.Sprintf("the sheet prints %s as system voltage: which holds is on the module's label, and the lowest is taken", all))
		}
		b.doc.Options = append(b.doc.Options, Option{id, o.Name, o.Sheet.Maker, o.Sheet.Series, o.File, o.Verdict, notes})
	}
	b.calculate()
	b.doc.Site = b.given()
	for _, section := range []func() *Section{b.facts, b.roofSection, b.heatSection, b.coldSection, b.fuseSection, b.costSection, b.sensitivity} {
		if s := section(); s != nil && len(s.Rows)+len(s.Notes) > 0 {
			b.doc.Sections = append(b.doc.Sections, *s)
		}
	}
	b.doc.Plots = b.plots()
	b.doc.Answer, b.doc.More = b.answer(), b.more()
	return b.doc, nil
}

// judged says whether a row's differences are called real or not; counts and sums are exact, there the word has no use.
type judged bool

// row is a quantity of every option; nil where no option has it and silence is better than a row of reasons.
func (b *builder) row(s *Section, id, label string, u site.Unit, how string, judge judged, of func(i int) site.Value) {
	r := Row{ID: id, Label: label, Unit: b.of(u).sign, How: how}
	base := of(0)
	for i := range b.Options {
		v := of(i)
		c := b.cell(v, u)
		if i > 0 {
			c.Difference = b.difference(v, base, u, bool(judge))
		}
		r.Cells = append(r.Cells, c)
	}
	s.Rows = append(s.Rows, r)
}

// words is a row of texts.
func (b *builder) words(s *Section, id, label string, of func(i int) (text, why string)) {
	r := Row{ID: id, Label: label}
	for i := range b.Options {
		text, why := of(i)
		r.Cells = append(r.Cells, Cell{Text: text, Why: why})
	}
	s.Rows = append(s.Rows, r)
}

// facts are what the sheets say, as far as one of them says it.
func (b *builder) facts() *Section {
	s := &Section{ID: "facts", Title: "What the sheets say"}
	for _, f := range site.Facts {
		said := slices.ContainsFunc(b.Options, func(o Candidate) bool { return f.Of(o.Module).Known() })
		if said {
			b.row(s, f.ID, f.Label, f.Unit, f.How, true, func(i int) site.Value { return f.Of(b.Options[i].Module) })
		}
	}
	if slices.ContainsFunc(b.Options, func(o Candidate) bool { return !o.Sheet.Tolerance.Measurement.IsZero() }) {
		s.Notes = append(s.Notes, "A stated measurement uncertainty is not part of the intervals: it moves all modules of one maker together, and two makers' apart.")
	}
	return s
}

// and joins words: "a", "a and b", "a, b and c".
func and(list []string) string { return joined(list, "and") }

func joined(list []string, last string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + " " + last + " " + list[len(list)-1]
}

// upper makes a sentence of a clause.
func upper(s string) string {
	for i, r := range s {
		return strings.ToUpper(string(r)) + s[i+len(string(r)):]
	}
	return s
}
