package label

import (
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// squeezed is a label without case, accents, punctuation and spaces, each rune knowing where it came from.
type squeezed struct {
	runes []rune
	from  []int  // byte offset in the original text
	to    []int  // byte offset behind the original rune
	start []bool // the rune begins a word: what stands before it was a space, punctuation, a change between letters and digits or of script
	piece []bool // the rune begins a piece: what stands before it was a bracket, a separator, or nothing
}

// squeeze folds text for matching. CJK runes each begin a word: those scripts put no spaces.
func squeeze(text string) squeezed {
	var s squeezed
	newWord, newPiece := true, true
	var last rune
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		folded := fold(r, text[at:at+size])
		kept := false
		for _, f := range folded {
			if !unicode.IsLetter(f) && !unicode.IsDigit(f) {
				continue
			}
			begins := newWord || unicode.IsDigit(f) != unicode.IsDigit(last) || ideograph(f) || ideograph(last) || greek(f) != greek(last)
			s.runes = append(s.runes, f)
			s.from = append(s.from, at)
			s.to = append(s.to, at+size)
			s.start = append(s.start, begins)
			s.piece = append(s.piece, newPiece)
			newWord, newPiece, kept, last = false, false, true, f
		}
		if !kept && !unicode.Is(unicode.Mn, r) && r != '\u00ad' {
			newWord = true
			newPiece = newPiece || separator(r) || r == '-' && spaced(text, at, at+size)
		}
		at += size
	}
	return s
}

// fold lowers one rune to its plain letters: compatibility forms apart, accents off.
func fold(r rune, one string) []rune {
	if r < utf8.RuneSelf {
		return asciiLower[r]
	}
	var out []rune
	for _, r := range norm.NFKD.String(one) {
		if unicode.Is(unicode.Mn, r) {
			continue
		}
		switch r = unicode.ToLower(r); r {
		case 'ß':
			out = append(out, 's', 's')
		case 'ı':
			out = append(out, 'i')
		case 'ł':
			out = append(out, 'l')
		case 'ø':
			out = append(out, 'o')
		case 'æ':
			out = append(out, 'a', 'e')
		case 'œ':
			out = append(out, 'o', 'e')
		default:
			out = append(out, r)
		}
	}
	return out
}

// separator tells what parts a label into pieces: brackets, slashes, dashes with a life of their own, colons, wide gaps.
func separator(r rune) bool {
	switch r {
	case '(', ')', '[', ']', '{', '}', '（', '）', '【', '】', '/', '|', ':', '：', ';', ',', '，', '、', '\t', '\n', '–', '—', '=', '*', '•', '・', '@', '&', '+':
		return true
	}
	return false
}

func greek(r rune) bool { return r >= 0x0370 && r <= 0x03FF }

// spaced: a hyphen with a space beside it parts; one inside a word ("Multi-Contact") does not.
func spaced(text string, from, to int) bool {
	return from > 0 && text[from-1] == ' ' || to < len(text) && text[to] == ' '
}

func ideograph(r rune) bool {
	return r >= 0x2E80 && (unicode.Is(unicode.Han, r) || unicode.Is(unicode.Hiragana, r) || unicode.Is(unicode.Katakana, r))
}

// asciiLower spares the plain letters the tables of Unicode.
var asciiLower = func() (t [utf8.RuneSelf][]rune) {
	for r := range t {
		t[r] = []rune{unicode.ToLower(rune(r))}
	}
	return t
}()
