package quantity

import (
	"sort"
	"strings"
	"unicode"
)

// spelling is one entry of the table of units, ready to be matched.
type spelling struct {
	runes []rune
	fold  bool // matches in any case
	cut   bool
	unit  Unit
}

// bySpelling holds the spellings by their first rune (lower case), the longest first.
var bySpelling = func() map[rune][]spelling {
	m := map[rune][]spelling{}
	add := func(table map[Unit][]string, cut bool) {
		for unit, list := range table {
			for _, s := range list {
				sp := spelling{runes: newLine(s).r, cut: cut, unit: unit}
				letters := 0
				for _, r := range sp.runes {
					if unicode.IsLetter(r) {
						letters++
					}
				}
				sp.fold = letters >= 3
				first := unicode.ToLower(sp.runes[0])
				m[first] = append(m[first], sp)
			}
		}
	}
	add(spellings, false)
	add(cutSpellings, true)
	for _, list := range m {
		sort.Slice(list, func(i, j int) bool {
			if len(list[i].runes) != len(list[j].runes) {
				return len(list[i].runes) > len(list[j].runes)
			}
			return string(list[i].runes) < string(list[j].runes)
		})
	}
	return m
}()

// printed is a unit as it stands in a line.
type printed struct {
	unit Unit
	cut  bool
	end  int // index of the rune after it
}

// unitAt reads the unit that begins at i, a quotient with a temperature included; no space before it.
func (l *line) unitAt(i int) (printed, bool) {
	p, ok := l.plainUnit(i)
	if !ok {
		return printed{}, false
	}
	over, found := perDegree[p.unit]
	j, divided := l.division(l.skip(p.end))
	if !found || !divided {
		return p, true
	}
	k := l.skip(j)
	if den, ok := l.plainUnit(k); ok {
		switch {
		case den.unit == K || den.unit == C || den.unit == Degree:
			return printed{over.kelvin, false, den.end}, true
		case den.unit == F && over.fahrenheit != None:
			return printed{over.fahrenheit, false, den.end}, true
		}
	}
	next := l.at(k)
	if next == 'k' && !isLetter(l.at(k+1)) {
		return printed{over.kelvin, false, k + 1}, true
	}
	if p.unit == Percent && l.at(p.end) == '/' && (next == 0 || strings.ContainsRune(")],;", next)) {
		return printed{over.kelvin, true, j}, true // "%/" of "%/℃"
	}
	return p, true
}

// division reads a sign or word of division at i.
func (l *line) division(i int) (end int, ok bool) {
	for _, w := range perWords {
		end, ok := l.match([]rune(w), i, true)
		if ok && (w == "/" || l.at(i-1) == ' ' && l.at(end) == ' ') {
			return end, true
		}
	}
	return i, false
}

// plainUnit reads the longest spelling at i that ends where a word ends.
func (l *line) plainUnit(i int) (printed, bool) {
	for _, s := range bySpelling[unicode.ToLower(l.at(i))] {
		if end, ok := l.match(s.runes, i, s.fold); ok && l.unitEnds(s, end) {
			return printed{s.unit, s.cut, end}, true
		}
	}
	return printed{}, false
}

// unitEnds reports whether a spelling may end before the rune at end.
func (l *line) unitEnds(s spelling, end int) bool {
	last, next := s.runes[len(s.runes)-1], l.at(end)
	switch {
	case next == '²' || next == '³' || next == 'Ω':
		return false
	case isLetter(last) && (isLetter(next) && !l.timesAt(end) || next == '^'):
		return false
	case isDigit(last) && (isDigit(next) || l.at(end-2) == ' ' && l.timesAt(l.skip(end))): // "0.9 m 2 x 1.2 m"
		return false
	case s.unit == Inch && last == 'n': // "5 in series"
		k := l.skip(end)
		r := l.at(k)
		return k == end || !unicode.IsLower(r) || r == 'x' && !isLetter(l.at(k+1))
	}
	return true
}
