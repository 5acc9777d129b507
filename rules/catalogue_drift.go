package rules

import (
	"fmt"
	"strings"

	"pvtally/schema"
)

var catalogueDrift = &Rule{
	ID:      "catalogue/drift",
	Title:   "a record and the datasheet it names agree",
	Why:     "A record is trusted because it can be traced to its datasheet. Once the file has changed, or the record was edited, the trace is broken.",
	Formula: "sha256(file) = source.sha256; a record read again from the same file has the same values",
	Sources: []Source{{"Keeping of catalogues", "common practice"}},
	Levels:  []Threshold{{Warning, "the datasheet's checksum is another than the record's"}, {Error, "the checksum agrees and a value does not"}},
	Needs:   []string{"source.sha256", "the datasheet itself"},
	CheckAll: func(p *CataloguePass) {
		for i := range p.Entries {
			e := &p.Entries[i]
			source := &e.Sheet.Source
			if source.SHA256 == "" {
				continue
			}
			if e.SourceSHA256 != "" && !strings.EqualFold(e.SourceSHA256, source.SHA256) {
				p.Report(i, Warning, Finding{Fields: []string{"/source/sha256"}, Message: fmt.Sprintf("%s is not the file this record was read from: its checksum begins with %s, the record's with %s", source.File, short(e.SourceSHA256), short(source.SHA256))})
				continue
			}
			if e.Read == nil {
				continue
			}
			var fields, parts []string
			e.Sheet.Walk(func(pointer string, n schema.Number) {
				if by := e.Sheet.Evidence[pointer].By; by == "hand" {
					return // corrected by a person, and said so
				}
				if m, ok := e.Read.At(pointer); ok && m.Float() != n.Float() {
					fields, parts = append(fields, pointer), append(parts, fmt.Sprintf("%s is %s, the datasheet says %s", pointer, n, m))
				}
			})
			if len(fields) > 0 {
				p.Report(i, Error, Finding{Fields: fields, Message: "the record differs from its datasheet: " + strings.Join(parts[:min(5, len(parts))], "; ")})
			}
		}
	},
}

func short(sum string) string { return sum[:min(12, len(sum))] }
