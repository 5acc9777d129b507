package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pvtally/rules"
	"pvtally/schema"
)

// sum is a calculation that a letter writes out, in signs that every language shares, from so many of the values that the rule names.
type sum struct {
	values int
	write  func(v []figure) string
}

var (
	powerProduct = sum{3, func(v []figure) string {
		return fmt.Sprintf("Vmp × Imp = %s × %s = %s W ≠ %s", v[1], v[2], decimals(v[1].x*v[2].x, 1), v[0])
	}}
	// sums are by rule; what has none of its own gets its values listed.
	sums = map[string]sum{
		"stc/power-product": powerProduct, "nmot/power-product": powerProduct, "noct/power-product": powerProduct,
		"stc/efficiency-area": {4, func(v []figure) string {
			return fmt.Sprintf("%s / (%s × %s × 1000 W/m²) = %s %% ≠ %s", v[1], v[2], v[3], decimals(v[1].x/(v[2].x*v[3].x)*1e5, 2), v[0])
		}},
		"stc/voltage-order": {2, func(v []figure) string { return fmt.Sprintf("Vmp = %s ≥ Voc = %s", v[0], v[1]) }},
		"stc/current-order": {2, func(v []figure) string { return fmt.Sprintf("Imp = %s ≥ Isc = %s", v[0], v[1]) }},
		"warranty/end-value": {4, func(v []figure) string {
			return fmt.Sprintf("100 - %s - %s × (%s - 1) = %s ≠ %s", v[1].text, v[2].text, v[3].text, decimals(100-v[1].x-v[2].x*(v[3].x-1), 2), v[0].text)
		}},
		"packing/product": {3, func(v []figure) string {
			return fmt.Sprintf("%s × %s = %s ≠ %s", v[1].text, v[2].text, decimals(v[1].x*v[2].x, 0), v[0].text)
		}},
	}
)

// figure is a printed number with its unit.
type figure struct {
	x          float64
	text, unit string
}

func (f figure) String() string { return f.text + f.unit }

func decimals(x float64, n int) string { return strconv.FormatFloat(x, 'f', n, 64) }

// arithmetic is what does not tally, in signs and numbers: the sum, else the values and what the others make of the judged one. In English the rule's own
// message says it where there is no sum.
func (l *letter) arithmetic(f rules.Finding) string {
	var values []figure
	for _, field := range f.Fields {
		if n, ok := l.sheet.At(field); ok {
			values = append(values, figure{n.Float(), n.String(), strings.TrimPrefix(l.words.amount(n.String(), field), l.words.number(n.String()))})
		}
	}
	var parts []string
	written := sums[f.Rule]
	switch {
	case written.write != nil && len(values) >= written.values:
		parts = append(parts, l.localised(written.write(values)))
	case !l.words.comma:
		return f.Message
	default:
		parts = append(parts, l.values(f.Fields))
	}
	if n := len(f.Implied); n > 0 && f.Printed != "" && written.write == nil {
		implied := l.words.number(f.Implied[0])
		switch {
		case n > 1 && implied == "0":
			implied = "≤ " + l.words.number(f.Implied[1])
		case n > 1:
			implied = l.words.say("range", "lo", implied, "hi", l.words.number(f.Implied[1]))
		}
		parts = append(parts, l.words.say(impliedBy(f.Rule), "implied", implied, "printed", l.words.amount(f.Printed, f.Fields[0])))
	}
	if f.DeviationPct != 0 {
		parts = append(parts, l.words.say("deviation", "pct", l.words.number(f.DeviationPct.String()), "rounding", l.words.number(f.RoundingPct.String())))
	}
	return strings.Join(slices.DeleteFunc(parts, func(p string) bool { return p == "" }), l.words.say("semicolon")+" ")
}

// calculated are the rules whose implied values are made of the sheet's other values; those of the others are what is usual.
var calculated = []string{"nmot/", "noct/", "classes/", "rear/gain", "rear/ratio", "rear/bnpi", "low/predicted", "stc/ptc-power", "stc/five-parameter", "thermal/sign", "thermal/units-agree",
	"thermal/coefficient-sum", "body/units-agree", "body/cell-count", "paper/printed-twice"}

func impliedBy(rule string) string {
	if slices.ContainsFunc(calculated, func(prefix string) bool { return strings.HasPrefix(rule, prefix) }) {
		return "expected"
	}
	return "usual"
}

// localised writes the decimals of a sum as the language does.
func (l *letter) localised(sum string) string {
	if l.words.comma {
		return strings.ReplaceAll(sum, ".", ",")
	}
	return sum
}

// maxValues is how many values of a finding are listed.
const maxValues = 8

// values lists the printed numbers at some fields.
func (l *letter) values(fields []string) string {
	var parts []string
	for _, field := range fields {
		n, ok := l.sheet.At(field)
		if !ok || len(parts) == maxValues {
			continue
		}
		text := l.words.name(l.sheet, field) + " = " + l.words.amount(n.String(), field)
		if class, _, ok := splitClass(field); ok && class < len(l.sheet.Models) {
			text += " (" + className(l.sheet, class) + ")"
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}

// verbatim is a value as the sheet prints it, with its unit where the print has none; without evidence the record's literal.
func (l *letter) verbatim(pointer string, n schema.Number) string {
	text := l.sheet.Evidence[pointer].Printed
	if text == "" {
		return l.words.amount(n.String(), pointer)
	}
	if d, _ := schema.Describe(pointer); d.Unit != "" && strings.Trim(text, "0123456789.,+-− ") == "" {
		text += " " + d.Unit
	}
	return text
}
