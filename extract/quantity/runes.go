package quantity

import (
	"unicode"
	"unicode/utf8"
)

// line is a text with its look-alike characters made equal, rune by rune, so that offsets stay true.
type line struct {
	r          []rune
	start, end []int // byte offsets in the text of each rune
}

// alike lists the characters that sheets use for one sign. Full-width forms are folded before.
var alike = map[rune]string{
	'-':  "‐‑‒–—―−﹣⁻˗➖\u00ad",
	'+':  "⁺﹢",
	'~':  "∼〜˜∽≈",
	'×':  "✕✖⨯╳∗*⨉",
	'°':  "º˚⁰∘◦",
	'\'': "’‘´`′",
	'"':  "”“″„〃",
	'/':  "∕⁄",
	'%':  "﹪",
	'≥':  "≧⩾",
	'≤':  "≦⩽",
	'±':  "∓",
	'Ø':  "øφΦ∅⌀",
	'Ω':  "Ω",
	'K':  "K",
	'·':  "⋅∙",
	'²':  "?", // what character recognition makes of it; a question mark says nothing to us
}

var folded = func() map[rune]rune {
	m := map[rune]rune{}
	for to, from := range alike {
		for _, r := range from {
			m[r] = to
		}
	}
	return m
}()

func newLine(text string) *line {
	n := len(text)
	l := &line{make([]rune, 0, n), make([]int, 0, n), make([]int, 0, n)}
	for i := 0; i < n; {
		r, size := utf8.DecodeRuneInString(text[i:])
		at := i
		i += size
		switch {
		case unicode.IsSpace(r):
			r = ' '
		case r >= '！' && r <= '～':
			r -= '！' - '!' // full width
		case unicode.Is(unicode.Cf, r) && r != '\u00ad':
			continue // of no width
		}
		if f, ok := folded[r]; ok {
			r = f
		}
		l.r, l.start, l.end = append(l.r, r), append(l.start, at), append(l.end, i)
	}
	return l
}

// at is the rune at i, 0 beyond the ends.
func (l *line) at(i int) rune {
	if i < 0 || i >= len(l.r) {
		return 0
	}
	return l.r[i]
}

// skip is the first index from i on that is no space.
func (l *line) skip(i int) int {
	for l.at(i) == ' ' {
		i++
	}
	return i
}

// digits counts the digits at i.
func (l *line) digits(i int) int {
	n := 0
	for isDigit(l.at(i + n)) {
		n++
	}
	return n
}

// match compares a pattern, in which a blank stands for any or no space, with the line at i.
func (l *line) match(pattern []rune, i int, fold bool) (end int, ok bool) {
	for _, p := range pattern {
		if p == ' ' {
			i = l.skip(i)
			continue
		}
		r := l.at(i)
		if r != p && !(fold && unicode.ToLower(r) == unicode.ToLower(p)) {
			return 0, false
		}
		i++
	}
	return i, true
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isSign(r rune) bool { return r == '+' || r == '-' || r == '±' }

// isLetter is true for letters of scripts written in words: digits glued to such a letter are a name (M10). A Chinese or
// Japanese character before a number is only its neighbour.
func isLetter(r rune) bool {
	if r == '_' {
		return true
	}
	return unicode.IsLetter(r) && r != 'Ω' && r != 'º' && !unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul) && r != 'ー'
}
