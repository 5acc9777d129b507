package rules

import (
	"fmt"
	"strings"
)

var catalogueSameNumbers = &Rule{
	ID:      "catalogue/same-numbers",
	Title:   "different makers' modules have different numbers",
	Why:     "All electrical values alike, to the last digit, under two makers' names: one module is the other's with another label. That is no mistake, but warranty and certificate should be asked for.",
	Formula: "maker differs ⇒ (Pmax, Vmp, Imp, Voc, Isc, length, width) differ in some digit, for all classes",
	Sources: []Source{{"Relabelled modules in the trade", "common practice"}},
	Levels:  []Threshold{{Note, "the numbers of all classes of one record stand in another maker's"}},
	Needs:   []string{"maker", "models[].stc", "body.length_mm"},
	CheckAll: func(p *CataloguePass) {
		first := map[string]int{}
		for i := range p.Entries {
			key := p.Entries[i].numbers()
			if key == "" {
				continue
			}
			j, ok := first[key]
			if !ok {
				first[key] = i
				continue
			}
			a, b := p.Entries[j].Sheet, p.Entries[i].Sheet
			if there, here := folded(a.Maker), folded(b.Maker); there != here && there != "" && here != "" {
				of := strings.TrimSpace(a.Maker + " " + a.Series)
				p.Report(i, Note, Finding{Fields: []string{"/models/0/stc/pmax_w"}, Message: fmt.Sprintf("the numbers of %s are those of %s in %s", allClasses(len(b.Models)), of, p.Entries[j].Name)})
			}
		}
	},
}

// numbers is a record's electrical values and size as printed, "" where they are not complete.
func (e *CatalogueEntry) numbers() string {
	s := e.Sheet
	if len(s.Models) == 0 || s.Body.Length.IsZero() {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%g %g", s.Body.Length.Float(), s.Body.Width.Float())
	for i := range s.Models {
		x := &s.Models[i].STC
		if x.Pmax.IsZero() || x.Vmp.IsZero() || x.Imp.IsZero() || x.Voc.IsZero() || x.Isc.IsZero() {
			return ""
		}
		fmt.Fprintf(&b, " %g %g %g %g %g", x.Pmax.Float(), x.Vmp.Float(), x.Imp.Float(), x.Voc.Float(), x.Isc.Float())
	}
	return b.String()
}
