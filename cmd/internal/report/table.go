package report

import (
	"io"
	"iter"
	"strconv"
	"strings"

	"pvtally/rules/diagnose"
)

// writeCSV writes the table of findings.
func writeCSV(w io.Writer, run Run) error { return WriteCSV(w, findingRows(run)) }

// writeXLSX writes the same table as a workbook.
func writeXLSX(w io.Writer, run Run) error { return WriteXLSX(w, "findings", findingRows(run)) }

var findingColumns = strings.Fields("file part maker series verdict level rule model field page label printed implied deviation_pct rounding_pct message caution mistake would_be confidence_pct")

// findingRows is one row a problem: a suspect, or a finding without one. A sheet without findings has one row with its verdict, an unread input one that says why.
func findingRows(run Run) iter.Seq[[]Cell] {
	return func(yield func([]Cell) bool) {
		if !yield(texts(findingColumns...)) {
			return
		}
		for e := range run.Entries {
			if u := e.Unread; u != nil {
				row := make([]Cell, len(findingColumns))
				row[0], row[4], row[9], row[15] = Cell{Text: u.File}, Cell{Text: "unread"}, count(u.Page), Cell{Text: u.detail()}
				if !yield(row) {
					return
				}
				continue
			}
			s := e.Sheet
			head := append(texts(s.File), count(s.Record.Source.Part))
			head = append(head, texts(s.Record.Maker, s.Record.Series, s.Verdict())...)
			if len(s.Findings) == 0 && !yield(append(head, make([]Cell, len(findingColumns)-len(head))...)) {
				return
			}
			for _, p := range s.problems() {
				at := s.placeOf(p.cells())
				key, printed := s.name(&p)
				row := append(head[:len(head):len(head)], texts(p.Level.String(), p.Rule, p.Model, key)...)
				row = append(row, count(at.Page))
				row = append(row, texts(at.Label, printed, strings.Join(p.Implied, " to "))...)
				row = append(row, percent(float64(p.DeviationPct), p.DeviationPct.String()), percent(float64(p.RoundingPct), p.RoundingPct.String()))
				row = append(row, texts(p.Message, p.Caution)...)
				if !yield(append(row, accusedCells(p.suspect)...)) {
					return
				}
			}
		}
	}
}

// accusedCells are what only a suspect has: how the value went wrong, what it would be, how sure that is.
func accusedCells(x *diagnose.Suspect) []Cell {
	if x == nil {
		return make([]Cell, 3)
	}
	var wouldBe []string
	for _, c := range x.Cells {
		wouldBe = append(wouldBe, c.WouldBe.String())
	}
	return append(texts(string(x.Mistake), strings.Join(wouldBe, "; ")), Cell{Text: strconv.Itoa(int(100*x.Confidence + 0.5)), Number: true})
}

func texts(list ...string) []Cell {
	cells := make([]Cell, len(list))
	for i, text := range list {
		cells[i] = Cell{Text: text}
	}
	return cells
}

// count is a number from 1 up; 0 is unknown and leaves the cell empty.
func count(n int) Cell {
	if n == 0 {
		return Cell{}
	}
	return Cell{Text: strconv.Itoa(n), Number: true}
}

func percent(v float64, text string) Cell {
	if v == 0 {
		return Cell{}
	}
	return Cell{Text: text, Number: true}
}
