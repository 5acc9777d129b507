package report

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// figures writes a calculated number with four significant digits, tiny ones as a power of ten.
func figures(v float64) string {
	text := strconv.FormatFloat(v, 'g', 4, 64)
	mantissa, exponent, ok := strings.Cut(text, "e")
	if !ok {
		return minus(text)
	}
	n, err := strconv.Atoi(exponent)
	if err != nil {
		return text
	}
	return minus(mantissa) + " × 10" + superscript(n)
}

var raised = strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

func superscript(n int) string { return raised.Replace(strconv.Itoa(n)) }

// fixed writes a calculated number with so many decimals, one that no sheet prints by its size.
func fixed(v float64, decimals int) string {
	if math.Abs(v) >= 1e7 {
		return figures(v)
	}
	return minus(strconv.FormatFloat(v, 'f', decimals, 64))
}

func minus(text string) string { return strings.Replace(text, "-", "−", 1) }

func shunt(ohm float64) string {
	if math.IsInf(ohm, 0) || ohm > 1e6 {
		return "none"
	}
	return figures(ohm) + " Ω"
}

// upper begins a sentence.
func upper(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}
