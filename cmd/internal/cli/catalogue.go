package cli

import (
	"iter"
	"slices"

	"pvtally/rules"
)

// across holds the whole run and adds what the rules across records find.
func (l *law) across(list iter.Seq[judged]) iter.Seq[judged] {
	return func(yield func(judged) bool) {
		all := slices.Collect(list)
		var entries []rules.CatalogueEntry
		var sheets []judged
		for _, j := range all {
			if j.Sheet != nil {
				entries = append(entries, rules.CatalogueEntry{Name: j.Sheet.File, Sheet: j.Sheet.Record, Read: j.trace.read, SourceSHA256: j.trace.sum})
				sheets = append(sheets, j)
			}
		}
		for _, f := range rules.Catalogue(entries, l.options) {
			sheet := sheets[f.Entry].Sheet
			sheet.Findings = append(sheet.Findings, f.Finding)
		}
		for _, j := range all {
			if !yield(j) {
				return
			}
		}
	}
}
