package quantity

import (
	"strings"
	"unicode"
)

// nameToken reads a word at i; digits and dashes glued to it are part of it, and so is the number of a standard or a class.
func (l *line) nameToken(i int) token {
	j := i
	for isLetter(l.at(j)) || (l.at(j) == '.' || l.at(j) == '/') && isLetter(l.at(j-1)) && isLetter(l.at(j+1)) {
		j++
	}
	word, k := string(l.r[i:j]), j
	if l.at(k) == '.' {
		word, k = word+".", k+1
	}
	switch r := wordRole(word); r {
	case telephone:
		if end, digits := l.telephone(k); digits >= 5 {
			return token{kind: kWord, j: end}
		}
	case standard, rank:
		if end, ok := l.designation(k, r); ok {
			return token{kind: kWord, j: end}
		}
	}
	if isDigit(l.at(k)) && l.touches(strings.TrimSuffix(word, "."), k) {
		return token{kind: kWord, j: k}
	}
	return token{kind: kWord, j: l.nameEnd(j)}
}

// touches reports whether the number at k only touches the word before it and is no part of a name.
func (l *line) touches(word string, k int) bool {
	if wordRole(word) == prefix {
		return true
	}
	_, end, ok := l.numeralAt(k)
	if !ok {
		return false
	}
	after := l.skip(end)
	p, unit := l.unitAt(after)
	if strings.Contains("LWHDBT", word) && end-k >= 2 { // L1722×W1134×H30 mm
		return l.timesAt(after) || unit && p.unit == MM
	}
	lower := 0 // "Voltage1500 VDC": a label whose value has lost its space
	for _, r := range word {
		if lower++; !unicode.IsLower(r) {
			lower = 0
		}
	}
	return unit && (lower >= 3 || lower == 2 && end-k >= 2)
}

// nameEnd is where a name such as "KR-HC108-405" ends that begins at i. A signed number with the unit of a coefficient or a
// temperature is left standing: in "Pmax-0.35%/K" the name is Pmax.
func (l *line) nameEnd(i int) int {
	for ; ; i++ {
		switch r := l.at(i); {
		case isLetter(r) || isDigit(r):
		case (r == '.' || r == '/') && isDigit(l.at(i+1)) && isDigit(l.at(i-1)):
		case r == '-' && isLetter(l.at(i+1)):
		case r == '-' && isDigit(l.at(i+1)):
			if _, end, ok := l.numeralAt(i + 1); ok {
				if p, ok := l.unitAt(l.skip(end)); ok && p.unit.signed() {
					return i
				}
			}
		default:
			return i
		}
	}
}

// designation is where a standard's or a class's number ends: "61215-1:2021", "9001: 2015", "61730-1/-2", "2". A number with a
// unit is none, nor is a standard's one of full hundreds ("IEC 1500") or a rank one of three digits ("Power class 405").
func (l *line) designation(i int, r role) (end int, ok bool) {
	k := l.skip(i)
	for r := l.at(k); r == '=' || r == ':'; r = l.at(k) {
		k = l.skip(k + 1)
	}
	n := l.digits(k)
	hundreds := (n == 3 || n == 4) && string(l.r[k+n-2:k+n]) == "00"
	if n == 0 || hundreds || r == rank && n > 2 {
		return 0, false
	}
	end = k + n
	for {
		j := end
		switch r := l.at(j); {
		case (r == ':' || r == '/') && l.at(j+1) == '-':
			j += 2
		case r == ':' || r == '-' || r == '/' || r == '.' || r == ',':
			j++
		}
		if j > end && l.at(j-1) == ':' && l.digits(l.skip(j)) == 4 {
			j = l.skip(j)
		}
		if j == end || !isDigit(l.at(j)) {
			break
		}
		end = j + l.digits(j)
	}
	_, unit := l.unitAt(l.skip(end))
	return l.nameEnd(end), !unit
}

// maxTelephone bounds the characters of a telephone number.
const maxTelephone = 32

// telephone is where a telephone number ends that begins at i, and how many digits it has: none where its groups are all of
// one length, as values in a row are.
func (l *line) telephone(i int) (end, digits int) {
	var groups []int
	end = i
	for j := i; j-end < 4 && j-i < maxTelephone; {
		switch r := l.at(j); {
		case isDigit(r):
			groups = append(groups, l.digits(j))
			digits += l.digits(j)
			j += l.digits(j)
			end = j
		case r != 0 && strings.ContainsRune(" -/():+", r):
			j++
		default:
			j = end + 4
		}
	}
	for k, n := range groups {
		if k > 1 && n != groups[1] {
			return end, digits
		}
	}
	if len(groups) > 2 {
		return end, 0
	}
	return end, digits
}

// rightName is where a run ends that begins with the number i..end and is none after all: a name ("144HC10"), a rank ("2nd"),
// a date or a telephone number; 0 if it is none of these.
func (l *line) rightName(i, end int) int {
	j := end
	for isLetter(l.at(j)) {
		j++
	}
	if ordinals[strings.ToLower(string(l.r[end:j]))] {
		return j
	}
	if j > end && isDigit(l.at(j)) && l.at(end) != 'x' && l.at(end) != 'X' {
		if _, ok := l.unitAt(end); !ok {
			return l.nameEnd(i)
		}
	}
	return l.date(i, end)
}

// date is where a date or a telephone number ends whose first group is the number i..end, or 0.
func (l *line) date(i, end int) int {
	sep := l.at(end)
	if sep != '-' && sep != '/' {
		return 0
	}
	groups := []int{end - i}
	k := end
	for l.at(k) == sep && isDigit(l.at(k+1)) && len(groups) < 8 {
		groups = append(groups, l.digits(k+1))
		k += 1 + groups[len(groups)-1]
	}
	if _, ok := l.unitAt(l.skip(k)); ok || isLetter(l.at(k)) || l.timesAt(l.skip(k)) {
		return 0
	}
	year := func(at int) bool { s := string(l.r[at : at+4]); return s >= "1990" && s <= "2099" }
	switch len(groups) {
	case 1:
		return 0
	case 2:
		yearFirst := groups[0] == 4 && groups[1] == 2 && year(i) && value(string(l.r[end+1:k])) <= 12
		yearLast := groups[0] <= 2 && groups[1] == 4 && year(end+1) && value(string(l.r[i:end])) <= 12
		if yearFirst || yearLast {
			return k
		}
		return 0
	}
	short := groups[0] <= 2 && groups[1] <= 2 && (groups[2] == 2 || groups[2] == 4)
	if sep == '-' || len(groups) == 3 && (short && sep == '/' && groups[2] == 4 || groups[0] == 4 && year(i) && groups[1] <= 2) {
		return k
	}
	return 0
}
