package rules

import (
	"slices"

	"pvtally/schema"
)

// CataloguePass is one run of one rule over many records.
type CataloguePass struct {
	Entries []CatalogueEntry
	rule    *Rule
	found   []CatalogueFinding
}

// CatalogueEntry is one record of a catalogue, named as the user knows it, and what only the caller can know of it.
type CatalogueEntry struct {
	// Name is the record's file, with the line in a stream.
	Name  string
	Sheet *schema.Sheet
	// Read is what reading the named datasheet again gives, where the caller has done so.
	Read *schema.Sheet
	// SourceSHA256 is the checksum of the datasheet that the record names, where the caller found the file.
	SourceSHA256 string
}

// CatalogueFinding is a finding on one entry of a catalogue.
type CatalogueFinding struct {
	// Entry is the index of the record judged.
	Entry int
	Finding
}

// Catalogue judges many records together by the rules of the catalogue family, in the order of entries.
func Catalogue(entries []CatalogueEntry, opt Options) []CatalogueFinding {
	p := &CataloguePass{Entries: entries}
	for _, r := range book {
		if r.CheckAll != nil && !opt.Off[r.ID] {
			p.rule = r
			r.CheckAll(p)
		}
	}
	for i := range p.found {
		if l := opt.Levels[p.found[i].Rule]; l != 0 {
			p.found[i].Level = l
		}
	}
	slices.SortStableFunc(p.found, func(a, b CatalogueFinding) int { return a.Entry - b.Entry })
	return p.found
}

// Report adds a finding on one entry.
func (p *CataloguePass) Report(entry int, l Level, f Finding) {
	f.Rule, f.Level, f.Caution = p.rule.ID, l, p.rule.Caution
	p.found = append(p.found, CatalogueFinding{entry, f})
}
