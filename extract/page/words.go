package page

import (
	"math"
	"unicode"
)

const (
	wordGap  = 0.25 // of the font size: a wider gap is a space
	backStep = 0.5  // of the font size: a larger jump back begins a new word
	sameLine = 0.3  // of the font size: how far baselines may differ within a word
)

// joinWords puts characters that follow each other without a visible gap into words.
func joinWords(chars []char) []Word {
	var words []Word
	var run []char
	flush := func() {
		if len(run) > 0 {
			words = append(words, newWord(run))
		}
		run = run[:0]
	}
	for _, c := range chars {
		if c.r == 0 || unicode.IsSpace(c.r) || unicode.IsControl(c.r) {
			flush()
			continue
		}
		if len(run) > 0 && parts(run[len(run)-1], c) {
			flush()
		}
		run = append(run, c)
	}
	flush()
	return words
}

// parts tells whether a new word begins at b after a.
func parts(a, b char) bool {
	if a.rotation != b.rotation || a.hidden != b.hidden {
		return true
	}
	size := max(a.size, b.size)
	gap, drop := b.along()-a.end(), math.Abs(b.across()-a.across())
	return gap > wordGap*size || gap < -backStep*size || drop > sameLine*size
}

// along is the position of the character's start in reading direction, end that of its end, across that of its baseline.
func (c char) along() float64 {
	switch c.rotation {
	case 90:
		return c.box.Y0
	case 180:
		return -c.box.X1
	case 270:
		return -c.box.Y1
	}
	return c.box.X0
}

func (c char) end() float64 {
	switch c.rotation {
	case 90:
		return c.box.Y1
	case 180:
		return -c.box.X0
	case 270:
		return -c.box.Y0
	}
	return c.box.X1
}

func (c char) across() float64 {
	if c.rotation%180 == 0 {
		return c.y
	}
	return c.x
}

func newWord(run []char) Word {
	first := run[0]
	w := Word{Box: first.box, Baseline: first.y, Size: first.size, Rotation: first.rotation, Bold: first.bold, Colour: first.colour, Hidden: first.hidden, By: ByText}
	var text []rune
	for _, c := range run {
		text = append(text, c.r)
		w.Edges = append(w.Edges, c.along())
		w.Box = w.Box.Union(c.box)
	}
	w.Edges = append(w.Edges, run[len(run)-1].end())
	w.Text = string(text)
	return w
}
