package quantity

import (
	"strings"
	"unicode"
)

type kind uint8

const (
	kWord kind = iota // a word, a name, any other sign: nothing a quantity is made of
	kNumber
	kUnit
	kSign  // + or -
	kPM    // ±
	kTimes // ×
	kSlash
	kTilde // ~, …, "to"
	kComma
	kAnd
	kOpen
	kClose
	kBound
)

// token is a piece of a line that the parser looks at.
type token struct {
	kind  kind
	i, j  int  // rune indexes
	gap   bool // a space stands before it
	rune  rune // of a sign
	num   numeral
	unit  Unit
	cut   bool
	bound Bound
}

// lex cuts a line into tokens.
func (l *line) lex() []token {
	var out []token
	numbers := 0
	for i := 0; i < len(l.r) && numbers < MaxTerms; {
		j := l.skip(i)
		if j >= len(l.r) {
			break
		}
		t := l.token(j, out)
		t.i, t.gap = j, j > i || i == 0
		if t.kind == kNumber {
			numbers++
		}
		out = append(out, t)
		i = max(t.j, j+1)
	}
	return out
}

// token reads one token at i.
func (l *line) token(i int, before []token) token {
	var prev token
	if len(before) > 0 {
		prev = before[len(before)-1]
	}
	r := l.at(i)
	if prev.kind == kNumber || prev.kind == kClose || prev.kind == kOpen && len(before) > 1 && before[len(before)-2].kind == kNumber {
		if t, ok := l.unitToken(i, prev); ok {
			return t
		}
	}
	if isDigit(r) || (r == '.' || r == ',') && isDigit(l.at(i+1)) && prev.j != i {
		return l.numberToken(i)
	}
	if t, ok := l.signToken(i, r); ok {
		return t
	}
	after := prev.kind == kNumber || prev.kind == kUnit || prev.kind == kClose
	if (r == 'x' || r == 'X' || r == 'х' || r == 'Х') && after && l.factorAt(l.skip(i+1)) {
		return token{kind: kTimes, j: i + 1}
	}
	if t, ok := l.wordToken(i, after); ok {
		return t
	}
	if isLetter(r) {
		return l.nameToken(i)
	}
	return token{kind: kWord, j: i + 1}
}

func (l *line) unitToken(i int, prev token) (token, bool) {
	k := i
	if l.at(k) == '-' && isLetter(l.at(k+1)) && prev.kind == kNumber && prev.j == i {
		k++ // 25-year
	}
	u, end, cut, ok := l.unitAt(k)
	if !ok || k > i && u != Year && u != Foot && u != Inch && u != Piece {
		return token{}, false
	}
	if isDigit(l.at(end)) && isLetter(l.at(end-1)) && !l.neighbourAt(end, prev) {
		return token{}, false
	}
	if u == MM2 && l.at(end-2) == ' ' && len(prev.num.literal) > 3 { // "1200 mm 2 ..."
		return token{kind: kUnit, unit: MM, j: end - 2}, true
	}
	return token{kind: kUnit, unit: u, cut: cut, j: end}, true
}

// neighbourAt reports whether digits glued to a unit are the next cell ("10.52 A10.61 A"): a number of the same decimals.
func (l *line) neighbourAt(i int, prev token) bool {
	n, _, ok := l.numeralAt(i)
	return ok && decimals(n.literal) == decimals(prev.num.literal)
}

func decimals(literal string) int {
	_, frac, _ := strings.Cut(literal, ".")
	return len(frac)
}

func (l *line) numberToken(i int) token {
	n, end, ok := l.numeralAt(i)
	if !ok {
		return token{kind: kWord, j: end}
	}
	if e, exp, ok := l.exponentAt(end); ok {
		n.exponent, end = exp, e
	}
	if name := l.rightName(i, end); name > end {
		return token{kind: kWord, j: name}
	}
	return token{kind: kNumber, num: n, j: end}
}

// exponentAt reads "× 10^-3", "x10-4", "E-3".
func (l *line) exponentAt(i int) (int, string, bool) {
	k := l.skip(i)
	if r := l.at(k); r != '×' && r != 'x' && r != '·' {
		return 0, "", false
	}
	k = l.skip(k + 1)
	if l.at(k) != '1' || l.at(k+1) != '0' {
		return 0, "", false
	}
	k += 2
	hat := l.at(k) == '^'
	if hat {
		k = l.skip(k + 1)
	}
	if l.at(k) != '-' || !isDigit(l.at(k+1)) || isDigit(l.at(k+2)) {
		return 0, "", false
	}
	return k + 2, "e-" + string(l.at(k+1)), true
}

// rightName finds where a name ends that begins with the number at i ("144HC10", "2nd", "2024-03-15", "12/03/2024"), or 0.
func (l *line) rightName(i, end int) int {
	j := end
	for isLetter(l.at(j)) {
		j++
	}
	letters := strings.ToLower(string(l.r[end:j]))
	for _, o := range ordinals {
		if letters == o {
			return j
		}
	}
	if j > end && isDigit(l.at(j)) && l.at(end) != 'x' && l.at(end) != 'X' {
		if _, _, _, ok := l.unitAt(end); !ok {
			return l.nameEnd(i)
		}
	}
	groups, k := 1, end
	sep := l.at(end)
	for (sep == '-' || sep == '/') && l.at(k) == sep && isDigit(l.at(k+1)) {
		k += 1 + l.digits(k+1)
		groups++
	}
	run := string(l.r[i:k])
	year := strings.HasPrefix(run, "19") || strings.HasPrefix(run, "20")
	switch {
	case groups >= 3 && sep == '-':
		return k
	case groups == 3 && (end-i == 4 && year || k-end == 8 || k-end == 7) && sep == '/':
		return k
	case groups == 2 && end-i == 4 && year && k-end == 3 && l.at(end+1) <= '1':
		if _, _, _, ok := l.unitAt(l.skip(k)); !ok {
			return k // 2024-03
		}
	}
	return 0
}

// signToken reads signs of one or two characters.
func (l *line) signToken(i int, r rune) (token, bool) {
	one := func(k kind) (token, bool) { return token{kind: k, j: i + 1, rune: r}, true }
	switch r {
	case '+', '-':
		k := l.skip(i + 1)
		if l.at(k) == '/' {
			k = l.skip(k + 1)
			if s := l.at(k); (s == '+' || s == '-') && s != r {
				return token{kind: kPM, j: k + 1}, true
			}
		} else if s := l.at(i + 1); r == '+' && s == '-' && (isDigit(l.at(l.skip(i + 2)))) {
			return token{kind: kPM, j: i + 2}, true
		}
		return one(kSign)
	case '±':
		return one(kPM)
	case '×':
		return one(kTimes)
	case '/', '|':
		return one(kSlash)
	case '~', '…', '÷':
		return one(kTilde)
	case '.':
		if l.at(i+1) == '.' {
			j := i + 2
			for l.at(j) == '.' {
				j++
			}
			return token{kind: kTilde, j: j}, true
		}
	case ',', '、', ';', '&':
		return one(kComma)
	case '(', '[':
		return one(kOpen)
	case ')', ']':
		return one(kClose)
	}
	return token{}, false
}

// factorAt reports whether a factor may begin at i, so that an x before it multiplies.
func (l *line) factorAt(i int) bool {
	r := l.at(i)
	return isDigit(r) || r == '(' || r == 'Ø' || strings.ContainsRune("LWHDBT", r) && r != 0 && isDigit(l.at(i+1))
}

// wordToken reads the words that bind numbers.
func (l *line) wordToken(i int, after bool) (token, bool) {
	best := token{}
	try := func(list []string, t token) {
		for _, w := range list {
			end, ok := l.match([]rune(w), i, true)
			if !ok || end <= best.j {
				continue
			}
			if isLetter([]rune(w)[0]) && unicode.IsLetter(l.at(end-1)) && isLetter(l.at(end)) {
				continue
			}
			t.j = end
			best = t
		}
	}
	for b, list := range bounding {
		try(list, token{kind: kBound, bound: b})
	}
	if after {
		try(ranging, token{kind: kTilde})
		try(joining, token{kind: kAnd})
		if l.at(i-1) == ' ' {
			try(multiplying, token{kind: kTimes})
		}
	}
	return best, best.j > 0
}

// nameToken reads a word; digits and dashes glued to it are part of it.
func (l *line) nameToken(i int) token {
	j := i
	for isLetter(l.at(j)) || l.at(j) == '.' && isLetter(l.at(j+1)) {
		j++
	}
	word := string(l.r[i:j])
	k := j
	if l.at(k) == '.' && isDigit(l.at(k+1)) {
		k++
	}
	if isDigit(l.at(k)) {
		for _, p := range prefixes {
			if word == p {
				return token{kind: kWord, j: k}
			}
		}
		if strings.Contains("LWHDBT", word) && l.digits(k) >= 2 && l.timesAfter(k) {
			return token{kind: kWord, j: k}
		}
	}
	if end := l.designation(word, j); end > j {
		return token{kind: kWord, j: end}
	}
	return token{kind: kWord, j: l.nameEnd(i)}
}

// timesAfter reports whether the number at i is a factor.
func (l *line) timesAfter(i int) bool {
	_, end, ok := l.numeralAt(i)
	k := l.skip(end)
	if u, e, _, has := l.unitAt(k); has && u == MM {
		k = l.skip(e)
	}
	r := l.at(k)
	return ok && (r == '×' || r == 'x' || r == 'X')
}

// nameEnd is where a name such as "KR-HC108-405" ends that begins at i. A signed number with a coefficient's unit is left
// standing: in "Pmax-0.35%/K" the name is Pmax.
func (l *line) nameEnd(i int) int {
	for {
		r := l.at(i)
		switch {
		case isLetter(r) || isDigit(r):
		case (r == '.' || r == '/' || r == '_') && isDigit(l.at(i+1)) && isDigit(l.at(i-1)):
		case r == '-' && (isLetter(l.at(i+1)) || isDigit(l.at(i+1))):
			if isDigit(l.at(i + 1)) {
				if _, end, ok := l.numeralAt(i + 1); ok {
					if u, _, _, ok := l.unitAt(l.skip(end)); ok && u.Negative() {
						return i
					}
				}
			}
		default:
			return i
		}
		i++
	}
}

// designation is where the number of a standard or class ends, given its word ends at i: "IEC 61215-1:2021", "Class 2".
func (l *line) designation(word string, i int) int {
	found := false
	for _, n := range naming {
		found = found || strings.EqualFold(n, word)
	}
	if !found {
		return 0
	}
	k := i
	if l.at(k) == '.' {
		k++
	}
	k = l.skip(k)
	if !isDigit(l.at(k)) {
		return 0
	}
	end := k + l.digits(k)
	for r := l.at(end); (r == ':' || r == '-' || r == '/' || r == '.' || r == ',') && isDigit(l.at(end+1)); r = l.at(end) {
		end += 1 + l.digits(end+1)
	}
	if _, _, _, ok := l.unitAt(l.skip(end)); ok {
		return 0
	}
	return end
}
