package page

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"time"
)

// Options bound a reading.
type Options struct {
	MaxPages int           // refuse longer documents; 0 means DefaultMaxPages
	Deadline time.Duration // for the whole document; 0 means DefaultDeadline
	Cache    bool          // results of slow readers (pictures) may be kept in the user's cache folder
}

// Limits of one document. A datasheet has two pages, a catalogue of a whole product line some dozens.
const (
	DefaultMaxPages = 100
	DefaultDeadline = 60 * time.Second
	maxBytes        = 256 << 20
)

func (o Options) maxPages() int {
	if o.MaxPages > 0 {
		return o.MaxPages
	}
	return DefaultMaxPages
}

func (o Options) deadline() time.Duration {
	if o.Deadline > 0 {
		return o.Deadline
	}
	return DefaultDeadline
}

// PDF reads the text layer and the drawn lines of every page. name is used in errors only. A document without any text gives its
// pages without words: see HasText. Errors are of type *Error, but for a context that the caller ended.
func PDF(ctx context.Context, name string, data []byte, opt Options) ([]Page, error) {
	if err := sniffPDF(name, data); err != nil {
		return nil, err
	}
	answer, err := ask(ctx, job{Task: taskRead, Name: name, Opt: opt}, data)
	return answer.Pages, err
}

// readPDF does the work of PDF in this process.
func readPDF(ctx context.Context, name string, data []byte, opt Options) ([]Page, error) {
	limited, cancel := context.WithTimeout(ctx, opt.deadline())
	defer cancel()
	var pages []Page
	at := 0
	err := withGuest(limited, func(g *guest) error {
		doc, err := g.openPDF(name, data)
		if err != nil {
			return err
		}
		count := g.count("FPDF_GetPageCount", doc)
		if err := checkPageCount(name, count, opt.maxPages()); err != nil {
			return err
		}
		g.hiddenLayers = hiddenLayers(data)
		for at = 1; at <= count; at++ {
			p, err := g.readPage(name, doc, at)
			if err != nil {
				return err
			}
			pages = append(pages, p)
		}
		return nil
	})
	if err != nil {
		return nil, asError(ctx, name, at, opt, err)
	}
	return pages, nil
}

// HasText tells whether any page holds a word that is visible.
func HasText(pages []Page) bool {
	for _, p := range pages {
		for _, w := range p.Words {
			if w.Hidden == Visible {
				return true
			}
		}
	}
	return false
}

// pdfHeaderWithin is how far into a file the header may stand: readers accept some bytes of mail or printer preamble.
const pdfHeaderWithin = 1024

func isPDF(data []byte) bool {
	return bytes.Contains(data[:min(len(data), pdfHeaderWithin)], []byte("%PDF-"))
}

func sniffPDF(name string, data []byte) error {
	switch {
	case len(data) == 0:
		return emptyFile(name)
	case len(data) > maxBytes:
		return tooLarge(name, data)
	case !isPDF(data):
		return &Error{File: name, Problem: "this is not a PDF", Remedy: "give a datasheet as PDF, HTML or text"}
	}
	return nil
}

func tooLarge(name string, data []byte) error {
	return &Error{File: name, Problem: fmt.Sprintf("%d MB is more than the limit of %d MB", len(data)>>20, maxBytes>>20), Remedy: "export the datasheet's pages alone"}
}

func checkPageCount(name string, count, limit int) error {
	switch {
	case count == 0:
		return &Error{File: name, Problem: "the PDF holds no pages", Remedy: "fetch the file again, it may be cut short"}
	case count > limit:
		return &Error{File: name, Problem: fmt.Sprintf("%d pages are more than the limit of %d", count, limit), Remedy: "split the file and give the datasheet's pages alone"}
	}
	return nil
}

// PDFium's FPDF_GetLastError.
const (
	pdfErrFile     = 2
	pdfErrPassword = 4
	pdfErrSecurity = 5
)

// openPDF copies the document into the sandbox and gives its handle.
func (g *guest) openPDF(name string, data []byte) (uint64, error) {
	at := g.alloc(len(data))
	if !g.mem.Write(uint32(at), data) {
		return 0, errNoMemory
	}
	if doc := g.ptr("FPDF_LoadMemDocument", at, uint64(len(data)), 0); doc != 0 {
		return doc, nil
	}
	switch g.call("FPDF_GetLastError") {
	case pdfErrPassword:
		return 0, &Error{File: name, Problem: "the PDF is encrypted and asks for a password", Remedy: "save a copy without a password"}
	case pdfErrSecurity:
		return 0, &Error{File: name, Problem: "the PDF is encrypted in a way that is not known here", Remedy: "save a copy without encryption"}
	}
	return 0, &Error{File: name, Problem: "the PDF is damaged or cut short", Remedy: "fetch the file again or save it anew from a viewer"}
}

// asError puts failures of the sandbox into the words of the person who gave the file.
func asError(ctx context.Context, name string, at int, opt Options, err error) error {
	var known *Error
	switch {
	case errors.As(err, &known):
		return err
	case ctx.Err() != nil:
		return fmt.Errorf("could not read %q: %w", name, ctx.Err())
	case errors.Is(err, context.DeadlineExceeded):
		return &Error{File: name, Page: at, Problem: fmt.Sprintf("not done within %s", opt.deadline()), Remedy: "the page may be far too complex; print it anew to PDF", Cause: err}
	case errors.Is(err, errNoMemory):
		return &Error{File: name, Page: at, Problem: "the page needs more memory than the limit", Remedy: "print it anew to PDF at a lower resolution", Cause: err}
	}
	return &Error{File: name, Page: at, Problem: "the pdf reader broke off", Remedy: "the file may be damaged; print it anew to PDF", Cause: err}
}
