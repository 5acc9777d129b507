package quantity

import "unicode"

// line is a text with its look-alike characters made equal, rune by rune, so that offsets stay true.
type line struct {
	r          []rune
	start, end []int // byte offsets in the text of each rune
}

// alike lists the characters that sheets use for one sign.
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
	':':  "：",
}

var foldRune = func() map[rune]rune {
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
	for i, r := range text {
		size := len(string(r))
		if r == unicode.ReplacementChar {
			size = 1
			if len(text)-i >= 3 && text[i:i+3] == "\uFFFD" {
				size = 3
			}
		}
		switch {
		case unicode.IsSpace(r):
			r = ' '
		case r >= 0xFF01 && r <= 0xFF5E:
			r -= 0xFEE0
		case r == '\u200b' || r == '\u200c' || r == '\u200d' || r == '\ufeff' || r == '\u2060':
			continue // of no width
		}
		if f, ok := foldRune[r]; ok {
			r = f
		}
		l.r, l.start, l.end = append(l.r, r), append(l.start, i), append(l.end, i+size)
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

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// isLetter is true for letters of scripts written in words: digits glued to such a letter are a name (M10). A Chinese or
// Japanese character before a number is only its neighbour.
func isLetter(r rune) bool {
	return unicode.IsLetter(r) && (r < 0x2E80 || r >= 0xF900 && !unicode.Is(unicode.Han, r)) && r != '°' && r != 'Ω' || r == '_'
}
