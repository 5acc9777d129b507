package page

import (
	"context"
	"errors"
	"fmt"
	"sync"
)

// pictureDPI is the resolution at which pages of paper size are recognised: letters of 5 points are 20 pixels high. Pages larger than
// paper (a poster's size is given to some sheets) are shown so many pixels large.
const (
	pictureDPI    = 300
	pointsPerSide = 14 * pointsPerInch
)

// dpiFor is the resolution for a page of this size, in points.
func dpiFor(w, h float64) float64 {
	return min(pictureDPI, pictureDPI*pointsPerSide/max(w, h))
}

// readPictures recognises the pages that hold no text. Pages go side by side; their order does not change.
func readPictures(ctx context.Context, name string, data []byte, pages []Page, opt Options) ([]Page, error) {
	var blank []int
	for i, p := range pages {
		if !HasText([]Page{p}) {
			blank = append(blank, i)
		}
	}
	if len(blank) == 0 {
		return pages, nil
	}
	o, err := findOCR()
	if err != nil {
		return nil, &Error{File: name, Page: pages[blank[0]].Number, Problem: "the page has no text: it is a picture or outlined lettering, and " + err.Error(), Remedy: ocrInstall}
	}
	var wait sync.WaitGroup
	faults := make([]error, len(blank))
	for n, i := range blank {
		wait.Go(func() { faults[n] = o.page(ctx, data, &pages[i]) })
	}
	wait.Wait()
	for n, err := range faults {
		if err != nil {
			return nil, asPictureError(ctx, name, pages[blank[n]].Number, err)
		}
	}
	return pages, nil
}

func asPictureError(ctx context.Context, name string, at int, err error) error {
	var known *Error
	switch {
	case ctx.Err() != nil:
		return fmt.Errorf("could not read %q: %w", name, ctx.Err())
	case errors.As(err, &known):
		return &Error{File: name, Page: at, Problem: known.Problem, Remedy: known.Remedy, Cause: known.Cause}
	}
	return &Error{File: name, Page: at, Problem: "could not recognise the page's lettering", Cause: err}
}

// page recognises a rendered page.
func (o *ocr) page(ctx context.Context, data []byte, p *Page) error {
	shown, dpi, err := show(ctx, data, p.Number, 0)
	if err != nil {
		return err
	}
	c := newCanvas(shown, dpi)
	p.Rules, p.Bands = c.rules, c.bands
	var s *sight
	s, p.Words, err = o.look(ctx, c, c.findLines(blobsOf(c.mask, c.w, c.h, maskInk)))
	if err == nil {
		remember(data, p.Number, s)
	}
	return err
}
