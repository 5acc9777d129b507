// Package extract turns the bytes of a datasheet into records with evidence: page → table → label → quantity → field. It must not import rules or cmd.
package extract

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"path/filepath"

	"pvtally/extract/page"
	"pvtally/schema"
)

// Source is one datasheet. Name is what the caller calls it.
type Source struct {
	Name string
	Data []byte
}

// Options of a reading. Progress is called with the pages done and all pages, Seen with what stands on them.
type Options struct {
	Cache    bool
	Progress func(done, total int)
	Seen     func([]page.Page)
}

// NoModule is the problem of a document that could be read and is no module's datasheet.
const NoModule = "no module data found"

// Sheets reads a datasheet into one record a series. The error is a *page.Error for an unreadable input.
func Sheets(ctx context.Context, src Source, opt Options) ([]*schema.Sheet, error) {
	second := make(chan *page.Second, 1)
	go func() {
		defer close(second)
		if page.Sniff(src.Data) != page.KindPDF {
			return
		}
		if s, err := page.SecondReading(ctx, src.Data, page.Options{Cache: opt.Cache}); err == nil {
			second <- s
		}
	}()
	pages, err := Words(ctx, src, opt)
	if err != nil {
		return nil, err
	}
	if !page.HasText(pages) {
		return nil, &page.Error{File: src.Name, Page: 1, Problem: "no lettering can be made out", Remedy: "scan the page anew, at 300 dpi, or ask the maker for a PDF with text"}
	}
	if opt.Seen != nil {
		opt.Seen(pages)
	}
	d := read(pages)
	again, err := readAgain(ctx, src.Data, d.ledger.claims, opt)
	if err != nil {
		return nil, err
	}
	d.ledger.reread(again)
	d.ledger.doubt(pages)
	if !d.isDatasheet() {
		return nil, &page.Error{File: src.Name, Problem: NoModule, Remedy: "check that this is a photovoltaic module's datasheet; `pvtally read --words` shows what the reader saw"}
	}
	sheets := d.records()
	sum := sha256.Sum256(src.Data)
	confirmed := <-second
	for i, s := range sheets {
		misread(s, len(sheets) > 1)
		s.Source = schema.Source{File: filepath.ToSlash(src.Name), SHA256: hex.EncodeToString(sum[:]), Pages: len(pages), Part: i + 1, Parts: len(sheets)}
		if confirmed != nil {
			confirm(s, pages, confirmed)
		}
	}
	return sheets, nil
}

// Words gives what stands on the pages.
func Words(ctx context.Context, src Source, opt Options) ([]page.Page, error) {
	return page.Open(ctx, src.Name, src.Data, page.Options{Cache: opt.Cache})
}
