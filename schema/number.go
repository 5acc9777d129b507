package schema

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Number is a printed decimal: the literal is its precision ("13.10" is not "13.1"). The zero Number means: not printed.
type Number struct {
	text  string
	value float64
}

// ParseNumber takes a JSON number literal (RFC 8259, section 6) that fits a double, of at most 40 characters.
func ParseNumber(text string) (Number, error) {
	if !jsonNumber(text) {
		return Number{}, fmt.Errorf("%q is not a JSON number", text)
	}
	n, ok := parseLiteral(text)
	if !ok {
		return Number{}, fmt.Errorf("%.60q is not %s", text, allowedNumber)
	}
	return n, nil
}

// maxLiteral bounds a literal: no sheet prints more digits, and arithmetic on it stays cheap.
const maxLiteral = 40

const allowedNumber = "a number that fits a double, in at most 40 characters"

// parseLiteral takes a literal whose grammar is known to be right.
func parseLiteral(text string) (Number, bool) {
	if len(text) > maxLiteral {
		return Number{}, false
	}
	v, err := strconv.ParseFloat(text, 64)
	n := Number{text, v}
	if err != nil || v == 0 && n.vanished() {
		return Number{}, false
	}
	return n, true
}

// vanished reports a literal too small for a double: its value is zero, its digits are not.
func (n Number) vanished() bool {
	mantissa, _ := n.parts()
	return strings.ContainsAny(mantissa, "123456789")
}

// MustNumber is ParseNumber for literals in code and tests; it panics on a bad one.
func MustNumber(text string) Number {
	n, err := ParseNumber(text)
	if err != nil {
		panic(err)
	}
	return n
}

// IsZero reports that the sheet does not print the number (encoding/json's omitzero asks this); a printed 0 is not zero in this sense.
func (n Number) IsZero() bool { return n.text == "" }

// Float is the value, 0 where absent.
func (n Number) Float() float64 { return n.value }

// String is the literal as printed.
func (n Number) String() string { return n.text }

// Decimals is the count of digits after the point.
func (n Number) Decimals() int {
	mantissa, _ := n.parts()
	if i := strings.IndexByte(mantissa, '.'); i >= 0 {
		return len(mantissa) - i - 1
	}
	return 0
}

// HalfStep is half a unit of the last printed digit: 0.05 for 37.2, 0.5 for 1500 (a printed zero is a printed digit), 50 for 1.5e3.
func (n Number) HalfStep() float64 {
	if n.text == "" {
		return 0
	}
	e := 0
	if _, exponent := n.parts(); exponent != "" { // Atoi of nothing would build an error, for every number of every record
		e, _ = strconv.Atoi(exponent)
	}
	return min(0.5*math.Pow10(e-n.Decimals()), math.MaxFloat64)
}

// parts are the literal before and after its "e".
func (n Number) parts() (mantissa, exponent string) {
	for i := range len(n.text) { // a loop: every rule asks every number, and strings.IndexAny costs more than the rest
		if n.text[i]|0x20 == 'e' {
			return n.text[:i], n.text[i+1:]
		}
	}
	return n.text, ""
}

// Equal reports the same literal; go-cmp asks it.
func (n Number) Equal(o Number) bool { return n.text == o.text }

// MarshalJSON writes the literal back byte for byte.
func (n Number) MarshalJSON() ([]byte, error) {
	if n.text == "" {
		return []byte("null"), nil
	}
	return []byte(n.text), nil
}

// UnmarshalJSON keeps the literal.
func (n *Number) UnmarshalJSON(b []byte) error {
	v, err := ParseNumber(string(b))
	if err != nil {
		return err
	}
	*n = v
	return nil
}

// jsonNumber reports whether text obeys the grammar of RFC 8259, section 6 (ParseFloat alone takes "0x1p-2", "Inf", "1_0").
func jsonNumber(s string) bool {
	digits := func() bool {
		n := 0
		for len(s) > 0 && s[0] >= '0' && s[0] <= '9' {
			s, n = s[1:], n+1
		}
		return n > 0
	}
	s = strings.TrimPrefix(s, "-")
	if strings.HasPrefix(s, "0") {
		s = s[1:]
	} else if !digits() {
		return false
	}
	if strings.HasPrefix(s, ".") {
		if s = s[1:]; !digits() {
			return false
		}
	}
	if len(s) > 0 && (s[0] == 'e' || s[0] == 'E') {
		s = s[1:]
		if len(s) > 0 && (s[0] == '+' || s[0] == '-') {
			s = s[1:]
		}
		if !digits() {
			return false
		}
	}
	return s == ""
}
