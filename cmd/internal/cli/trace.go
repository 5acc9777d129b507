package cli

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"pvtally/cmd/internal/report"
	"pvtally/extract"
	"pvtally/extract/page"
	"pvtally/schema"
)

// tracer follows records to the datasheets they name.
type tracer struct {
	again bool // read the datasheet again, to compare
	pages bool // its pages are wanted
	cache bool
}

// traced is what a record's datasheet says, as far as it is there: the zero value where it is not.
type traced struct {
	sum   string        // the file's checksum
	read  *schema.Sheet // what reading it again gives, where the checksum is the record's
	pages []report.Page
	fault string // why it could not be read again
}

// trace follows one record. The path comes from the record, so only a relative one is followed, and only to a regular file.
func (t tracer) trace(ctx context.Context, in input, sheet *schema.Sheet) (out traced) {
	name := filepath.FromSlash(sheet.Source.File)
	if in.kind != record || in.path == "" || name == "" || sheet.Source.SHA256 == "" || filepath.IsAbs(name) {
		return out
	}
	path := filepath.Join(filepath.Dir(in.path), name)
	if info, err := os.Stat(path); err != nil || !info.Mode().IsRegular() {
		return out
	}
	file := readFile(input{name: filepath.ToSlash(path), path: path}, maxDatasheet)
	if file.fault != nil {
		return traced{fault: file.fault.String()}
	}
	sum := sha256.Sum256(file.data)
	out.sum = hex.EncodeToString(sum[:])
	if !strings.EqualFold(out.sum, sheet.Source.SHA256) || !t.again && !t.pages {
		return out
	}
	opt := extract.Options{Cache: t.cache}
	if t.pages {
		opt.Seen = func(pages []page.Page) { out.pages = facsimile(ctx, file.data, pages) }
	}
	sheets, err := extract.Sheets(ctx, extract.Source{Name: file.name, Data: file.data}, opt)
	if err != nil && ctx.Err() == nil {
		out.fault = unread(file, err).String()
	}
	if i := max(sheet.Source.Part, 1) - 1; i < len(sheets) {
		out.read = sheets[i]
	} else if err == nil {
		out.fault = fmt.Sprintf("%s: it gives %d records now, this was number %d", file.name, len(sheets), i+1)
	}
	return out
}
