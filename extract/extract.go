// Package extract turns the bytes of a datasheet into records with evidence. It must not import rules or cmd.
package extract

import (
	"context"

	"pvtally/extract/page"
	"pvtally/schema"
)

// Source is one datasheet. Name is what the caller calls it.
type Source struct {
	Name string
	Data []byte
}

// Options of a reading. Progress is called with the pages done and all pages.
type Options struct {
	Cache    bool
	Progress func(done, total int)
}

// Sheets reads a datasheet into one record a series. The error is a *page.Error for an unreadable input.
func Sheets(ctx context.Context, src Source, opt Options) ([]*schema.Sheet, error) {
	return nil, &page.Error{File: src.Name, Problem: "the reader is being built"}
}

// Words gives what stands on the pages.
func Words(ctx context.Context, src Source, opt Options) ([]page.Page, error) {
	return nil, &page.Error{File: src.Name, Problem: "the reader is being built"}
}
