package rules

import (
	"fmt"
	"strings"

	"pvtally/schema"
)

var catalogueRepeatedModel = &Rule{
	ID:      "catalogue/repeated-model",
	Title:   "one maker's model has one set of values",
	Why:     "Two records of the same maker and model with different values are two revisions, or one of them is wrong; a design must not take either without asking.",
	Formula: "maker, model equal ⇒ STC values, size and coefficients equal",
	Sources: []Source{{"Keeping of catalogues", "common practice"}},
	Levels:  []Threshold{{Warning, "values differ"}, {Note, "the record is there twice, with the same values"}},
	Needs:   []string{"maker", "models[].name"},
	CheckAll: func(p *CataloguePass) {
		type first struct{ entry, model int }
		seen := map[string]first{}
		for i := range p.Entries {
			s := p.Entries[i].Sheet
			maker := folded(s.Maker)
			for j := range s.Models {
				name := folded(s.Models[j].Name)
				if maker == "" || name == "" {
					continue
				}
				key := maker + "\x00" + name
				a, ok := seen[key]
				if !ok {
					seen[key] = first{i, j}
					continue
				}
				if a.entry == i {
					continue
				}
				old := p.Entries[a.entry]
				fields, text := differ(old.Sheet, a.model, s, j)
				if text == "" {
					p.Report(i, Note, Finding{Model: s.Models[j].Name, Fields: []string{fmt.Sprintf("/models/%d/name", j)}, Message: "the same model with the same values stands in " + old.Name + " too"})
					continue
				}
				p.Report(i, Warning, Finding{Model: s.Models[j].Name, Fields: fields, Message: "the same model has other values in " + old.Name + ": " + text})
			}
		}
	},
}

// folded is a name without case, spaces and punctuation at its ends, for comparing.
func folded(s string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '-' || r == '_' || r == '.' || r == ',' {
			return -1
		}
		return r
	}, strings.ToLower(s))
}

// differ lists the numbers of two records' models that are printed in both and are not the same.
func differ(a *schema.Sheet, i int, b *schema.Sheet, j int) (fields []string, text string) {
	var parts []string
	here, there := fmt.Sprintf("/models/%d/", j), fmt.Sprintf("/models/%d/", i)
	b.Walk(func(pointer string, n schema.Number) {
		other := pointer
		switch {
		case strings.HasPrefix(pointer, here):
			other = there + strings.TrimPrefix(pointer, here)
		case !strings.HasPrefix(pointer, "/thermal/") && !strings.HasPrefix(pointer, "/body/") && !strings.HasPrefix(pointer, "/limits/"):
			return
		}
		if m, ok := a.At(other); ok && m.Float() != n.Float() {
			v := Value{text: n.String(), at: placeOf(pointer)}
			fields, parts = append(fields, pointer), append(parts, fmt.Sprintf("%s %s there, %s here", v.Symbol(), m, n))
		}
	})
	if len(parts) > 5 {
		parts = append(parts[:5], fmt.Sprintf("and %d more", len(parts)-5))
	}
	return fields, strings.Join(parts, "; ")
}
