package page

import (
	"math"
	"unicode"
)

const (
	hole    = '�' // stands for a glyph whose character is unknown: the hole stays visible
	dropped = 0   // no character at all

	pdfiumHyphen = 0x02 // PDFium's sign for a hyphen at the end of a line
	softHyphen   = '­'
)

// plain maps a character to the one that is seen. Some producers code every hyphen, and so the minus of "-0.29", as soft hyphen:
// when it stands in the text layer it is printed.
func plain(r rune) rune {
	if s, known := symbols[r]; known {
		return s
	}
	switch {
	case r == pdfiumHyphen || r == softHyphen:
		return '-'
	case unicode.IsSpace(r):
		return ' '
	case r == unicode.ReplacementChar || unicode.Is(unicode.Co, r) || r > unicode.MaxRune || r == 0xFFFE || r == 0xFFFF:
		return hole
	case r == 0 || unicode.IsControl(r) || unicode.Is(unicode.Cf, r):
		return dropped
	}
	return r
}

// symbols are characters of the Symbol font, which word processors code at U+F000 plus its own encoding (ISO 32000-1, annex D.5).
var symbols = map[rune]rune{
	0xF02D: '−', 0xF061: 'α', 0xF062: 'β', 0xF067: 'γ', 0xF06A: 'φ', 0xF06D: 'µ', 0xF044: 'Δ', 0xF057: 'Ω', 0xF07E: '∼', 0xF0A3: '≤',
	0xF0B0: '°', 0xF0B1: '±', 0xF0B3: '≥', 0xF0B4: '×', 0xF0B7: '•', 0xF0B8: '÷', 0xF0BB: '≈', 0xF0C6: 'Ø', 0xF0E5: '∑',
}

// splitLigatures gives each letter of a ligature its share of the glyph's box: PDFium returns "f" and "i" at the same place, some of
// them one upon the other.
func splitLigatures(chars []char) {
	for i := 0; i < len(chars); {
		n, whole := i+1, chars[i].box
		for n < len(chars) && chars[i].obj != 0 && chars[n].sharesGlyph(chars[i]) {
			whole = whole.Union(chars[n].box)
			n++
		}
		for k := i; k < n; k++ {
			chars[k].box = whole.share(chars[k].rotation, k-i, n-i)
		}
		i = n
	}
}

// sharesGlyph tells whether a letter begins and ends where another of the same text object does.
func (c char) sharesGlyph(o char) bool {
	const rounding = 0.01
	return c.obj == o.obj && unicode.IsLetter(c.r) && math.Abs(c.along()-o.along()) <= rounding && math.Abs(c.end()-o.end()) <= rounding && c.end() > c.along()
}

// share is the k-th of n equal parts of the box along the reading direction.
func (b Box) share(rotation, k, n int) Box {
	if rotation == 180 || rotation == 270 {
		k = n - 1 - k
	}
	if rotation%180 == 0 {
		w := b.W() / float64(n)
		b.X0 += w * float64(k)
		b.X1 = b.X0 + w
		return b
	}
	h := b.H() / float64(n)
	b.Y0 += h * float64(k)
	b.Y1 = b.Y0 + h
	return b
}

// samePlace is how near a character must stand to its double, in font sizes, and in its own widths: "ll" is two letters. Bold
// lettering is faked by printing text two to four times a fraction of a point apart.
const (
	samePlace      = 0.2
	samePlaceWidth = 0.4
)

// markRepetitions hides a character that stands at its like's place already.
func markRepetitions(chars []char) {
	type cell struct {
		r    rune
		x, y int
	}
	seen := map[cell][]int{}
	for i := range chars {
		c := &chars[i]
		if c.r == ' ' || c.hidden != Visible {
			continue
		}
		x, y := (c.box.X0+c.box.X1)/2, (c.box.Y0+c.box.Y1)/2
		at := func(v float64) int { return int(math.Floor(v / (2 * c.size))) }
		reach := min(samePlace*c.size, samePlaceWidth*(c.end()-c.along()))
		for cx := at(x - reach); cx <= at(x+reach) && c.hidden == Visible; cx++ {
			for cy := at(y - reach); cy <= at(y+reach); cy++ {
				for _, k := range seen[cell{c.r, cx, cy}] {
					o := chars[k].box
					if math.Abs((o.X0+o.X1)/2-x) <= reach && math.Abs((o.Y0+o.Y1)/2-y) <= reach {
						c.hidden = Repetition
					}
				}
			}
		}
		if c.hidden == Visible {
			k := cell{c.r, at(x), at(y)}
			seen[k] = append(seen[k], i)
		}
	}
}
