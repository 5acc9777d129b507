package rules

import "fmt"

var catalogueSource = &Rule{
	ID:      "catalogue/source",
	Title:   "a record names its datasheet, where the others do",
	Why:     "A value is trusted because it can be looked up. In a catalogue whose records name the datasheet they were read from, one that does not cannot be checked against anything.",
	Formula: "source.sha256 is there in some records ⇒ it is there in all",
	Sources: []Source{{"Keeping of catalogues", "common practice"}},
	Levels:  []Threshold{{Note, "the record names no datasheet and others do"}},
	Needs:   []string{"source.sha256 of another record"},
	CheckAll: func(p *CataloguePass) {
		traced := 0
		for i := range p.Entries {
			if p.Entries[i].Sheet.Source.SHA256 != "" {
				traced++
			}
		}
		if traced == 0 {
			return
		}
		for i := range p.Entries {
			if p.Entries[i].Sheet.Source.SHA256 == "" {
				p.Report(i, Note, Finding{Message: fmt.Sprintf("the record names no datasheet (source.sha256); of the %d records here %d do", len(p.Entries), traced)})
			}
		}
	},
}
