package report

import (
	"io"
	"iter"
	"strconv"
	"strings"
)

// writeCSV writes the table of findings.
func writeCSV(w io.Writer, run Run) error { return WriteCSV(w, findingRows(run)) }

// writeXLSX writes the same table as a workbook.
func writeXLSX(w io.Writer, run Run) error { return WriteXLSX(w, "findings", findingRows(run)) }

var findingColumns = strings.Fields("file part maker series verdict level rule model field page label printed implied deviation_pct rounding_pct message caution")

// findingRows is one row a finding. A sheet without findings has one row with its verdict, an unread input one that says why.
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
			for _, f := range s.Findings {
				at := s.placeOf(f)
				row := append(head[:len(head):len(head)], texts(f.Level.String(), f.Rule, f.Model, s.key(f))...)
				row = append(row, count(at.Page))
				row = append(row, texts(at.Label, f.Printed, strings.Join(f.Implied, " to "))...)
				row = append(row, percent(float64(f.DeviationPct), f.DeviationPct.String()), percent(float64(f.RoundingPct), f.RoundingPct.String()))
				if !yield(append(row, texts(f.Message, f.Caution)...)) {
					return
				}
			}
		}
	}
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
