package rules

import (
	"fmt"
	"strings"

	"pvtally/rules/envelope"
	"pvtally/schema/relate"
)

// inRange judges a quantity by its technology's range. The finding says what the range is and where its nearer bound comes from.
func (p *Pass) inRange(q envelope.Quantity, got relate.Interval, what, unit string, values ...*Value) {
	p.inRangeUpTo(Error, q, got, what, unit, values...)
}

// inRangeUpTo is inRange with a level that the finding does not exceed.
func (p *Pass) inRangeUpTo(most Level, q envelope.Quantity, got relate.Interval, what, unit string, values ...*Value) {
	r := p.env[q]
	if r == nil {
		return
	}
	l := min(most, p.Grade(r.Excess(got.Lo, got.Hi)))
	if l == 0 {
		return
	}
	origin := r.HiOrigin
	if got.Hi < r.Lo {
		origin = r.LoOrigin
	}
	technology := p.Sheet.Cell.Technology
	if technology == "" {
		technology = "any technology"
	}
	p.Report(l, Finding{
		Message: fmt.Sprintf("%s = %s%s (%s), usual for %s is %s to %s%s (%s)", what, around(got.Mid()), unit, list(values), technology, around(r.Lo), around(r.Hi), unit, origin),
		Implied: []string{around(r.Lo), around(r.Hi)},
	}, values...)
}

// list writes printed values with their symbols: "Voc 38.3 V, Vmp 31.0 V".
func list(values []*Value) string {
	var b strings.Builder
	for _, v := range values {
		if v.Printed() {
			if b.Len() > 0 {
				b.WriteString(", ")
			}
			b.WriteString(v.Symbol() + " " + v.String())
		}
	}
	return b.String()
}

// rangeGrade is the grade of every rule that judges by a range.
var rangeGrade = Grade{Of: "distance outside the usual range", Unit: "of the distance from the bound to the median", Note: 0.15, Warning: 0.5, Error: 1.5}

// envelopeSource is the source of every range.
var envelopeSource = Source{"California Energy Commission list of lab-rated modules, editions 2019-03 and 2021-12, by percentile; each bound's origin is in rules/envelope/ranges.csv", "calculated"}

// voltageCaution stands on findings that touch what a string's voltage is designed from.
const voltageCaution = "The sheet's own limits, local code and a licensed professional decide; do not size strings from a value in question."
