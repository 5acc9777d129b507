package cli

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"iter"
	"os"
	"path/filepath"
	"slices"

	"pvtally/rules"
	"pvtally/schema"
)

// across holds the whole run and adds what the rules across records find.
func (l *law) across(list iter.Seq[judged]) iter.Seq[judged] {
	return func(yield func(judged) bool) {
		all := slices.Collect(list)
		var entries []rules.CatalogueEntry
		var sheets []judged
		for _, j := range all {
			if j.Sheet != nil {
				entries = append(entries, rules.CatalogueEntry{Name: j.Sheet.File, Sheet: j.Sheet.Record, SourceSHA256: j.source})
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

// sourceSum is the checksum of the datasheet that a record names, or "" where the file is not there. The path comes from the record, so
// only a regular file of bearable size is opened, and only a relative path followed.
func sourceSum(in input, sheet *schema.Sheet) string {
	name := filepath.FromSlash(sheet.Source.File)
	if in.kind != record || in.path == "" || name == "" || sheet.Source.SHA256 == "" || filepath.IsAbs(name) {
		return ""
	}
	path := filepath.Join(filepath.Dir(in.path), name)
	info, err := os.Stat(path)
	if err != nil || !info.Mode().IsRegular() || info.Size() > maxDatasheet {
		return ""
	}
	f, err := os.Open(path)
	if err != nil {
		return ""
	}
	defer f.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return ""
	}
	return hex.EncodeToString(sum.Sum(nil))
}
