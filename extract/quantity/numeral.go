package quantity

import (
	"slices"
	"strings"
)

// maxWhole bounds the digits before the point, maxDigits all of them: longer runs are serial numbers.
const (
	maxWhole  = 7
	maxDigits = 12
)

// numeral is a number as printed, before its unit helps to read its separators.
type numeral struct {
	literal, other string // other is the second reading, where a lone separator stands before three digits
	exponent       string // "e-3" of "× 10^-3"
}

// in is the numeral read with its unit.
func (n numeral) in(u Unit) (literal, other string) {
	literal, other = settle(n.literal, n.other, u)
	literal += n.exponent
	if other != "" {
		other += n.exponent
	}
	return literal, other
}

// numeralAt reads the number that begins at i. ok is false for versions, dates and runs of digits too long to be a number;
// end is where the run ends in either case.
func (l *line) numeralAt(i int) (n numeral, end int, ok bool) {
	var groups []string
	var seps []rune
	if l.at(i) == '.' { // ".27"
		groups, seps = append(groups, "0"), append(seps, '.')
		i++
	}
	for {
		end = i + l.digits(i)
		groups = append(groups, string(l.r[i:end]))
		if sep, next := l.gap(end, groups, seps); next > 0 {
			seps, i = append(seps, sep), next
			continue
		}
		if !l.separates(end, groups) {
			break
		}
		seps = append(seps, l.at(end))
		i = end + 1
	}
	n, ok = readGroups(groups, seps)
	return n, end, ok
}

// separates reports whether the rune at j goes on with a number whose groups so far are given.
func (l *line) separates(j int, groups []string) bool {
	n := l.digits(j + 1)
	switch l.at(j) {
	case '.':
		return n > 0
	case ',':
		return n > 0 && !(len(groups) == 1 && len(groups[0]) > 3 && n >= 3) // "1000,1500" is a list
	case '\'':
		return n == 3 // not 5'8"
	}
	return false
}

// gap finds a space inside a number ("18. 3kg", "0 .27", "1 722 mm") whose digits so far end at j. It returns the separator
// that stands there and where the digits go on, or 0.
func (l *line) gap(j int, groups []string, seps []rune) (rune, int) {
	if len(seps) > 0 {
		return 0, 0
	}
	first, c := groups[0], l.at(j)
	switch {
	case (c == '.' || c == ',') && l.at(j+1) == ' ' && isDigit(l.at(j+2)):
		n := l.digits(j + 2)
		p, ok := l.unitAt(l.skip(j + 2 + n))
		item := j == 1 && n > 1 // "2. 40 mm frame" is the second of a list
		if c == '.' && n <= 3 && l.at(j+2+n) != '.' && (first == "0" || ok && n <= 2 && fractional[p.unit] && !item) {
			return '.', j + 2
		}
	case c == ' ' && (l.at(j+1) == '.' || l.at(j+1) == ',') && len(first) <= 2:
		if n := l.digits(j + 2); n > 0 && n <= 3 {
			return '.', j + 2
		}
	case c == ' ' && len(first) <= 2 && first[0] != '0' && l.digits(j+1) == 3:
		k := l.skip(j + 4)
		p, ok := l.unitAt(k)
		whole := value(first + string(l.r[j+1:j+4]))
		if ok && sizes[p.unit].thousands.holds(whole) || !ok && l.timesAt(k) && whole <= 3000 {
			return ' ', j + 1
		}
	}
	return 0, 0
}

// timesAt reports whether a factor follows at i.
func (l *line) timesAt(i int) bool {
	r := l.at(i)
	return r == '×' || (r == 'x' || r == 'X') && isDigit(l.at(l.skip(i+1)))
}

// readGroups decides what the separators between groups of digits are.
func readGroups(groups []string, seps []rune) (numeral, bool) {
	last := len(seps) - 1
	if last < 0 {
		n, ok := whole(groups...)
		return n, ok && !(len(groups[0]) > 2 && groups[0][0] == '0') // a postcode, or 0.050 whose point is lost
	}
	same := true // the separators before the last are one sign
	for _, s := range seps[:last] {
		same = same && s == seps[0]
	}
	switch sep := seps[last]; {
	case !same:
		return numeral{}, false
	case last == 0 && (sep == '\'' || sep == ' ') || last > 0 && sep == seps[0]:
		n, ok := whole(groups...)
		return n, ok && threes(groups)
	case last == 0 && threes(groups):
		d, _ := decimal(groups)
		w, ok := whole(groups...)
		if sep == ',' {
			return numeral{literal: w.literal, other: d.literal}, ok
		}
		return numeral{literal: d.literal, other: w.literal}, ok
	case last == 0:
		return decimal(groups)
	case sep == '\'' || sep == ' ' || !threes(groups[:last+1]):
		return numeral{}, false
	}
	return decimal(groups)
}

// threes reports whether groups of digits are the thousands of one number.
func threes(groups []string) bool {
	if len(groups[0]) > 3 || groups[0] == "" || groups[0][0] == '0' {
		return false
	}
	for _, g := range groups[1:] {
		if len(g) != 3 {
			return false
		}
	}
	return true
}

// whole writes a JSON number without decimals.
func whole(groups ...string) (numeral, bool) {
	digits := strings.TrimLeft(strings.Join(groups, ""), "0")
	if digits == "" {
		digits = "0"
	}
	return numeral{literal: digits}, len(digits) <= maxWhole
}

// decimal writes a JSON number whose last group stands behind the point.
func decimal(groups []string) (numeral, bool) {
	n, ok := whole(groups[:len(groups)-1]...)
	frac := groups[len(groups)-1]
	n.literal += "." + frac
	return n, ok && len(n.literal) <= maxDigits
}

// superscripts are the digits of an exponent, nought folded to the degree sign.
var superscripts = []rune("°¹²³⁴⁵⁶⁷⁸⁹")

// exponentAt reads a power of ten at i: "× 10^-3", "x10-4", "×10³", "E-3".
func (l *line) exponentAt(i int) (end int, exponent string, ok bool) {
	k, hat := i+1, false
	if r := l.at(i); r != 'E' && r != 'e' {
		k = l.skip(i)
		if r := l.at(k); r != '×' && r != 'x' && r != '·' {
			return 0, "", false
		}
		if k = l.skip(k + 1); l.at(k) != '1' || l.at(k+1) != '0' {
			return 0, "", false
		}
		if k += 2; l.at(k) == '^' {
			k, hat = l.skip(k+1), true
		}
	}
	minus := ""
	if l.at(k) == '-' {
		k, minus = k+1, "-"
	}
	digit := l.at(k)
	if n := slices.Index(superscripts, digit); n > 0 {
		digit, hat = rune('0'+n), true
	}
	if !isDigit(digit) || digit == '0' || minus == "" && !hat || isDigit(l.at(k+1)) || l.at(k+1) == '.' {
		return 0, "", false
	}
	return k + 1, "e" + minus + string(digit), true
}
