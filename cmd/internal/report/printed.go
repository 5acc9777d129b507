package report

import (
	"slices"
	"strconv"
	"strings"

	"pvtally/schema"
)

// row is a printed row of a sheet as a report quotes it: the label, the values of all classes, and which of them are meant. Page is
// 0 where the record does not know it.
type row struct {
	Page   int
	Label  string
	Cells  []string
	Marked []int
}

// printedRows are the rows in which the values at the pointers are printed, each once.
func printedRows(s *schema.Sheet, pointers []string) []row {
	var rows []row
	for _, pointer := range pointers {
		r, ok := printedRow(s, pointer)
		if !ok {
			continue
		}
		same := slices.IndexFunc(rows, func(o row) bool {
			return o.Page == r.Page && o.Label == r.Label && slices.Equal(o.Cells, r.Cells)
		})
		if same < 0 {
			rows = append(rows, r)
		} else if !slices.Contains(rows[same].Marked, r.Marked[0]) {
			rows[same].Marked = append(rows[same].Marked, r.Marked[0])
		}
	}
	return rows
}

// printedRow finds the row in which the value at pointer is printed. Without evidence the record's own words and literals stand in.
func printedRow(s *schema.Sheet, pointer string) (row, bool) {
	own := printed(s, pointer)
	if own == "" {
		return row{}, false
	}
	r := row{Page: s.Evidence[pointer].Page, Label: s.Evidence[pointer].Label, Cells: []string{own}, Marked: []int{0}}
	if r.Label == "" {
		r.Label = fieldName(pointer)
	}
	class, field, ok := splitClass(pointer)
	if !ok {
		return r, true
	}
	r.Cells, r.Marked = nil, nil
	for i := range s.Models {
		at := "/models/" + strconv.Itoa(i) + field
		text := printed(s, at)
		switch {
		case i == class:
			r.Marked = []int{len(r.Cells)}
		case text == "" || s.Evidence[at].Page != r.Page:
			continue // this class's value stands elsewhere or nowhere
		}
		r.Cells = append(r.Cells, text)
	}
	return r, true
}

// printed is the text of the value at pointer as the sheet prints it, else its literal.
func printed(s *schema.Sheet, pointer string) string {
	if e, ok := s.Evidence[pointer]; ok && e.Printed != "" {
		return e.Printed
	}
	if n, ok := s.At(pointer); ok {
		return n.String()
	}
	return ""
}

// splitClass takes "/models/3/stc/imp_a" apart into 3 and "/stc/imp_a".
func splitClass(pointer string) (class int, field string, ok bool) {
	rest, ok := strings.CutPrefix(pointer, "/models/")
	if !ok {
		return 0, "", false
	}
	index, field, ok := strings.Cut(rest, "/")
	class, err := strconv.Atoi(index)
	return class, "/" + field, ok && err == nil
}

// fieldName is the record's name of a field, without the class: "stc.imp_a".
func fieldName(pointer string) string {
	if _, field, ok := splitClass(pointer); ok {
		pointer = field
	}
	return strings.ReplaceAll(strings.TrimPrefix(pointer, "/"), "/", ".")
}
