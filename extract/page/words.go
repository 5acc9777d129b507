package page

import (
	"math"
	"unicode"
)

// What a reader sees as a gap, in font sizes beyond the usual distance of the line's letters. Kerning leaves up to 0.07; the space
// of a narrow font is 0.2, and justified lines squeeze it further.
const (
	wordGap   = 0.12
	spaceGap  = 0.06 // where the file has a space character
	numberGap = 0.20 // between a digit and its decimal sign
	lineGap   = 1.0  // no letter-spacing is as wide
	backStep  = 0.5  // a larger jump back begins a new word
	sameLine  = 0.3  // baselines may differ by so much within a word

	sameNumber = 0.1  // baselines of digits
	sameHeight = 0.85 // least ratio of the sizes of digits
)

// joinWords puts characters that follow each other without a visible gap into words.
func joinWords(chars []char) []Word {
	var words []Word
	for start := 0; start < len(chars); {
		end := start + 1
		for end < len(chars) && sameRun(chars, end) {
			end++
		}
		words = appendWords(words, chars[start:end])
		start = end
	}
	return joinTouching(words)
}

// sameRun tells whether the character at i continues the line of the one before it. Characters made up by PDFium have no place.
func sameRun(chars []char, i int) bool {
	a, b := chars[i-1], chars[i]
	if a.obj == 0 || b.obj == 0 {
		return a.obj == b.obj || sameRunAcross(chars, i)
	}
	return follows(a, b)
}

// sameRunAcross looks past made-up characters.
func sameRunAcross(chars []char, i int) bool {
	before, after := i-1, i
	for before >= 0 && chars[before].obj == 0 {
		before--
	}
	for after < len(chars) && chars[after].obj == 0 {
		after++
	}
	return before < 0 || after == len(chars) || follows(chars[before], chars[after])
}

func follows(a, b char) bool {
	if a.rotation != b.rotation || a.slanted != b.slanted || a.hidden != b.hidden {
		return false
	}
	size := max(a.size, b.size)
	if a.slanted {
		return math.Hypot(a.x-b.x, a.y-b.y) < 3*size
	}
	gap, drop := b.along()-a.end(), math.Abs(b.across()-a.across())
	if unicode.IsDigit(a.r) || unicode.IsDigit(b.r) {
		// A footnote's mark is no digit of the number before it.
		if drop > sameNumber*size || min(a.size, b.size) < sameHeight*size {
			return false
		}
	}
	return gap <= lineGap*size && gap >= -backStep*size && drop <= sameLine*size
}

// appendWords splits one line at its visible gaps.
func appendWords(words []Word, line []char) []Word {
	usual := tracking(line)
	var run []char
	space := false
	for _, c := range line {
		if c.r == ' ' {
			space = space || c.obj != 0 || line[0].slanted
			continue
		}
		if len(run) > 0 && parts(run, c, usual, space) {
			words = append(words, newWord(run))
			run = run[:0]
		}
		run = append(run, c)
		space = false
	}
	if len(run) > 0 {
		words = append(words, newWord(run))
	}
	return words
}

// parts tells whether a reader sees a gap between run and b in a line whose letters usually stand usual font sizes apart.
func parts(run []char, b char, usual float64, space bool) bool {
	a := run[len(run)-1]
	if a.slanted {
		return space
	}
	limit := usual + wordGap
	switch {
	case space:
		limit = usual + spaceGap
	case decimal(a.r, b.r) && (unicode.IsDigit(a.r) || len(run) > 1 && unicode.IsDigit(run[len(run)-2].r)):
		limit = usual + numberGap
	}
	return (b.along()-a.end())/max(a.size, b.size) > limit
}

// decimal tells whether one is a digit and the other a decimal sign.
func decimal(a, b rune) bool {
	sign := func(r rune) bool { return r == '.' || r == ',' }
	return unicode.IsDigit(a) && sign(b) || sign(a) && unicode.IsDigit(b)
}

func newWord(run []char) Word {
	first := run[0]
	w := Word{Box: first.box, Baseline: first.y, Size: first.size, Rotation: first.rotation, Bold: first.bold, Colour: first.colour, Hidden: first.hidden, By: ByText}
	text := make([]rune, 0, len(run))
	w.Edges = make([]float64, 0, len(run)+1)
	for _, c := range run {
		text = append(text, c.r)
		w.Edges = append(w.Edges, c.along())
		w.Box = w.Box.Union(c.box)
	}
	w.Edges = append(w.Edges, run[len(run)-1].end())
	w.Text = string(text)
	return w
}
