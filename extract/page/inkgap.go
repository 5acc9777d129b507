package page

import (
	"cmp"
	"math"
	"slices"
)

// A text layer may lie by omission: labels or single letters are drawn as outlines or patched in as pictures, and the text that is
// left ("13." for 13.55) looks healthy. Where a page draws what may be letters, the rendered page is compared with its text.

const (
	figureLeast  = 1.2 // points: height of a raised figure of small print
	figureTouch  = 0.6 // sizes: how near to a word an outline is for the word to be in question
	patchLeast   = 4.0 // points: height of the smallest picture with lettering in it
	gapMargin    = 1.0 // points around what may be letters
	wholeSegment = 1.6 // width to height from which on an outline may be a whole word
)

// gaps gives the places of a page that may show lettering which its text does not hold.
func (p *Page) gaps() []Box {
	var out []Box
	for _, b := range p.Images {
		if b.H() >= patchLeast && b.W() >= patchLeast {
			out = append(out, b.grow(gapMargin))
		}
	}
	figures := slices.Clone(p.Figures)
	slices.SortStableFunc(figures, func(a, b Box) int { return cmp.Compare(a.X0, b.X0) })
	words := newRows(p.Words)
	for i, b := range figures {
		if b.H() >= figureLeast && (b.W() > wholeSegment*b.H() || inRow(figures, i) || words.beside(b)) {
			out = append(out, b.grow(gapMargin))
		}
	}
	return out
}

// inRow tells whether an outline has a neighbour as letters have; boxes are sorted from left to right.
func inRow(boxes []Box, i int) bool {
	a := boxes[i]
	for j := i + 1; j < len(boxes) && boxes[j].X0 <= a.X1+letterGap*a.H()*letterRatio; j++ {
		if rowMates(a, boxes[j]) {
			return true
		}
	}
	for j := i - 1; j >= 0 && boxes[j].X0 >= a.X0-4*letterGap*a.H()*letterRatio; j-- {
		if rowMates(boxes[j], a) {
			return true
		}
	}
	return false
}

// rowMates tells whether two outlines may be letters of a line.
func rowMates(a, b Box) bool {
	high, low := max(a.H(), b.H()), min(a.H(), b.H())
	gap, lap := b.X0-a.X1, min(a.Y1, b.Y1)-max(a.Y0, b.Y0)
	return high <= letterRatio*low && gap <= letterGap*high && gap >= -0.3*low && lap >= letterLap*low &&
		min(math.Abs(a.Y0-b.Y0), math.Abs(a.Y1-b.Y1)) <= letterShift*high
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

// beside tells whether an outline of a letter's size stands right beside a word.
func (r rows) beside(b Box) bool {
	for _, i := range r.near(b, figureTouch*b.H()) {
		if w := r.words[i]; b.H() <= 1.3*w.Size && min(b.Y1, w.Box.Y1)-max(b.Y0, w.Box.Y0) > 0.4*b.H() {
			return true
		}
	}
	return false
}
