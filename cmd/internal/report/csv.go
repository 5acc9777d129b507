package report

import (
	"encoding/csv"
	"io"
	"iter"
	"strings"

	"pvtally/schema"
)

// Cell is one cell of a table: a text, or a number's literal.
type Cell struct {
	Text   string
	Number bool
}

// WriteCSV writes rows as CSV (RFC 4180), in UTF-8 with a byte order mark, by which spreadsheets know the encoding.
func WriteCSV(w io.Writer, rows iter.Seq[[]Cell]) error {
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	for row := range rows {
		record := make([]string, len(row))
		for i, cell := range row {
			record[i] = cell.Text
			if !cell.Number {
				record[i] = inert(Plain(cell.Text))
			}
		}
		if err := out.Write(record); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// inert keeps a text from being a formula when a spreadsheet opens it: an apostrophe before the characters that begin one. A negative number is none.
func inert(text string) string {
	if _, err := schema.ParseNumber(text); err == nil {
		return text
	}
	if text != "" && strings.ContainsRune("=+-@", rune(text[0])) {
		return "'" + text
	}
	return text
}
