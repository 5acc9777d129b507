package diagnose

import (
	"strconv"
	"strings"

	"pvtally/schema"
)

// Literals as a typesetter's slip changes them. Each function lists what the sheet may have meant where it prints text.

// otherDigits are the numbers with one digit another.
func otherDigits(text string) (out []schema.Number) {
	for i := range len(text) {
		if !isDigit(text[i]) {
			continue
		}
		for d := byte('0'); d <= '9'; d++ {
			if d != text[i] {
				out = appendLiteral(out, text[:i]+string(d)+text[i+1:])
			}
		}
	}
	return out
}

// completed are the numbers with one more digit behind the last.
func completed(text string) (out []schema.Number) {
	if !strings.Contains(text, ".") {
		text += "."
	}
	for d := byte('1'); d <= '9'; d++ {
		out = appendLiteral(out, text+string(d))
	}
	return out
}

// transposed are the numbers with two neighbouring digits the other way round, the decimal point staying where it is.
func transposed(text string) (out []schema.Number) {
	last := -1
	for i := range len(text) {
		if !isDigit(text[i]) {
			continue
		}
		if last >= 0 && text[last] != text[i] {
			c := []byte(text)
			c[last], c[i] = c[i], c[last]
			out = appendLiteral(out, string(c))
		}
		last = i
	}
	return out
}

// moved are the numbers with the decimal point elsewhere, by up to two places, nearest first; zeros that only fill up go as far as the row's decimals.
func moved(text string, decimals int) (out []schema.Number) {
	for _, places := range []int{1, -1, 2, -2} {
		out = appendLiteral(out, shift(text, places, decimals))
	}
	return out
}

// shift moves the decimal point to the right.
func shift(text string, places, decimals int) string {
	sign := ""
	if strings.HasPrefix(text, "-") {
		sign, text = "-", text[1:]
	}
	whole, part, _ := strings.Cut(text, ".")
	digits := whole + part
	at := len(whole) + places
	for at > len(digits) {
		digits += "0"
	}
	for at < 1 {
		digits, at = "0"+digits, at+1
	}
	whole, part = strings.TrimLeft(digits[:at], "0"), digits[at:]
	if whole == "" {
		whole = "0"
	}
	for len(part) > decimals && strings.HasSuffix(part, "0") {
		part = part[:len(part)-1]
	}
	if part != "" {
		part = "." + part
	}
	return sign + whole + part
}

// negated is the number with the other sign.
func negated(text string) string {
	if rest, ok := strings.CutPrefix(text, "-"); ok {
		return rest
	}
	return "-" + text
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// plain reports a literal without an exponent: sheets print none.
func plain(text string) bool { return !strings.ContainsAny(text, "eE") }

// appendLiteral keeps what is a number.
func appendLiteral(out []schema.Number, text string) []schema.Number {
	if n, err := schema.ParseNumber(text); err == nil {
		out = append(out, n)
	}
	return out
}

// rounded is a calculated value as the sheet would print it.
func rounded(v float64, decimals int) (schema.Number, bool) {
	n, err := schema.ParseNumber(strconv.FormatFloat(v, 'f', decimals, 64))
	return n, err == nil
}
