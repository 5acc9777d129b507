package extract

import (
	"cmp"
	"slices"

	"pvtally/extract/page"
	"pvtally/schema"
)

// misread leaves open what was read from a picture and fits neither the trade nor the rest of the sheet by far: digits that were lost
// alike in both readings, and cells of another table. The bounds are so wide that a maker's own slip (two cells interchanged, a digit
// wrong) mostly stays in the record, where the rules will find it. Of several series the sizes may be another's.
func misread(s *schema.Sheet, several bool) {
	for _, b := range misreadBounds {
		if n, ok := s.At(b.field); ok && !b.holds(n.Float()) {
			leaveOpen(s, "read from a picture, and hardly a module's: "+b.usual, b.field)
		}
	}
	misreadVoltages(s)
	misreadBody(s)
	misreadCells(s)
	for i := range s.Models {
		misreadClass(s, i, several)
	}
	misreadNames(s)
	slices.SortStableFunc(s.Unresolved, func(a, b schema.Unresolved) int { return cmp.Compare(a.Field, b.Field) })
}

// leaveOpen takes fields that were read from a picture out of the record.
func leaveOpen(s *schema.Sheet, why string, fields ...string) {
	for _, f := range fields {
		e, ok := s.Evidence[f]
		if !ok || e.By != string(page.ByPicture) {
			continue
		}
		if text := textField(s, f); text != nil {
			*text = ""
		} else if s.Set(f, schema.Number{}) != nil {
			continue // an entry of a list
		}
		delete(s.Evidence, f)
		s.Unresolved = append(s.Unresolved, schema.Unresolved{Field: f, Label: e.Label, Candidates: []string{e.Printed}, Page: e.Page, Box: e.Box, Why: why})
	}
}

// bound is where a field's values lie; common practice, no source.
type bound struct {
	field       string
	least, most float64 // of the value without its sign
	usual       string
}

func (b bound) holds(v float64) bool { return abs(v) >= b.least && abs(v) <= b.most }

var misreadBounds = []bound{
	{"/thermal/gamma_pmax_pct_per_k", 0.1, 0.7, "0.2 to 0.5 %/K are usual"},
	{"/thermal/beta_voc_pct_per_k", 0.1, 0.6, "0.2 to 0.4 %/K are usual"},
	{"/thermal/alpha_isc_pct_per_k", 0.005, 0.2, "0.03 to 0.1 %/K are usual"},
	{"/thermal/noct_c", 36, 60, "41 to 50 °C are usual"},
	{"/thermal/nmot_c", 36, 60, "41 to 47 °C are usual"},
	{"/warranty/product_years", 4, 45, "5 to 40 years are usual"},
	{"/warranty/performance_years", 15, 45, "20 to 40 years are usual"},
	{"/warranty/first_year_loss_pct", 0.3, 5, "1 to 3 % are usual"},
	{"/warranty/annual_loss_pct", 0.15, 1.5, "0.25 to 0.8 % are usual"},
	{"/warranty/final_output_pct", 70, 97, "80 to 92 % are usual"},
	{"/bifacial/factor_pct", 40, 100, "65 to 90 % are usual"},
	{"/body/front_glass_mm", 0.7, 6, "1.6 to 4 mm are usual"},
	{"/body/rear_glass_mm", 0.7, 6, "1.6 to 4 mm are usual"},
	{"/body/cable_mm2", 1.5, 10, "2.5 to 6 mm² are usual"},
	{"/limits/front_load_pa", 700, 12000, "1600 to 8000 Pa are usual"},
	{"/limits/rear_load_pa", 700, 12000, "1600 to 8000 Pa are usual"},
}
