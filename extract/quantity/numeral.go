package quantity

import (
	"strconv"
	"strings"
)

// maxDigits bounds a number's digits: longer runs are serial or telephone numbers.
const maxDigits = 12

// numeral is a number as printed, before its unit helps to read its separators.
type numeral struct {
	literal, other string // other: the second reading, when a lone separator stands before three digits
	otherIsWhole   bool   // which of the two readings has thousands
	exponent       string // "e-3" for "× 10^-3"
}

// numeralAt reads the number that begins at i; ok is false for dates, versions and runs of digits too long to be a number.
// end is where the run ends in either case.
func (l *line) numeralAt(i int) (n numeral, end int, ok bool) {
	var groups []string
	var seps []rune
	if l.at(i) == '.' || l.at(i) == ',' {
		groups, seps = append(groups, "0"), append(seps, '.')
		i++
	}
	for {
		j := i
		for isDigit(l.at(j)) {
			j++
		}
		groups = append(groups, string(l.r[i:j]))
		end = j
		sep := l.at(j)
		if next := l.gap(j, groups, seps); next > 0 {
			sep, i = ' ', next
			if c := l.at(j); c == '.' || c == ',' || l.at(next-1) == '.' || l.at(next-1) == ',' {
				sep = '.'
			}
			seps = append(seps, sep)
			continue
		}
		if (sep != '.' && sep != ',' && sep != '\'') || !isDigit(l.at(j+1)) {
			break
		}
		if sep == ',' && len(groups) == 1 && len(groups[0]) >= 4 && l.digits(j+1) >= 3 {
			break // "1000,1500": a list
		}
		if sep == '\'' && l.digits(j+1) != 3 {
			break // 5'8"
		}
		seps = append(seps, sep)
		i = j + 1
	}
	n, ok = readGroups(groups, seps)
	return n, end, ok
}

func (l *line) digits(i int) int {
	n := 0
	for isDigit(l.at(i + n)) {
		n++
	}
	return n
}

// gap finds a space inside a number: "18. 3kg", "0 .27", "1 722 mm". It returns where the digits go on, or 0.
func (l *line) gap(j int, groups []string, seps []rune) int {
	if len(groups) > 2 || len(seps) > 0 && seps[len(seps)-1] != ' ' {
		return 0
	}
	switch c := l.at(j); {
	case (c == '.' || c == ',') && l.at(j+1) == ' ' && isDigit(l.at(j+2)):
		k := j + 2 + l.digits(j+2)
		u, _, _, ok := l.unitAt(l.skip(k))
		if c == '.' && ok && k-j-2 <= 2 && fractional[u] && !isDigit(l.at(k)) && l.at(k) != '.' {
			return j + 2
		}
	case c == ' ' && (l.at(j+1) == '.' || l.at(j+1) == ',') && isDigit(l.at(j+2)) && !isDigit(l.at(j-2)):
		return j + 2
	case c == ' ' && len(groups[0]) <= 2 && groups[0][0] != '0' && l.digits(j+1) == 3:
		k := j + 4
		u, _, _, ok := l.unitAt(l.skip(k))
		whole, _ := strconv.ParseFloat(groups[0]+string(l.r[j+1:j+4]), 64)
		size := sizes[u]
		if ok && whole >= size.whole[0] && whole <= size.whole[1] {
			return j + 1
		}
		if m := l.skip(k); l.at(m) == '×' && whole >= sizes[MM].whole[0] && whole <= 3000 {
			return j + 1
		}
	}
	return 0
}

// fractional are the units whose values sheets print with decimals: only before these a space after a point is a slip.
var fractional = map[Unit]bool{V: true, A: true, W: true, KG: true, Pound: true, Percent: true, PctPerK: true, VPerK: true, APerK: true, MM2: true, Inch: true, M: true, M2: true}

// readGroups decides what the separators between groups of digits are.
func readGroups(groups []string, seps []rune) (numeral, bool) {
	total := 0
	for _, g := range groups {
		total += len(g)
	}
	if total > maxDigits {
		return numeral{}, false
	}
	last := len(seps) - 1
	if last < 0 {
		return numeral{literal: plain(groups[0], "")}, true
	}
	thousands := func(n int) bool { // groups 1..n hold three digits each
		if len(groups[0]) > 3 || groups[0][0] == '0' {
			return false
		}
		for _, g := range groups[1 : n+1] {
			if len(g) != 3 {
				return false
			}
		}
		return true
	}
	same := true
	for _, s := range seps[:max(last, 0)] {
		same = same && s == seps[0]
	}
	whole := strings.Join(groups, "")
	switch {
	case last == 0 && (seps[0] == '\'' || seps[0] == ' '):
		return numeral{literal: plain(whole, "")}, thousands(1)
	case last == 0 && thousands(1):
		d := plain(groups[0], groups[1])
		if seps[0] == ',' {
			return numeral{literal: plain(whole, ""), other: d}, true
		}
		return numeral{literal: d, other: plain(whole, ""), otherIsWhole: true}, true
	case last == 0:
		return numeral{literal: plain(groups[0], groups[1])}, true
	case same && seps[last] == seps[0]:
		return numeral{literal: plain(whole, "")}, thousands(last + 1)
	case same && seps[last] != '\'' && seps[last] != ' ' && thousands(last):
		return numeral{literal: plain(strings.Join(groups[:last+1], ""), groups[last+1])}, true
	}
	return numeral{}, false
}

// plain writes a JSON number from digits.
func plain(whole, frac string) string {
	whole = strings.TrimLeft(whole, "0")
	if whole == "" {
		whole = "0"
	}
	if frac == "" {
		return whole
	}
	return whole + "." + frac
}

// settle picks the reading that the unit and the customary sizes leave, or says that both stand.
func (n numeral) settle(u Unit) (literal, other string) {
	if n.other == "" {
		return n.literal + n.exponent, ""
	}
	whole, decimal := n.literal, n.other
	if n.otherIsWhole {
		whole, decimal = decimal, whole
	}
	size := sizes[u]
	w, _ := strconv.ParseFloat(whole, 64)
	d, _ := strconv.ParseFloat(decimal, 64)
	fitsWhole := w >= size.whole[0] && w <= size.whole[1]
	fitsDecimal := d >= size.decimal[0] && d <= size.decimal[1]
	switch {
	case fitsWhole && !fitsDecimal:
		return whole, ""
	case fitsDecimal && !fitsWhole:
		return decimal, ""
	}
	return n.literal, n.other
}
