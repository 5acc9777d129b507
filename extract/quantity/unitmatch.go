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
	unit  Unit
}

// bySpelling holds the spellings by their first rune (lower case), the longest first.
var bySpelling = func() map[rune][]spelling {
	m := map[rune][]spelling{}
	for unit, list := range spellings {
		for _, s := range list {
			sp := spelling{runes: newLine(s).r, unit: unit}
			letters := 0
			for _, r := range sp.runes {
				if isLetter(r) {
					letters++
				}
			}
			sp.fold = letters >= 3 && unit != KWH
			first := unicode.ToLower(sp.runes[0])
			m[first] = append(m[first], sp)
		}
	}
	for _, list := range m {
		sort.Slice(list, func(i, j int) bool {
			if len(list[i].runes) != len(list[j].runes) {
				return len(list[i].runes) > len(list[j].runes)
			}
			return string(list[i].runes)+string(list[i].unit) < string(list[j].runes)+string(list[j].unit)
		})
	}
	return m
}()

// unitAt reads the unit that begins at i (no space before it). cut tells that "%/" is all that is left of "%/℃".
func (l *line) unitAt(i int) (unit Unit, end int, cut, ok bool) {
	unit, end, ok = l.plainUnit(i)
	if !ok {
		return None, i, false, false
	}
	j, divided := l.perWord(l.skip(end))
	over, found := perDegree[unit]
	if !divided || !found {
		return unit, end, false, true
	}
	k := l.skip(j)
	if den, e, ok := l.plainUnit(k); ok {
		switch {
		case den == K || den == C || den == Degree:
			return over.kelvin, e, false, true
		case den == F && over.fahrenheit != None:
			return over.fahrenheit, e, false, true
		}
	}
	if l.at(k) == 'k' && !isLetter(l.at(k+1)) {
		return over.kelvin, k + 1, false, true
	}
	if l.at(j-1) == '/' && unit == Percent && !isLetter(l.at(k)) && !isDigit(l.at(k)) && !isSign(l.at(k)) {
		return over.kelvin, j, true, true // ℃ lost
	}
	return unit, end, false, true
}

// perWord reads a sign or word of division at i.
func (l *line) perWord(i int) (int, bool) {
	for _, w := range perWords {
		if end, ok := l.match([]rune(w), i, true); ok && (!isLetter(rune(w[0])) || !isLetter(l.at(end)) && l.at(i-1) == ' ') {
			return end, true
		}
	}
	return i, false
}

// plainUnit reads the longest spelling at i that ends where a word ends.
func (l *line) plainUnit(i int) (Unit, int, bool) {
	for _, s := range bySpelling[unicode.ToLower(l.at(i))] {
		end, ok := l.match(s.runes, i, s.fold)
		if ok && l.unitEnds(s, end) {
			return s.unit, end, true
		}
	}
	return None, i, false
}

// unitEnds reports whether a spelling may end before the rune at end.
func (l *line) unitEnds(s spelling, end int) bool {
	last, next := s.runes[len(s.runes)-1], l.at(end)
	if strings.ContainsRune("²³", next) {
		return false
	}
	if isLetter(last) && (isLetter(next) || next == '^') {
		return false
	}
	if isDigit(last) && isDigit(next) {
		return false
	}
	if s.unit == Inch && last == 'n' { // "5 in series"
		k := l.skip(end)
		r := l.at(k)
		if k > end && unicode.IsLower(r) && !(unicode.ToLower(r) == 'x' && !isLetter(l.at(k+1))) {
			return false
		}
	}
	return true
}

// match compares a pattern, in which a blank stands for any or no space, with the line at i.
func (l *line) match(pattern []rune, i int, fold bool) (int, bool) {
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

func isSign(r rune) bool { return r == '+' || r == '-' || r == '±' }
