package label

import (
	"maps"
	"sort"
	"unicode"
	"unicode/utf8"
)

// Match is one phrase of the lexicon found in a text.
type Match struct {
	Start, End int      // byte offsets in the text
	Atoms      []string // what the phrase may mean; several where languages or fields share it
	Langs      []string // languages that know it so; empty for symbols
	Length     int      // letters matched: the measure of how telling the phrase is
}

// Found is a text seen with the lexicon's eyes.
type Found struct {
	Text    string
	Matches []Match
	Letters int // letters and digits in the text
	Known   int // of these, in a match
	atoms   map[string]bool
}

const (
	inWordFrom = 7 // letters from which a phrase may begin or end inside a word ("Modulwirkungsgrad"); shorter ones need a word of their own
	endsFrom   = 4 // letters from which a phrase may end inside a word ("weights")
)

// untaught are scripts of which the lexicon knows no or few words: in a label of two languages they do not count against what is known
// of the other.
var untaught = []*unicode.RangeTable{unicode.Arabic, unicode.Cyrillic, unicode.Devanagari, unicode.Hangul, unicode.Hebrew, unicode.Thai}

// Find reads a text left to right, the longest phrase first at each place.
func Find(text string) Found {
	s := squeeze(text)
	f := Found{Text: text, atoms: map[string]bool{}}
	for i := 0; i < len(s.runes); {
		m, n := longest(s, i)
		if n == 0 {
			if !unicode.In(s.runes[i], untaught...) {
				f.Letters++
			}
			i++
			continue
		}
		f.Letters += n
		f.Matches = append(f.Matches, m)
		f.Known += n
		for _, a := range m.Atoms {
			f.atoms[a] = true
		}
		i += n
	}
	return f
}

// longest is the longest phrase that begins at rune i: the range of phrases that begin with the letters so far narrows with every letter.
func longest(s squeezed, i int) (Match, int) {
	var best Match
	length := 0
	l := words()
	depth := 0
	lo, hi := 0, len(l.phrases)
	for j := i; j < len(s.runes); j++ {
		var buf [utf8.UTFMax]byte
		for _, b := range buf[:utf8.EncodeRune(buf[:], s.runes[j])] {
			lo, hi = l.narrow(lo, hi, depth, b)
			depth++
		}
		if lo >= hi {
			break
		}
		if len(l.phrases[lo].letters) != depth {
			continue
		}
		n := j - i + 1
		atEnd := j+1 == len(s.runes)
		var m Match
		l.phrases[lo].meanings(func(e entry) {
			if !fits(s, i, j, n, atEnd, e.whole) || e.lost && !s.start[i] {
				return
			}
			m.Atoms = addOnce(m.Atoms, e.atom)
			if e.lang != "" {
				m.Langs = addOnce(m.Langs, e.lang)
			}
		})
		if m.Atoms != nil {
			m.Start, m.End, m.Length = s.from[i], s.to[j], n
			best, length = m, n
		}
	}
	return best, length
}

// narrow keeps of phrases[lo:hi], which agree in their first depth bytes, those with byte b next.
func (l *lexicon) narrow(lo, hi, depth int, b byte) (int, int) {
	if depth == 0 {
		return int(l.first[b][0]), int(l.first[b][1])
	}
	part := l.phrases[lo:hi]
	at := func(k int) int {
		if len(part[k].letters) <= depth {
			return -1
		}
		return int(part[k].letters[depth])
	}
	from := sort.Search(len(part), func(k int) bool { return at(k) >= int(b) })
	to := from + sort.Search(len(part)-from, func(k int) bool { return at(from+k) > int(b) })
	return lo + from, lo + to
}

// fits says whether a phrase of n letters from rune i to rune j stands there as words of its own.
func fits(s squeezed, i, j, n int, atEnd, whole bool) bool {
	if whole {
		return s.piece[i] && (atEnd || s.piece[j+1])
	}
	if ideograph(s.runes[i]) {
		return true
	}
	begins := s.start[i] || n >= inWordFrom
	ends := atEnd || s.start[j+1] || n >= endsFrom && unicode.IsLetter(s.runes[j])
	if n < inWordFrom && n >= endsFrom && !atEnd && !s.start[j+1] {
		// A short word may take an ending, not become another word: "cells" yes, "cellulose" no.
		ends = endingLength(s, j+1) <= 2
	}
	return begins && ends
}

// endingLength counts the letters from rune k to the end of its word.
func endingLength(s squeezed, k int) int {
	n := 0
	for ; k < len(s.runes) && !s.start[k]; k++ {
		n++
	}
	return n
}

func addOnce(list []string, v string) []string {
	for _, x := range list {
		if x == v {
			return list
		}
	}
	return append(list, v)
}

// Has reports whether the text speaks of the atom.
func (f Found) Has(atom string) bool { return f.atoms[atom] }

// Any reports whether the text speaks of one of the atoms.
func (f Found) Any(atoms ...string) bool {
	for _, a := range atoms {
		if f.atoms[a] {
			return true
		}
	}
	return false
}

// With is what the text speaks of with one more atom, which its surroundings tell.
func (f Found) With(atom string) Found {
	f.atoms = maps.Clone(f.atoms)
	f.atoms[atom] = true
	return f
}

// Share is how much of the text the lexicon knows, 0 to 1: a label is mostly known words, a sentence is not.
func (f Found) Share() float64 {
	if f.Letters == 0 {
		return 0
	}
	return float64(f.Known) / float64(f.Letters)
}
