package page

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"sync"
	"time"
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

// readPictures recognises what the pages show beyond their text: whole pages that hold none, labels and letters drawn as outlines.
// Pages go side by side; their order does not change. It tells whether there was anything to look at.
func readPictures(ctx context.Context, name string, data []byte, pages []Page) (looked bool, err error) {
	var wait sync.WaitGroup
	faults := make([]error, len(pages))
	for i := range pages {
		if p := &pages[i]; !p.hasText() || len(p.Figures) > 0 || len(p.patches()) > 0 {
			looked = true
			wait.Go(func() { faults[i] = p.recognise(ctx, name, data) })
		}
	}
	wait.Wait()
	for _, err := range faults {
		if err != nil {
			return looked, err
		}
	}
	return looked, nil
}

// hasText tells whether the page holds a visible word.
func (p *Page) hasText() bool { return HasText([]Page{*p}) }

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

// recognise reads a page of which the text is missing, or may be in places.
func (p *Page) recognise(ctx context.Context, name string, data []byte) error {
	giveBack, err := pageBudget.take(ctx, 1)
	if err != nil {
		return asPictureError(ctx, name, p.Number, err)
	}
	defer giveBack()
	start := time.Now()
	whole := !p.hasText()
	lines, err := p.lettering(ctx, data)
	p.Looked += time.Since(start)
	if err != nil {
		return asPictureError(ctx, name, p.Number, err)
	}
	if len(lines) == 0 {
		return nil
	}
	o, err := findOCR()
	if err != nil {
		return p.unrecognised(name, lines, err)
	}
	s, all, err := o.look(ctx, lines)
	if err != nil {
		return asPictureError(ctx, name, p.Number, err)
	}
	if whole {
		s.compact()
		remember(data, p.Number, s)
	} else {
		remember(data, p.Number, nil)
	}
	p.merge(all)
	return nil
}

// lettering finds what there is to be recognised: all that a page without text shows, else what its text does not explain.
func (p *Page) lettering(ctx context.Context, data []byte) ([]lettering, error) {
	if !p.hasText() {
		giveBack, err := canvasBudget.take(ctx, p.megapixels(nil))
		if err != nil {
			return nil, err
		}
		defer giveBack()
		shown, err := inked(ctx, data, job{Number: p.Number})
		if err != nil || len(shown) == 0 {
			return nil, err
		}
		c := shown[0]
		p.Rules, p.Bands = c.rules, c.bands
		return c.findLines(blobsOf(c.mask, c.w, c.h, maskInk)), nil
	}
	words := newRows(p.Words)
	var lines []lettering
	for _, c := range p.figureCanvases() {
		lines = append(lines, c.unexplained(words, nil)...)
	}
	patches := p.patches()
	if len(patches) == 0 {
		return lines, nil
	}
	regions := p.regions(patches)
	giveBack, err := canvasBudget.take(ctx, p.megapixels(regions))
	if err != nil {
		return nil, err
	}
	defer giveBack()
	shown, err := inked(ctx, data, job{Number: p.Number, Parts: regions, Bare: p.shadeBoxes()})
	if err != nil {
		return nil, err
	}
	for _, c := range shown {
		lines = append(lines, beyond(lines, c.unexplained(words, patches))...)
	}
	return lines, nil
}

// beyond gives the lines that are not among those known: an outline over an image is in both.
func beyond(known, more []lettering) []lettering {
	return slices.DeleteFunc(more, func(l lettering) bool {
		x, y := l.on.box(l.box).centre()
		return slices.ContainsFunc(known, func(k lettering) bool { return k.on.box(k.box).holds(x, y) })
	})
}

// unrecognised is what becomes of a page when Tesseract is missing: without any text it cannot be read; with some, the words that
// are not all there are in doubt.
func (p *Page) unrecognised(name string, lines []lettering, why error) error {
	if !p.hasText() {
		return &Error{File: name, Page: p.Number, Problem: "the page has no text: it is a picture or outlined lettering, and " + why.Error(), Remedy: ocrInstall}
	}
	words := newRows(p.Words)
	for _, l := range lines {
		for _, b := range l.blobs {
			if b.text {
				continue
			}
			box := l.on.box(b.box)
			for _, i := range words.near(box, touchedGap*box.H()) {
				if w := &p.Words[i]; min(box.Y1, w.Box.Y1)-max(box.Y0, w.Box.Y0) > 0 {
					w.Doubt = doubtInk + ": " + why.Error()
				}
			}
		}
	}
	return nil
}
