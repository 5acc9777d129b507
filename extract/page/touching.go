package page

import (
	"math"
	"slices"
	"unicode"
	"unicode/utf8"
)

// joinTouching joins the pieces of a word that the file holds apart from each other: "89", then "%" from elsewhere, then ".4". Only
// pieces of one kind (letters, or a number's parts) are joined: a unit that touches the next column's number stays apart.
func joinTouching(words []Word) []Word {
	order := make([]int, 0, len(words))
	for i, w := range words {
		if w.Hidden == Visible && len(w.Edges) > 1 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return compareLine(words[a], words[b]) })
	gone := make([]bool, len(words))
	for k := 0; k < len(order); k++ {
		a := &words[order[k]]
		for n := k + 1; n < len(order) && n <= k+touchReach; n++ {
			if b := words[order[n]]; !gone[order[n]] && order[n] != order[k]+1 && touches(*a, b) {
				a.append(b)
				gone[order[n]] = true
				n = k
			}
		}
	}
	kept := words[:0]
	for i, w := range words {
		if !gone[i] {
			kept = append(kept, w)
		}
	}
	return kept
}

const (
	touchReach = 6    // neighbours on the line that are looked at
	touchGap   = 0.08 // font sizes
	touchLap   = -0.2
	touchDrop  = 0.08
	touchSize  = 0.1 // relative difference of font sizes
)

// compareLine sorts by direction, baseline and place in the line. Baselines count in whole steps, so that the order is total.
func compareLine(a, b Word) int {
	if a.Rotation != b.Rotation {
		return a.Rotation - b.Rotation
	}
	if d := math.Round(a.across()) - math.Round(b.across()); d != 0 {
		return int(d)
	}
	switch {
	case a.Edges[0] < b.Edges[0]:
		return -1
	case a.Edges[0] > b.Edges[0]:
		return 1
	}
	return 0
}

// across is the place of the word's line.
func (w Word) across() float64 {
	switch w.Rotation {
	case 90:
		return w.Box.X0
	case 270:
		return w.Box.X1
	}
	return w.Baseline
}

func touches(a, b Word) bool {
	size := max(a.Size, b.Size)
	gap := b.Edges[0] - a.Edges[len(a.Edges)-1]
	return a.Rotation == b.Rotation && a.Colour == b.Colour && a.Bold == b.Bold &&
		math.Abs(a.Size-b.Size) <= touchSize*size && math.Abs(a.across()-b.across()) <= touchDrop*size &&
		gap <= touchGap*size && gap >= touchLap*size && sameKind(a.Text, b.Text)
}

// sameKind tells whether the runes that meet are both letters or both parts of a number.
func sameKind(a, b string) bool {
	last, _ := utf8.DecodeLastRuneInString(a)
	first, _ := utf8.DecodeRuneInString(b)
	if unicode.IsLetter(last) && unicode.IsLetter(first) {
		return true
	}
	part := func(r rune) bool { return unicode.IsDigit(r) || r == '.' || r == ',' || r == '/' }
	return part(last) && part(first) && (unicode.IsDigit(last) || unicode.IsDigit(first))
}

// append adds a word that follows without a gap.
func (w *Word) append(next Word) {
	w.Text += next.Text
	w.Box = w.Box.Union(next.Box)
	w.Edges = append(w.Edges[:len(w.Edges)-1], next.Edges...)
}
