package page

import (
	"context"
	"crypto/sha256"
	"maps"
	"math"
	"slices"
	"strings"
	"sync"
)

// CellRequest asks for one place of a page to be read once more, alone.
type CellRequest struct {
	Box       Box
	Whitelist string // the only characters the place may hold; empty for all
	Known     string // what is already held to stand there; an unsure reading is taken twice, the sooner where its digits are others
}

// CellReading is what stands there, with single spaces; empty where nothing could be read.
type CellReading struct {
	Text string
	Sure float64 // 0 to 1
}

// cellTall is the height of a cell's capitals for Tesseract: half as much again as in the reading of whole lines, so that the picture
// it sees is another one.
const cellTall = 46

// A cell whose reading is not sure, or is less sure than could be and has other digits than known, is read at another height, too; the
// surer reading counts.
const (
	cellLeast     = 0.3
	cellSure      = 0.6
	cellOtherTall = 34
)

// ReadCells reads places of a page, 1 being the first, each for itself: cut out, enlarged, without rules and neighbours. It is a
// second opinion on what Open read from a picture; digits that contradict their look-alikes on the page come back as these. Errors
// are of type *Error, but for a context that the caller ended.
func ReadCells(ctx context.Context, data []byte, number int, cells []CellRequest, opt Options) ([]CellReading, error) {
	const name = "page to read again"
	if len(cells) == 0 {
		return nil, nil
	}
	o, err := findOCR()
	if err != nil {
		return nil, &Error{File: name, Page: number, Problem: err.Error(), Remedy: ocrInstall}
	}
	key := keyOf(data, "cells", number, o.version, o.languages, cells)
	var kept []CellReading
	if opt.Cache && loadKept(key, &kept) && len(kept) == len(cells) {
		return kept, nil
	}
	s, err := sightOf(ctx, o, data, number, cells)
	if err != nil {
		return nil, asPictureError(ctx, name, number, err)
	}
	out := make([]CellReading, len(cells))
	byList := map[string][]int{}
	for i, c := range cells {
		byList[c.Whitelist] = append(byList[c.Whitelist], i)
	}
	lists := slices.Sorted(maps.Keys(byList))
	var wait sync.WaitGroup
	faults := make([]error, len(lists))
	for i, list := range lists {
		wait.Go(func() { faults[i] = o.readCells(ctx, s, list, byList[list], cells, out) })
	}
	wait.Wait()
	for _, err := range faults {
		if err != nil {
			return nil, asPictureError(ctx, name, number, err)
		}
	}
	if opt.Cache {
		saveKept(key, out)
	}
	return out, nil
}

// readCells has a process read the cells of one whitelist, and another one those that came out unsure.
func (o *ocr) readCells(ctx context.Context, s *sight, list string, at []int, cells []CellRequest, out []CellReading) error {
	var lines []lettering
	var of []int
	for _, i := range at {
		for _, l := range s.within(cells[i].Box) {
			lines, of = append(lines, l), append(of, i)
		}
	}
	settings := ocrSettings{mode: psmLine, dpi: pictureDPI, language: o.language(), whitelist: list}
	first, err := o.readSecond(ctx, s, lines, cellTall, settings)
	if err != nil {
		return err
	}
	whole := func(from []CellReading) {
		for _, i := range at {
			out[i] = CellReading{Sure: 1}
		}
		for n, r := range from {
			to := &out[of[n]]
			to.Text, to.Sure = strings.TrimSpace(to.Text+" "+r.Text), min(to.Sure, r.Sure)
		}
	}
	whole(first)
	var unsure []int
	var again []lettering
	for n, l := range lines {
		if r := out[of[n]]; r.Sure < cellLeast || r.Sure < cellSure && figuresIn(r.Text) != figuresIn(cells[of[n]].Known) {
			unsure, again = append(unsure, n), append(again, l)
		}
	}
	other, err := o.readSecond(ctx, s, again, cellOtherTall, settings)
	if err != nil {
		return err
	}
	for k, n := range unsure {
		if other[k].Sure > first[n].Sure {
			first[n] = other[k]
		}
	}
	whole(first)
	return nil
}

// figuresIn is a text's digits alone.
func figuresIn(text string) string {
	return strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, text)
}

// readSecond has one process read parts of cells at a height.
func (o *ocr) readSecond(ctx context.Context, s *sight, lines []lettering, tall int, settings ocrSettings) ([]CellReading, error) {
	if len(lines) == 0 {
		return nil, nil
	}
	read := make([][]ocrWord, len(lines))
	if err := o.readLines(ctx, lines, tall, settings, read); err != nil {
		return nil, err
	}
	out := make([]CellReading, len(lines))
	for n, l := range lines {
		out[n].Text, out[n].Sure = s.second(&l, read[n])
	}
	return out, nil
}

// within gives the parts of the lines that stand in a box, top to bottom.
func (s *sight) within(box Box) []lettering {
	box = box.grow(cellSlack)
	var out []lettering
	for _, l := range s.lines {
		part := lettering{on: l.on, tall: l.tall, base: l.base}
		for _, b := range l.blobs {
			if x, y := l.on.box(b.box).centre(); box.holds(x, y) {
				part.blobs = append(part.blobs, b)
				part.box = part.box.Union(b.box)
			}
		}
		if len(part.blobs) > 0 {
			out = append(out, part)
		}
	}
	return out
}

// cellSlack is how far, in points, a cell's ink may stand out of its box.
const cellSlack = 0.4

// second is the text of a second reading, digits in the likeness of others corrected to these.
func (s *sight) second(l *lettering, read []ocrWord) (string, float64) {
	line := l.laid(read)
	glyphs := line.glyphs
	sure := 1.0
	for i := range glyphs {
		g := &glyphs[i]
		if g.dubious {
			sure = min(sure, sureDubious)
		}
		sure = min(sure, g.sure)
		if like, ok := l.on.likenessOf(*g, line.tall); ok {
			if digit := s.kin.judge(like, true); digit != 0 && digit != g.r {
				g.r, sure = digit, min(sure, sureDubious)
			}
		}
	}
	var b strings.Builder
	for i, g := range glyphs {
		if i > 0 && g.spaced {
			b.WriteByte(' ')
		}
		b.WriteRune(g.r)
	}
	return b.String(), sure
}

// sightOf is what was made out on a page, from a moment ago or once more; of a page that has text, too, the surroundings of the cells.
func sightOf(ctx context.Context, o *ocr, data []byte, number int, cells []CellRequest) (*sight, error) {
	s, known := recall(data, number)
	if known && s != nil {
		return s, nil
	}
	if !known {
		pages, err := blank(ctx, "page to read again", data, Options{})
		if err != nil {
			return nil, err
		}
		if number < 1 || number > len(pages) {
			return nil, &Error{Problem: "there is no such page"}
		}
		if p := &pages[number-1]; !p.hasText() {
			lines, err := p.lettering(ctx, data)
			if err != nil {
				return nil, err
			}
			s, _, err = o.look(ctx, lines)
			return s, err
		}
	}
	var parts []Box
	for _, c := range cells {
		parts = append(parts, c.Box)
	}
	shown, err := inked(ctx, data, job{Number: number, Parts: (&Page{Width: math.MaxFloat32, Height: math.MaxFloat32}).regions(parts)})
	if err != nil {
		return nil, err
	}
	s = &sight{}
	for _, c := range shown {
		s.lines = append(s.lines, c.findLines(blobsOf(c.mask, c.w, c.h, maskInk))...)
	}
	return s, nil
}

// sights keeps what was made out on the last pages, since their cells are asked for soon after; a page takes some 2 MB. Whether it is
// still there must make no difference but in time.
var sights struct {
	sync.Mutex
	last []lookedAt
}

type lookedAt struct {
	sum    [sha256.Size]byte
	number int
	sight  *sight // nil for a page with text
}

const maxSights = 48

func remember(data []byte, number int, s *sight) {
	sum := sha256.Sum256(data)
	sights.Lock()
	defer sights.Unlock()
	sights.last = append([]lookedAt{{sum, number, s}}, sights.last[:min(len(sights.last), maxSights-1)]...)
}

func recall(data []byte, number int) (s *sight, known bool) {
	sum := sha256.Sum256(data)
	sights.Lock()
	defer sights.Unlock()
	for _, k := range sights.last {
		if k.sum == sum && k.number == number {
			return k.sight, true
		}
	}
	return nil, false
}
