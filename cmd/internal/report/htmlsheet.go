package report

import (
	"fmt"
	"slices"

	"pvtally/rules"
)

// htmlSheet is one sheet's section. Numbers are for addresses within the page.
type htmlSheet struct {
	Number                int
	ID, Name, Maker, File string
	Only                  bool // the page has no other
	Verdict               string
	Says                  string // the verdict in a sentence
	Long                  bool   // so much does not tally that it fills half of a wide page
	Suspects              []htmlSuspect
	Findings              []htmlFinding
	Cautions              []string
	Pages                 []facsimile
	PagesLeft             int
	Tables                []classTable
	Begin                 string // what all names of classes begin with; it is left out of the tables' heads
	Values                []valueGroup
	Curves                *curves
	Lines                 []classLine
	Envelope              []envelopeRow
	Technology            string

	marks  map[string]*mark
	places map[string]string // the addresses of values on the pages
	number map[int]int       // a finding's number on the page, from 1, by its index
}

func newHTMLSheet(number int, s *Sheet) *htmlSheet {
	v := &htmlSheet{Number: number, ID: fmt.Sprintf("s%d", number), Name: Plain(s.Record.Series), Maker: Plain(s.Record.Maker), File: Plain(s.File), Verdict: s.Verdict(),
		marks: s.marks(), places: map[string]string{}, number: map[int]int{}}
	if v.Name == "" {
		v.Name = v.File
	}
	order := gravestFirst(s.Findings)
	for n, i := range order {
		v.number[i] = n + 1
	}
	v.Pages, v.PagesLeft = v.facsimiles(s)
	v.Suspects = v.suspects(s)
	v.Findings = v.findings(s, order)
	for _, f := range s.Findings {
		if text := Plain(f.Caution); text != "" && !slices.Contains(v.Cautions, text) {
			v.Cautions = append(v.Cautions, text)
		}
	}
	v.Says, v.Long = says(s), len(s.Findings) > 2
	v.Begin = commonBeginning(s.Record)
	v.Tables = v.classTables(s)
	v.Values = v.otherValues(s)
	v.Curves = v.curves(s)
	v.Lines = v.classLines(s)
	v.Envelope, v.Technology = envelopeRows(s)
	return v
}

// gravestFirst are the indices of the findings, the gravest first, else as the rules order them.
func gravestFirst(findings []rules.Finding) []int {
	order := make([]int, len(findings))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return int(findings[b].Level) - int(findings[a].Level) })
	return order
}

// says puts the verdict into a sentence.
func says(s *Sheet) string {
	var sum summary
	sum.add(Entry{Sheet: s})
	switch s.Verdict() {
	case "reject":
		return fmt.Sprintf("%s: numbers that cannot be right as printed must not enter a design before the maker has answered.", plural(sum.Errors, "error"))
	case "query":
		return fmt.Sprintf("%s: nothing is impossible, but the maker should be asked.", plural(sum.Warnings, "warning"))
	}
	return "Nothing was found that cannot be true. A sheet without findings can still be wrong."
}
