package report

import (
	"cmp"
	"encoding/base64"
	"fmt"
	"html/template"
	"maps"
	"slices"

	"pvtally/cmd/internal/draw"
	"pvtally/schema"
)

// Limits of what is drawn of one page, so that a hostile file does not make a report that no browser opens.
const (
	maxDrawnPages = 8
	maxDrawn      = 6000 // words, lines or bands of one page
	maxWordRunes  = 200
)

// facsimile is one page with every value read marked on it.
type facsimile struct {
	ID, Title, Note string
	SVG             template.HTML
}

// facsimiles draws the pages that hold values. places gives every value's mark on them an address.
func (v *htmlSheet) facsimiles(s *Sheet) (list []facsimile, left int) {
	pages := map[int]*Page{}
	for i := range s.Pages {
		pages[s.Pages[i].Number] = &s.Pages[i]
	}
	values := map[int][]string{} // pointers by page
	for pointer, e := range s.Record.Evidence {
		if e.Page > 0 && !e.Box.IsZero() {
			values[e.Page] = append(values[e.Page], pointer)
		}
	}
	for _, number := range slices.Sorted(maps.Keys(values)) {
		if len(list) == maxDrawnPages {
			left++
			continue
		}
		f := facsimile{ID: fmt.Sprintf("%s-page-%d", v.ID, number), Title: fmt.Sprintf("Page %d", number)}
		p := pages[number]
		if p == nil {
			p = rebuilt(s.Record, number, values[number])
			f.Note = "The datasheet is not at hand: only the values that were read from it are drawn, where they stand."
		}
		f.SVG = v.page(s, p, values[number], fmt.Sprintf("Page %d of %s; %s marked", number, s.File, plural(len(values[number]), "value")))
		list = append(list, f)
	}
	return list, left
}

// rebuilt is a page of nothing but the printed values, on A4 unless they need more.
func rebuilt(s *schema.Sheet, number int, pointers []string) *Page {
	p := &Page{Number: number, Width: 595, Height: 842}
	boxes := map[schema.Box]string{}
	for _, pointer := range pointers {
		e := s.Evidence[pointer]
		boxes[e.Box] = e.Printed
		p.Width, p.Height = max(p.Width, e.Box[2]+20), max(p.Height, e.Box[3]+20)
	}
	for b, text := range boxes {
		h := b[3] - b[1]
		p.Words = append(p.Words, Word{Text: text, X0: b[0], Y0: b[1], X1: b[2], Y1: b[3], Baseline: b[3] - 0.22*h, Size: 0.9 * h})
	}
	slices.SortFunc(p.Words, func(a, b Word) int {
		return cmp.Or(cmp.Compare(a.Y0, b.Y0), cmp.Compare(a.X0, b.X0), cmp.Compare(a.Text, b.Text))
	})
	return p
}

// page draws one page: bands and lines, the values read, the words, and on top what is wrong.
func (v *htmlSheet) page(s *Sheet, p *Page, pointers []string, name string) template.HTML {
	var d draw.SVG
	w, h := min(max(p.Width, 1), 20000), min(max(p.Height, 1), 20000)
	d.Open("svg", "class", "page", "viewBox", "0 0 "+draw.Short(w)+" "+draw.Short(h), "role", "group", "aria-label", Plain(name))
	d.Open("g", "aria-hidden", "true")
	d.Empty("rect", "class", "paper", "x", 0, "y", 0, "width", w, "height", h)
	if p.Picture != nil {
		d.Empty("image", "href", "data:image/jpeg;base64,"+base64.StdEncoding.EncodeToString(p.Picture), "x", 0, "y", 0, "width", w, "height", h, "preserveAspectRatio", "none")
	} else {
		drawGround(&d, p)
	}
	d.Close("g")
	groups := v.boxes(s, pointers)
	read := "read"
	if p.Picture != nil {
		read = "read over" // the digits lie below
	}
	for _, b := range groups {
		if b.mark == nil {
			b.frame(&d, read, 1)
		}
	}
	if p.Picture == nil {
		d.Open("g", "class", "words", "aria-hidden", "true")
		for _, word := range p.Words[:min(len(p.Words), maxDrawn)] {
			drawWord(&d, word)
		}
		d.Close("g")
	}
	for i, b := range groups {
		if b.mark != nil {
			v.flag(&d, s, fmt.Sprintf("%s-%d-%d", v.ID, p.Number, i+1), b)
		}
	}
	d.Close("svg")
	return d.HTML()
}

func drawGround(d *draw.SVG, p *Page) {
	for _, b := range p.Bands[:min(len(p.Bands), maxDrawn)] {
		w, h := b.X1-b.X0, b.Y1-b.Y0
		if b.Dark < 0.04 || w*h > 0.6*p.Width*p.Height {
			continue
		}
		class := "band"
		if b.Dark > 0.5 {
			class += " dark"
		}
		if w*h > 0.1*p.Width*p.Height { // a photograph's ground, not a table's bar
			class = "band wide"
		}
		d.Empty("rect", "class", class, "x", b.X0, "y", b.Y0, "width", w, "height", h)
	}
	for _, l := range p.Lines[:min(len(p.Lines), maxDrawn)] {
		d.Empty("path", "class", "rule", "d", "M"+draw.Short(l.X0)+" "+draw.Short(l.Y0)+"L"+draw.Short(l.X1)+" "+draw.Short(l.Y1))
	}
}

// drawWord sets a word into its box, whatever the width of the font that shows it.
func drawWord(d *draw.SVG, w Word) {
	text := Plain(w.Text)
	if r := []rune(text); len(r) > maxWordRunes {
		text = string(r[:maxWordRunes])
	}
	x, y, length := w.X0, w.Baseline, w.X1-w.X0
	below := 0.22 * w.Size
	switch w.Rotation {
	case 90:
		x, y, length = w.X0+below, w.Y0, w.Y1-w.Y0
	case 180:
		x, y = w.X1, w.Y0+below
	case 270:
		x, y, length = w.X1-below, w.Y1, w.Y1-w.Y0
	}
	at := []any{"x", x, "y", y, "font-size", w.Size, "textLength", max(length, 0.1), "lengthAdjust", "spacingAndGlyphs"}
	if w.Rotation != 0 {
		at = append(at, "transform", fmt.Sprintf("rotate(%d %s %s)", w.Rotation, draw.Short(x), draw.Short(y)))
	}
	if w.Bold {
		at = append(at, "class", "bold")
	}
	d.Text("text", text, at...)
}
