package report

import (
	"fmt"
	"slices"

	"pvtally/rules"
	"pvtally/rules/diagnose"
)

// htmlSuspect is one printed value that is wrong.
type htmlSuspect struct {
	ID         string
	Number     int
	Guess      bool // one of several values that could be wrong
	Cells      []htmlCell
	Mistake    string
	Confidence string
	Because    string
	Findings   []htmlLink
}

// htmlCell is one value of a suspect.
type htmlCell struct {
	Name, Printed, WouldBe string
	Page                   int
	Place                  string // address on the page; "" where the page does not show it
}

type htmlLink struct{ Text, To string }

// htmlFinding is one relation that does not hold.
type htmlFinding struct {
	ID, Rule, Title, Model, Message string
	Level                           rules.Level
	Rows                            []htmlQuote
	More                            int // rows that are not quoted
}

// htmlQuote is a printed row with the values meant.
type htmlQuote struct {
	Page  int
	Place string
	Label string
	Cells []htmlQuoted
}

type htmlQuoted struct {
	Text string
	Mark bool
}

// mistakes say in words how a value went wrong.
var mistakes = map[diagnose.Mistake]string{
	diagnose.Swap:           "the values have changed places",
	diagnose.Transposed:     "two digits have changed places",
	diagnose.OneDigit:       "one digit is another",
	diagnose.DecimalPoint:   "the decimal point stands in the wrong place",
	diagnose.SlippedRow:     "the row stands one column off",
	diagnose.Neighbour:      "it is a neighbour's value",
	diagnose.Sign:           "a minus was lost or gained",
	diagnose.RowsSwapped:    "two rows have changed places",
	diagnose.Unit:           "the number is in another unit",
	diagnose.OtherFormat:    "it is the size of another format",
	diagnose.CellEfficiency: "it is the efficiency of the cell, not of the module",
	diagnose.CellCount:      "it is another count of cells",
	diagnose.Reading:        "it may be printed right and read wrong: look at the page first",
	diagnose.Unknown:        "no usual slip explains it",
}

func (v *htmlSheet) suspects(s *Sheet) (list []htmlSuspect) {
	for i, suspect := range s.Suspects {
		out := htmlSuspect{ID: fmt.Sprintf("%s-suspect-%d", v.ID, i+1), Number: i + 1, Guess: suspect.Confidence < likely, Mistake: mistakes[suspect.Mistake],
			Confidence: fmt.Sprintf("%.0f %%", 100*suspect.Confidence), Because: Plain(suspect.Because)}
		for _, c := range suspect.Cells {
			cell := htmlCell{Name: Plain(spoken(s.Record, c.Field)), Printed: signed(c.Printed), WouldBe: signed(c.WouldBe), Place: v.places[c.Field]}
			cell.Page = s.Record.Evidence[c.Field].Page
			out.Cells = append(out.Cells, cell)
		}
		for _, f := range suspect.Findings {
			if n := v.number[f]; n > 0 {
				out.Findings = append(out.Findings, htmlLink{s.Findings[f].Rule, fmt.Sprintf("%s-finding-%d", v.ID, n)})
			}
		}
		list = append(list, out)
	}
	return list
}

func (v *htmlSheet) findings(s *Sheet, order []int) (list []htmlFinding) {
	for n, i := range order {
		f := s.Findings[i]
		out := htmlFinding{ID: fmt.Sprintf("%s-finding-%d", v.ID, n+1), Rule: Plain(f.Rule), Level: f.Level, Model: Plain(f.Model), Message: Plain(f.Message)}
		if r, ok := rules.Lookup(f.Rule); ok {
			out.Title = r.Title
		}
		rows := printedRows(s.Record, f.Fields)
		out.More = max(0, len(rows)-maxRows)
		for _, r := range rows[:min(len(rows), maxRows)] {
			q := htmlQuote{Page: r.Page, Label: Plain(r.Label)}
			for k, cell := range r.Cells {
				q.Cells = append(q.Cells, htmlQuoted{Plain(cell), slices.Contains(r.Marked, k)})
			}
			for _, field := range f.Fields {
				if at := v.places[field]; at != "" && s.Record.Evidence[field].Label == r.Label {
					q.Place = at
					break
				}
			}
			out.Rows = append(out.Rows, q)
		}
		list = append(list, out)
	}
	return list
}
