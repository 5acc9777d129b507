package compare

import (
	"fmt"
	"math"
	"strconv"

	"pvtally/rules/physics"
	"pvtally/rules/site"
	"pvtally/schema"
)

// measure is how a quantity is shown: the unit's sign, how many of it one of the calculation's unit is, where its zero lies, decimals.
type measure struct {
	sign     string
	factor   float64
	zero     float64
	decimals int
}

func (m measure) of(v float64) float64 { return v*m.factor + m.zero }

const squareFoot = physics.MetresPerFoot * physics.MetresPerFoot

// metric are the measures of the SI; customary are those that differ for --units us. Irradiance stays as the standards define it.
var (
	metric = map[site.Unit]measure{
		site.Watt: {"W", 1, 0, 1}, site.WattPerArea: {"W/m2", 1, 0, 1}, site.Irradiance: {"W/m2", 1, 0, 0},
		site.Percent: {"%", 1, 0, 1}, site.PercentPerK: {"%/K", 1, 0, 3}, site.Volt: {"V", 1, 0, 2}, site.Ampere: {"A", 1, 0, 2}, site.Rating: {"A", 1, 0, 0}, site.VoltageLimit: {"V", 1, 0, 0}, site.Installed: {"W", 1, 0, 0},
		site.Celsius: {"°C", 1, 0, 1}, site.Kelvin: {"K", 1, 0, 1}, site.Millimetre: {"mm", 1, 0, 0}, site.Metre: {"m", 1, 0, 2},
		site.SquareMetre: {"m2", 1, 0, 2}, site.Kilogram: {"kg", 1, 0, 1}, site.KilogramPerM2: {"kg/m2", 1, 0, 2},
		site.MetrePerSec: {"m/s", 1, 0, 1}, site.Years: {"years", 1, 0, 0}, site.Count: {"", 1, 0, 0},
	}
	customary = map[site.Unit]measure{
		site.WattPerArea:   {"W/ft2", squareFoot, 0, 2},
		site.Celsius:       {"°F", 1.8, 32, 0},
		site.Kelvin:        {"°F", 1.8, 0, 1},
		site.Millimetre:    {"in", 1 / physics.MillimetresPerInch, 0, 2},
		site.Metre:         {"ft", 1 / physics.MetresPerFoot, 0, 1},
		site.SquareMetre:   {"ft2", 1 / squareFoot, 0, 1},
		site.Kilogram:      {"lb", 1 / physics.KilogramsPerPound, 0, 1},
		site.KilogramPerM2: {"lb/ft2", squareFoot / physics.KilogramsPerPound, 0, 2},
		site.MetrePerSec:   {"mph", 3600 / (5280 * physics.MetresPerFoot), 0, 1},
	}
)

// measures is the system of units of one document.
type measures struct {
	us       bool
	currency string
}

// What prices are measured in: a document has one currency.
const (
	money        site.Unit = "money"
	moneyPerWatt site.Unit = "money per watt"
)

func (m measures) of(u site.Unit) measure {
	switch u {
	case money:
		return measure{m.currency, 1, 0, 2}
	case moneyPerWatt:
		return measure{m.currency + "/W", 1, 0, 4}
	}
	if c, ok := customary[u]; ok && m.us {
		return c
	}
	return metric[u]
}

// show is a quantity in its measure, with the unit.
func (m measures) show(v float64, u site.Unit) string { return m.showTo(v, u, m.of(u).decimals) }

// showTo is show with other decimals than usual.
func (m measures) showTo(v float64, u site.Unit, decimals int) string {
	as := m.of(u)
	return withUnit(number(as.of(v), decimals), as.sign)
}

func withUnit(n fmt.Stringer, unit string) string {
	if unit == "" {
		return n.String()
	}
	return n.String() + " " + unit
}

// number rounds to decimals; a zero has no minus.
func number(v float64, decimals int) schema.Number {
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if n, err := schema.ParseNumber(text); err == nil && (n.Float() != 0 || text[0] != '-') {
		return n
	} else if err == nil {
		return schema.MustNumber(text[1:])
	}
	n, _ := schema.ParseNumber(strconv.FormatFloat(v, 'e', 3, 64)) // longer than any number of this program; none where it is not finite
	return n
}

// trimmed is a number as a person would write it: up to so many decimals, no zeros behind.
func trimmed(v float64, decimals int) schema.Number {
	scale := math.Pow10(decimals)
	text := strconv.FormatFloat(math.Round(v*scale)/scale+0, 'f', -1, 64)
	n, err := schema.ParseNumber(text)
	if err != nil {
		return schema.Number{}
	}
	return n
}

// cell is a value as it is shown. What is printed stays as printed where the unit is the record's own; ends of its interval have one
// decimal more, so that half a step can be seen.
func (m measures) cell(v site.Value, u site.Unit) Cell {
	if !v.Known() {
		return Cell{Why: v.Why}
	}
	as := m.of(u)
	ends := as.decimals
	c := Cell{}
	if n, err := schema.ParseNumber(v.Literal); err == nil && as.factor == 1 && as.zero == 0 {
		c.Value, ends = n, n.Decimals()+1
	} else {
		c.Value = number(as.of(v.V), as.decimals)
	}
	if lo, hi := number(as.of(v.Lo), ends), number(as.of(v.Hi), ends); lo.Float() < hi.Float() {
		c.Low, c.High = lo, hi
	}
	return c
}

// difference is a value against the first option's; nil where one has no number. Judged says whether it is real.
func (m measures) difference(v, base site.Value, u site.Unit, judged bool) *Difference {
	d, ok := v.Against(base)
	if !ok {
		return nil
	}
	as := m.of(u)
	decimals := as.decimals
	a, err1 := schema.ParseNumber(v.Literal)
	b, err2 := schema.ParseNumber(base.Literal)
	if err1 == nil && err2 == nil && as.factor == 1 {
		decimals = max(a.Decimals(), b.Decimals())
	}
	out := &Difference{Absolute: number(d.Abs*as.factor, decimals), Unit: as.sign}
	if out.Absolute.IsZero() || math.IsInf(d.Pct, 0) {
		return nil
	}
	if u == site.Percent {
		out.Unit = "points"
	}
	if u != site.Celsius && base.V > 0 { // per cent of a temperature scale mean nothing, those of a negative number may be read either way
		out.Percent = number(d.Pct, 1)
	}
	switch {
	case d.Abs == 0, !judged && out.Absolute.Float() == 0:
		out.Verdict = Same
	case !judged:
	case d.Real:
		out.Verdict = Real
	default:
		out.Verdict = Within
	}
	return out
}
