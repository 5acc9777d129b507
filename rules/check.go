package rules

import "pvtally/schema"

// Pass is one run of one rule over one record.
type Pass struct {
	Sheet *schema.Sheet
}

// CataloguePass is one run of one rule over many records.
type CataloguePass struct {
	Entries []CatalogueEntry
}

// CatalogueEntry is one record of a catalogue, named as the user knows it, and what only the caller can know of it.
type CatalogueEntry struct {
	// Name is the record's file, with the line in a stream.
	Name  string
	Sheet *schema.Sheet
	// Read is the record that reading the named datasheet again gives, where the caller has done so.
	Read *schema.Sheet
	// SourceSHA256 is the checksum of the datasheet the record names, where the caller found the file.
	SourceSHA256 string
}

// CatalogueFinding is a finding on one entry of a catalogue.
type CatalogueFinding struct {
	// Entry is the index of the record judged.
	Entry int
	Finding
}

// Check judges one record: every rule that is not off, in the book's order, findings in the record's order.
func Check(sheet *schema.Sheet, opt Options) []Finding {
	return nil
}

// Catalogue judges many records together by the rules of the catalogue family.
func Catalogue(entries []CatalogueEntry, opt Options) []CatalogueFinding {
	return nil
}
