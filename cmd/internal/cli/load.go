package cli

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"pvtally/cmd/internal/report"
	"pvtally/extract"
	"pvtally/extract/page"
	"pvtally/schema"
)

// loader turns inputs into records: datasheets by reading them, JSON by decoding it.
type loader struct {
	cache    bool
	words    bool            // give a datasheet's words, not its records
	drawn    bool            // keep its pages besides, to draw them
	pictures bool            // with a picture of those that are one
	known    map[string]bool // checksums of datasheets that records of this run name: these are not read again
	progress *progress
}

// loaded is what became of one input.
type loaded struct {
	input
	sheets  []*schema.Sheet
	doc     *schema.Document // of a record
	pages   []page.Page      // with the loader's words
	view    string           // with them: what the reader made of them
	drawn   []report.Page    // with the loader's drawn
	unread  *report.Unread
	foreign bool   // in a folder, and nothing of ours: a JSON that is no record, a text that is no datasheet
	aside   string // why a foreign text is passed over
	again   bool   // a datasheet whose record is in this run
}

// load reads one input. A panic in a reader must not take the other inputs with it.
func (l loader) load(ctx context.Context, in input) (out loaded) {
	defer func() {
		if p := recover(); p != nil {
			out = loaded{input: in, unread: &report.Unread{File: in.name, Problem: fmt.Sprintf("the reader failed: %v", p),
				Remedy: "this is a mistake in pvtally: please report it with the file"}}
		}
	}()
	pages, end := l.progress.share(in)
	defer end()
	if in.fault == nil && in.data == nil && in.kind != folderEnd {
		in = readFile(in, map[kind]int{record: maxRecord, datasheet: maxDatasheet}[in.kind])
	}
	switch {
	case in.fault != nil:
		return loaded{input: in, unread: in.fault}
	case in.kind == record && l.words:
		return loaded{input: in, foreign: in.found, unread: noWords(in)}
	case in.kind == record:
		return decode(in)
	case in.kind == datasheet:
		return l.read(ctx, in, pages)
	}
	return loaded{input: in}
}

func (l loader) read(ctx context.Context, in input, pages func(done, total int)) loaded {
	sum := sha256.Sum256(in.data)
	if l.known[hex.EncodeToString(sum[:])] {
		return loaded{input: in, again: true}
	}
	src, opt := extract.Source{Name: in.name, Data: in.data}, extract.Options{Cache: l.cache, Progress: pages}
	out, err := loaded{input: in}, error(nil)
	out.data = nil
	if l.drawn {
		picture := in.data
		if !l.pictures {
			picture = nil
		}
		opt.Seen = func(pages []page.Page) { out.drawn = facsimile(ctx, picture, pages) }
	}
	if l.words {
		if out.pages, err = extract.Words(ctx, src, opt); err == nil {
			var view strings.Builder
			extract.Explain(&view, out.pages)
			out.view = view.String()
		}
	} else {
		out.sheets, err = extract.Sheets(ctx, src, opt)
	}
	var at *page.Error
	switch {
	case errors.As(err, &at) && at.Problem == extract.NoModule && in.found && prose[strings.ToLower(filepath.Ext(in.path))]:
		out.foreign, out.aside = true, at.Problem
	case err != nil:
		out.unread = unread(in, err)
	}
	return out
}

// prose are the endings of files that catalogues keep besides datasheets: a read-me. What they hold is all text, so nothing was overlooked.
var prose = map[string]bool{".txt": true, ".md": true, ".html": true, ".htm": true}

// unread says why a datasheet could not be read.
func unread(in input, err error) *report.Unread {
	u := &report.Unread{File: in.name, Problem: err.Error(), Remedy: "check that the file is a module's datasheet"}
	var at *page.Error
	if errors.As(err, &at) {
		u.Page, u.Problem, u.Remedy = at.Page, at.Problem, at.Remedy
		if at.Cause != nil {
			u.Problem += ": " + at.Cause.Error()
		}
	}
	return u
}

// noWords is for a record that was named where words are wanted; in a folder it is passed over.
func noWords(in input) *report.Unread {
	if in.found {
		return nil
	}
	return &report.Unread{File: in.name, Problem: "a record has no words", Remedy: "name the datasheet it was read from"}
}
