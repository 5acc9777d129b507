package page

import (
	"cmp"
	"image"
	"math"
	"slices"
)

// A text layer may lie by omission: labels or single letters are drawn as outlines or patched in as pictures, and the text that is
// left ("13." for 13.55) looks healthy. Where a page draws what may be letters, the rendered page is compared with its text.

const (
	figureLeast = 1.2  // points: height of a raised figure of small print
	figureTouch = 0.6  // heights: how near to a word an outline is for the word to be in question
	figureRow   = 3    // outlines that stand in a row as letters do
	figureSame  = 0.04 // relative difference of sizes: rows of equal outlines are patterns
	wholeWide   = 1.6  // width to height from which on an outline may be a whole word
	wholeDense  = 12   // and segments of its path for each height of its width
	patchLeast  = 4.0  // points: height of the smallest image with lettering in it
	patchMost   = 48.0 // points: height up to which an image may be a line of lettering
	patchWide   = 1.2
	fewWords    = 60  // a page with fewer words is looked at wherever it has pictures
	gapMargin   = 1.0 // points around what may be letters
	figureMarks = 0.6 // heights around a row in which its points and accents stand
)

// patches gives the images of a page that may show lettering which its text does not hold.
func (p *Page) patches() []Box {
	words := newRows(p.Words)
	var out []Box
	shades := p.shades()
	for n, i := range p.Images {
		if shades[n] {
			continue
		}
		w, h := i.Box.W(), i.Box.H()
		line := h >= patchLeast && h <= patchMost && w >= patchWide*h
		if line || min(w, h) > patchMost && (!i.Photo || len(words.order) < fewWords) {
			out = append(out, i.Box.grow(gapMargin))
		}
	}
	return out
}

// figureUnits is pixels for a point where outlines are laid in rows by the ways of the picture reader.
const figureUnits = 16

// lettered gives the outlines that may be lettering and that no word explains: several in a row, one beside a word with its row, or a
// whole word as one path.
func (p *Page) lettered(figures []figure) []figure {
	units := &canvas{scale: figureUnits, w: int(p.Width * figureUnits), h: int(p.Height * figureUnits)}
	words := newRows(p.Words)
	var letters []blob
	chosen := map[int]bool{}
	for i, f := range figures {
		if f.box.H() < figureLeast || !(Box{0, 0, p.Width, p.Height}).encloses(f.box) || words.explain(f.box) {
			continue
		}
		wide := f.box.W() / f.box.H()
		if wide > wholeWide && float64(f.segments) >= wholeDense*wide || words.beside(f.box) {
			chosen[i] = true
		}
		letters = append(letters, blob{box: image.Rect(int(f.box.X0*figureUnits), int(f.box.Y0*figureUnits), int(f.box.X1*figureUnits)+1, int(f.box.Y1*figureUnits)+1), area: i})
	}
	var rows []Box
	for _, row := range units.chain(letters) {
		if len(row.blobs) >= figureRow && !uniform(row.blobs, figures) || slices.ContainsFunc(row.blobs, func(b blob) bool { return chosen[b.area] }) {
			for _, b := range row.blobs {
				chosen[b.area] = true
			}
			rows = append(rows, units.box(row.box).grow(figureMarks*float64(row.tall)/figureUnits))
		}
	}
	var out []figure
	for i, f := range figures {
		x, y := f.box.centre()
		if chosen[i] || f.box.H() < letterLeast && slices.ContainsFunc(rows, func(b Box) bool { return b.holds(x, y) }) {
			out = append(out, f)
		}
	}
	return out
}

func (b Box) encloses(o Box) bool { return b.Union(o) == b }

// uniform tells whether outlines are all of one make, as the cells of a drawn module are and letters are not.
func uniform(row []blob, figures []figure) bool {
	first := row[0].box
	for _, b := range row[1:] {
		if figures[b.area].segments != figures[row[0].area].segments {
			return false
		}
		if math.Abs(float64(b.box.Dx()-first.Dx())) > figureSame*float64(first.Dx())+1 || math.Abs(float64(b.box.Dy()-first.Dy())) > figureSame*float64(first.Dy())+1 {
			return false
		}
	}
	return true
}

const (
	regionMargin = 10.0 // points around a gap, to tell its ground and the words beside it
	regionReach  = 24.0 // points between gaps that are looked at together
	regionWhole  = 0.5  // share of the page from which on all of it is looked at
)

// regions gathers gaps to parts of the page that are worth rendering at once; none means all of the page.
func (p *Page) regions(gaps []Box) []Box {
	page := Box{0, 0, p.Width, p.Height}
	var all []Box
	for _, g := range gaps {
		g = g.grow(regionMargin).meet(page)
		if g.empty() {
			continue
		}
		for merged := true; merged; {
			merged = false
			for i, o := range all {
				if near := o.grow(regionReach - regionMargin).meet(g); !near.empty() {
					g, all, merged = g.Union(o), slices.Delete(all, i, i+1), true
					break
				}
			}
		}
		all = append(all, g)
	}
	area := 0.0
	for _, b := range all {
		area += b.W() * b.H()
	}
	if area > regionWhole*page.W()*page.H() {
		return []Box{page}
	}
	return all
}

// rows finds visible words by the place of their ink.
type rows struct {
	words []Word
	order []int // of the words, by the top of their zone
	tall  float64
}

func newRows(words []Word) rows {
	r := rows{words: words}
	for i, w := range words {
		if w.Hidden == Visible {
			r.order = append(r.order, i)
			r.tall = max(r.tall, w.zone().H())
		}
	}
	slices.SortStableFunc(r.order, func(a, b int) int { return cmp.Compare(words[a].zone().Y0, words[b].zone().Y0) })
	return r
}

// near gives the words whose zones, grown by a margin, meet a box.
func (r rows) near(b Box, margin float64) []int {
	var out []int
	from, _ := slices.BinarySearchFunc(r.order, b.Y0-margin-r.tall, func(i int, y float64) int { return cmp.Compare(r.words[i].zone().Y0, y) })
	for _, i := range r.order[from:] {
		zone := r.words[i].zone()
		if zone.Y0 > b.Y1+margin {
			break
		}
		if meet := zone.grow(margin).meet(b); !meet.empty() {
			out = append(out, i)
		}
	}
	return out
}

// explain tells whether a box lies where a word's own ink stands.
func (r rows) explain(b Box) bool {
	return slices.ContainsFunc(r.near(b, 0), func(i int) bool {
		part := r.words[i].zone().meet(b)
		return !part.empty() && part.W()*part.H() >= zoneShare*b.W()*b.H()
	})
}

// beside tells whether an outline of a letter's size stands right beside a word.
func (r rows) beside(b Box) bool {
	for _, i := range r.near(b, figureTouch*b.H()) {
		if w := r.words[i]; b.H() <= 1.3*w.Size && min(b.Y1, w.Box.Y1)-max(b.Y0, w.Box.Y0) > 0.4*b.H() {
			return true
		}
	}
	return false
}
