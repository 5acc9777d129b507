package report

import (
	"fmt"
	"strconv"
	"strings"

	"pvtally/schema"
)

// classTable is one condition's table: quantities down, classes across.
type classTable struct {
	Caption string
	Heads   []string
	Rows    []classRow
}

type classRow struct {
	Name, Unit string
	Cells      []classCell
}

// classCell is a value of a table. Class says what is wrong with it in the style sheet's words, Says in the reader's.
type classCell struct {
	Text, Class, Says, To string
	Suspect               int
}

// fields of an electrical table in the order in which sheets print them.
var electricalFields = []string{"pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a", "efficiency_pct"}

// classTables are the tables of the record that hold anything: STC, operating conditions, low irradiance, then each line of rear gain.
func (v *htmlSheet) classTables(s *Sheet) (list []classTable) {
	groups := []struct{ key, caption string }{{"stc", "STC: 1000 W/m², 25 °C, AM1.5"}, {"nmot", "NMOT: 800 W/m²"}, {"noct", "NOCT: 800 W/m²"},
		{"bnpi", "BNPI: 1000 W/m² front, 135 W/m² rear"}, {"low", "Low irradiance"}}
	gains, ratios := 0, 0
	for i := range s.Record.Models {
		gains, ratios = max(gains, len(s.Record.Models[i].RearGain)), max(ratios, len(s.Record.Models[i].RearRatio))
	}
	for k := range min(gains, maxDrawnLines) {
		groups = append(groups, struct{ key, caption string }{"rear_gain/" + strconv.Itoa(k), "Rear gain"})
	}
	for k := range min(ratios, maxDrawnLines) {
		groups = append(groups, struct{ key, caption string }{"rear_ratio/" + strconv.Itoa(k), "Rear-to-front ratio"})
	}
	for _, g := range groups {
		t := classTable{Caption: g.caption}
		fields := electricalFields
		switch {
		case strings.HasPrefix(g.key, "rear_gain"):
			fields = append([]string{"gain_pct"}, fields...)
		case strings.HasPrefix(g.key, "rear_ratio"):
			fields = append([]string{"ratio_pct"}, fields...)
		case g.key == "low":
			fields = append([]string{"irradiance_w_m2"}, fields...)
		}
		for _, f := range fields {
			if row, ok := v.classRow(s, "/"+g.key+"/"+f); ok {
				t.Rows = append(t.Rows, row)
			}
		}
		if len(t.Rows) > 0 {
			for i := range s.Record.Models {
				t.Heads = append(t.Heads, Plain(strings.TrimPrefix(className(s.Record, i), v.Begin)))
			}
			list = append(list, t)
		}
	}
	return list
}

// commonBeginning is what the names of all classes share up to a break in the name, "" where that saves nothing.
func commonBeginning(s *schema.Sheet) string {
	if len(s.Models) < 2 {
		return ""
	}
	begin := className(s, 0)
	for i := range s.Models {
		name := className(s, i)
		for !strings.HasPrefix(name, begin) {
			begin = begin[:len(begin)-1]
		}
	}
	begin = begin[:1+strings.LastIndexAny(begin, "-_/ ")]
	for i := range s.Models {
		if len(begin) < 4 || className(s, i) == begin {
			return ""
		}
	}
	return begin
}

// maxDrawnLines is how many lines of a rear gain or ratio table are shown: real sheets have up to six.
const maxDrawnLines = 12

func (v *htmlSheet) classRow(s *Sheet, field string) (row classRow, any bool) {
	d, _ := schema.Describe("/models/0" + field)
	row = classRow{Name: d.Title, Unit: d.Unit}
	for i := range s.Record.Models {
		pointer := "/models/" + strconv.Itoa(i) + field
		n, _ := s.Record.At(pointer)
		cell := v.cell(pointer, signed(n))
		any = any || cell.Text != ""
		row.Cells = append(row.Cells, cell)
	}
	return row, any
}

// signed is a literal with a minus as wide as a digit.
func signed(n schema.Number) string { return strings.Replace(n.String(), "-", "−", 1) }

// cell is one value with its mark.
func (v *htmlSheet) cell(pointer, text string) classCell {
	c := classCell{Text: text}
	m := v.marks[pointer]
	if c.Text == "" || m == nil {
		return c
	}
	switch {
	case m.suspect > 0:
		c.Class, c.Says, c.Suspect = "wrong", fmt.Sprintf("suspect %d", m.suspect), m.suspect
		if m.guess {
			c.Class = "asked"
		}
		c.To = fmt.Sprintf("%s-suspect-%d", v.ID, m.suspect)
	case m.wrong() && len(v.Suspects) == 0 || m.judged && len(m.findings) > 0:
		c.Class, c.Says = map[string]string{"reject": "wrong", "query": "asked", "clear": "noted"}[verdictOf(m.level)], m.level.String()
		c.To = fmt.Sprintf("%s-finding-%d", v.ID, v.number[m.findings[0]])
	case len(m.findings) > 0:
		c.Class, c.Says = "part", "part of a finding"
		c.To = fmt.Sprintf("%s-finding-%d", v.ID, v.number[m.findings[0]])
	}
	return c
}

// valueGroup is a block of the record that is not a class's.
type valueGroup struct {
	Title string
	Rows  []valueRow
}

type valueRow struct {
	Name, Unit string
	Cell       classCell
	Page       int
}

// valueGroups are the blocks in the record's order with their titles.
var valueGroups = []struct{ key, title string }{{"cell", "Cells"}, {"body", "Body"}, {"bifacial", "Bifacial"}, {"thermal", "Temperature"}, {"limits", "Limits"},
	{"tolerance", "Tolerance"}, {"warranty", "Warranty"}, {"packing", "Packing"}, {"low_light", "Low light"}, {"certificates", "Certificates"}}

// otherValues is what the sheet says besides the classes' tables, numbers and words in the record's order.
func (v *htmlSheet) otherValues(s *Sheet) (list []valueGroup) {
	at := map[string]int{}
	for i, g := range valueGroups {
		at[g.key] = i
		list = append(list, valueGroup{Title: g.title})
	}
	add := func(pointer string, cell classCell) {
		key, _, _ := strings.Cut(pointer[1:], "/")
		i, ok := at[key]
		if !ok {
			return
		}
		d, _ := schema.Describe(pointer)
		list[i].Rows = append(list[i].Rows, valueRow{Name: d.Title, Unit: d.Unit, Cell: cell, Page: s.Record.Evidence[pointer].Page})
	}
	s.Record.Walk(func(pointer string, n schema.Number) { add(pointer, v.cell(pointer, signed(n))) })
	s.Record.WalkText(func(pointer, text string) { add(pointer, v.cell(pointer, Plain(text))) })
	kept := list[:0]
	for _, g := range list {
		if len(g.Rows) > 0 {
			kept = append(kept, g)
		}
	}
	return kept
}
