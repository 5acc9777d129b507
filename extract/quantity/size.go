package quantity

import (
	"strconv"
	"strings"
)

// span is a closed interval; the zero span holds nothing a sheet prints.
type span struct{ lo, hi float64 }

func (s span) holds(v float64) bool { return s.hi > 0 && v >= s.lo && v <= s.hi }

// size tells, for one unit, what a number with one separator and three digits behind it may be: whole with thousands, or a
// decimal with three places.
type size struct{ thousands, decimals span }

// sizes are the magnitudes that sheets print (common practice, no source). A unit that is not listed decides nothing.
var sizes = map[Unit]size{
	MM:      {span{1000, 20000}, span{20, 1000}},
	CM:      {span{}, span{0, 400}},
	M:       {span{}, span{0, 30}},
	Inch:    {span{}, span{0, 200}},
	Foot:    {span{}, span{0, 30}},
	MM2:     {span{}, span{0, 100}},
	M2:      {span{}, span{0, 10}},
	KG:      {span{1000, 40000}, span{5, 100}},
	Pound:   {span{1000, 90000}, span{10, 200}},
	Pa:      {span{1000, 20000}, span{}},
	NPerM2:  {span{1000, 20000}, span{}},
	KPa:     {span{}, span{0, 20}},
	PSF:     {span{}, span{0, 300}},
	V:       {span{600, 2500}, span{10, 400}},
	A:       {span{}, span{0, 100}},
	W:       {span{1000, 2000}, span{}}, // never three decimals: "405,410 W" is a list
	KW:      {span{}, span{0, 100}},
	WPerM2:  {span{1000, 1500}, span{}},
	Piece:   {span{1000, 10000}, span{}},
	Percent: {span{}, span{0, 200}},
	C:       {span{}, span{0, 200}},
	F:       {span{}, span{0, 300}},
	K:       {span{}, span{0, 100}},
	PctPerK: {span{}, span{0, 2}},
	VPerK:   {span{}, span{0, 2}},
	APerK:   {span{}, span{0, 2}},
	WPerK:   {span{}, span{0, 10}},
	MVPerK:  {span{}, span{0, 900}},
	MAPerK:  {span{}, span{0, 100}},
}

// fractional are the units whose values sheets print with decimals: only before these is a space behind a point a slip.
var fractional = map[Unit]bool{
	V: true, A: true, W: true, KG: true, Pound: true, Percent: true, Inch: true, M: true, M2: true, MM2: true, MM: true,
	PctPerK: true, VPerK: true, APerK: true, WPerK: true, MVPerK: true, MAPerK: true,
}

// settle picks of two readings the one that the unit leaves. It returns both where both may stand, the likelier (that of
// English print) first.
func settle(literal, other string, u Unit) (string, string) {
	if other == "" {
		return literal, ""
	}
	thousands, decimals := literal, other
	if strings.Contains(literal, ".") {
		thousands, decimals = other, literal
	}
	s := sizes[u]
	t, d := s.thousands.holds(magnitude(thousands)), s.decimals.holds(magnitude(decimals))
	switch {
	case t && !d:
		return thousands, ""
	case d && !t:
		return decimals, ""
	}
	return literal, other
}

func value(literal string) float64 {
	v, _ := strconv.ParseFloat(literal, 64)
	return v
}

func magnitude(literal string) float64 { return value(strings.TrimPrefix(literal, "-")) }

// decimals is the count of digits behind a literal's point.
func decimals(literal string) int {
	mantissa, _, _ := strings.Cut(literal, "e")
	_, frac, _ := strings.Cut(mantissa, ".")
	return len(frac)
}
