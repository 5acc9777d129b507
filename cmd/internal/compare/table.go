package compare

import (
	"io"
	"iter"
	"strings"

	"pvtally/cmd/internal/report"
	"pvtally/schema"
)

// writeCSV and writeXLSX are one row a value, for those who calculate on.
func writeCSV(w io.Writer, d *Doc) error { return report.WriteCSV(w, tableRows(d)) }

func writeXLSX(w io.Writer, d *Doc) error { return report.WriteXLSX(w, "comparison", tableRows(d)) }

var tableColumns = strings.Fields("section id quantity unit option module value low high text difference difference_unit difference_pct verdict arithmetic")

func tableRows(d *Doc) iter.Seq[[]report.Cell] {
	text := func(s string) report.Cell { return report.Cell{Text: s} }
	num := func(n schema.Number) report.Cell { return report.Cell{Text: n.String(), Number: !n.IsZero()} }
	return func(yield func([]report.Cell) bool) {
		var head []report.Cell
		for _, c := range tableColumns {
			head = append(head, text(c))
		}
		if !yield(head) || !yield(padded(text("answer"), text(""), text(d.Answer))) {
			return
		}
		for _, g := range d.Site {
			if !yield(padded(text("site"), text(g.ID), text(g.Label), text(g.Unit), text(""), text(g.Origin), num(g.Value), text(""), text(""), text(g.Text))) {
				return
			}
		}
		for _, s := range d.Sections {
			for _, r := range s.Rows {
				for i, c := range r.Cells {
					row := []report.Cell{text(s.ID), text(r.ID), text(r.Label), text(r.Unit), text(d.Options[i].ID), text(d.Options[i].Name),
						num(c.Value), num(c.Low), num(c.High), text(firstOf(c.Text, c.Why))}
					if f := c.Difference; f != nil {
						row = append(row, num(f.Absolute), text(f.Unit), num(f.Percent), text(f.Verdict))
					} else {
						row = append(row, text(""), text(""), text(""), text(""))
					}
					if !yield(append(row, text(r.How))) {
						return
					}
				}
			}
			for _, n := range append(s.Notes[:len(s.Notes):len(s.Notes)], s.Caution) {
				if n != "" && !yield(padded(text(s.ID), text(""), text(n))) {
					return
				}
			}
		}
	}
}

// padded fills a row to the table's width.
func padded(cells ...report.Cell) []report.Cell {
	return append(cells, make([]report.Cell, len(tableColumns)-len(cells))...)
}
