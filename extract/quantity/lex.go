package quantity

import "strings"

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
	gap   bool // a space or the line's beginning stands before it
	sign  rune
	num   numeral
	unit  printed
	bound Bound
}

// maxTerms bounds the numbers read from one text: a longer one is no cell, no line.
const maxTerms = 4096

// lex cuts a line into tokens.
func (l *line) lex() []token {
	var out []token
	numbers := 0
	for i := l.skip(0); i < len(l.r) && numbers < maxTerms; i = l.skip(i) {
		t := l.token(i, out)
		t.i, t.gap = i, i == 0 || l.at(i-1) == ' '
		if t.kind == kNumber {
			numbers++
		}
		out = append(out, t)
		i = max(t.j, i+1)
	}
	return out
}

// token reads one token at i, given those before it.
func (l *line) token(i int, before []token) token {
	last := func(n int) token {
		if len(before) < n {
			return token{}
		}
		return before[len(before)-n]
	}
	prev := last(1)
	if prev.kind == kNumber || prev.kind == kClose || prev.kind == kOpen && last(2).kind == kNumber {
		if t, ok := l.unitToken(i, prev); ok {
			return t
		}
	}
	r := l.at(i)
	if isDigit(r) || r == '.' && isDigit(l.at(i+1)) && (len(before) == 0 || prev.j != i) {
		return l.numberToken(i)
	}
	if t, ok := l.signToken(i, r); ok {
		return t
	}
	behind := prev.kind == kNumber || prev.kind == kUnit || prev.kind == kClose
	if (r == 'x' || r == 'X' || r == 'х' || r == 'Х') && behind && l.factorAt(l.skip(i+1)) {
		return token{kind: kTimes, j: i + 1}
	}
	if t, ok := l.wordToken(i, behind || prev.kind == kComma); ok {
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
	p, ok := l.unitAt(k)
	if !ok || k > i && p.unit != Year && p.unit != Foot && p.unit != Inch && p.unit != Piece {
		return token{}, false
	}
	if l.at(i) == '\'' && l.at(i-1) == ' ' { // a stray apostrophe is no foot
		return token{}, false
	}
	if isDigit(l.at(p.end)) && isLetter(l.at(p.end-1)) && !l.neighbourAt(p.end, prev) {
		return token{}, false
	}
	if p.unit == MM2 && l.at(p.end-2) == ' ' && value(prev.num.literal) > 100 { // "1200 mm 2": no cross-section
		return token{kind: kUnit, unit: printed{MM, false, p.end - 2}, j: p.end - 2}, true
	}
	return token{kind: kUnit, unit: p, j: p.end}, true
}

// neighbourAt reports whether digits glued to a unit are the next cell ("10.52 A10.61 A"): a number of the same decimals.
func (l *line) neighbourAt(i int, prev token) bool {
	n, _, ok := l.numeralAt(i)
	return ok && decimals(n.literal) == decimals(prev.num.literal)
}

func (l *line) numberToken(i int) token {
	n, end, ok := l.numeralAt(i)
	if !ok {
		return token{kind: kWord, j: end}
	}
	if e, exponent, ok := l.exponentAt(end); ok {
		n.exponent, end = exponent, e
	}
	if name := l.rightName(i, end); name > end {
		return token{kind: kWord, j: name}
	}
	return token{kind: kNumber, num: n, j: end}
}

// signToken reads signs.
func (l *line) signToken(i int, r rune) (token, bool) {
	one := func(k kind) (token, bool) { return token{kind: k, j: i + 1, sign: r}, true }
	switch r {
	case '+', '-':
		if end, ok := l.plusMinus(i); ok {
			return token{kind: kPM, j: end}, true
		}
		if isDigit(l.at(i+1)) && r == '+' {
			if end, digits := l.telephone(i); digits >= 9 && l.digits(i+1) <= 3 {
				return token{kind: kWord, j: end}, true
			}
		}
		return one(kSign)
	case '±':
		return one(kPM)
	case '×':
		return one(kTimes)
	case '/':
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
	case ',', '、', ';':
		return one(kComma)
	case '&':
		return one(kAnd)
	case '(', '[':
		return one(kOpen)
	case ')', ']':
		return one(kClose)
	}
	return token{}, false
}

// plusMinus reads ± written with two signs: +/-, + / −, -/+, +-.
func (l *line) plusMinus(i int) (end int, ok bool) {
	r, k := l.at(i), l.skip(i+1)
	if l.at(k) == '/' {
		k = l.skip(k + 1)
		s := l.at(k)
		return k + 1, isSign(s) && s != r
	}
	return i + 2, r == '+' && l.at(i+1) == '-' && isDigit(l.at(l.skip(i+2)))
}

// factorAt reports whether a factor may begin at i, so that an x before it multiplies.
func (l *line) factorAt(i int) bool {
	r := l.at(i)
	return isDigit(r) || r == '(' || r == 'Ø' || r != 0 && strings.ContainsRune("LWHDBT", r) && isDigit(l.at(i+1))
}
