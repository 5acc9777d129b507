package quantity

import (
	"math"
	"strconv"
	"strings"
)

// The inch, the pound, the foot and the pound-force in SI units, exact by NIST SP 811, appendix B.
const (
	mmPerInch = 25.4
	mmPerFoot = 304.8
	kgPerLb   = 0.45359237
	gravity   = 9.80665                                                   // m/s2, standard acceleration of free fall
	paPerPSF  = kgPerLb * gravity / (mmPerFoot / 1000 * mmPerFoot / 1000) // 47.880259
)

// measure is a unit's size in the base unit of its dimension; zero is what a reading on its scale is shifted by first.
type measure struct {
	base   Unit
	factor float64
	zero   float64
}

var measures = map[Unit]measure{
	MM: {MM, 1, 0}, CM: {MM, 10, 0}, M: {MM, 1000, 0}, Inch: {MM, mmPerInch, 0}, Foot: {MM, mmPerFoot, 0},
	MM2: {MM2, 1, 0}, CM2: {MM2, 100, 0}, M2: {MM2, 1e6, 0}, Inch2: {MM2, mmPerInch * mmPerInch, 0}, Foot2: {MM2, mmPerFoot * mmPerFoot, 0},
	KG: {KG, 1, 0}, G: {KG, 0.001, 0}, Ton: {KG, 1000, 0}, Pound: {KG, kgPerLb, 0},
	C: {C, 1, 0}, F: {C, 1 / 1.8, -32}, K: {C, 1, -273.15},
	Pa: {Pa, 1, 0}, NPerM2: {Pa, 1, 0}, KPa: {Pa, 1000, 0}, PSF: {Pa, paPerPSF, 0}, KgPerM2: {Pa, gravity, 0},
	V: {V, 1, 0}, KV: {V, 1000, 0}, MilliV: {V, 0.001, 0},
	A: {A, 1, 0}, MilliA: {A, 0.001, 0},
	W: {W, 1, 0}, KW: {W, 1000, 0}, MW: {W, 1e6, 0},
	WH: {WH, 1, 0}, KWH: {WH, 1000, 0},
	MPerS: {MPerS, 1, 0}, KMPerH: {MPerS, 1 / 3.6, 0}, MPH: {MPerS, 0.44704, 0},
	PctPerK: {PctPerK, 1, 0}, PctPerF: {PctPerK, 1.8, 0}, PerK: {PctPerK, 100, 0}, PPMPerK: {PctPerK, 1e-4, 0},
	VPerK: {VPerK, 1, 0}, MVPerK: {VPerK, 0.001, 0}, VPerF: {VPerK, 1.8, 0},
	APerK: {APerK, 1, 0}, MAPerK: {APerK, 0.001, 0}, APerF: {APerK, 1.8, 0},
	WPerK: {WPerK, 1, 0}, WPerF: {WPerK, 1.8, 0},
}

// Convert expresses a term printed in one unit in another of the same dimension; ok is false for any other pair. halfStep is
// half a unit of the last printed digit, converted; literal is value with as few decimals, but at least one before trailing
// zeros go, as keep it within halfStep of value, and the rounding is added to halfStep: literal ± halfStep holds whatever the
// printed number stands for. Factors: NIST SP 811.
func Convert(t Term, from, to Unit) (value, halfStep float64, literal string, ok bool) {
	return convert(t, from, to, true)
}

// ConvertDifference is Convert for a difference or a tolerance: the zeros of temperature scales do not matter, 5.4 °F are 3 K.
func ConvertDifference(t Term, from, to Unit) (value, halfStep float64, literal string, ok bool) {
	return convert(t, from, to, false)
}

func convert(t Term, from, to Unit, zeros bool) (value, halfStep float64, literal string, ok bool) {
	a, okA := measures[from]
	b, okB := measures[to]
	if !okA || !okB || a.base != b.base || t.Literal == "" {
		return 0, 0, "", false
	}
	if !zeros {
		a.zero, b.zero = 0, 0
	}
	halfStep = step(t.Literal) / 2 * a.factor / b.factor
	if from == to {
		return t.Value, halfStep, t.Literal, true
	}
	value = (t.Value+a.zero)*a.factor/b.factor - b.zero
	literal, off := shortest(value, halfStep)
	return value, halfStep + off, literal, true
}

// maxPlaces bounds the decimals of a converted literal.
const maxPlaces = 9

// shortest writes v with the fewest decimals, at least one, that keep it within tol of v; off is how far it is from v.
func shortest(v, tol float64) (literal string, off float64) {
	for places := 1; ; places++ {
		literal = strconv.FormatFloat(v, 'f', places, 64)
		off = math.Abs(value(literal) - v)
		if off < tol || places == maxPlaces {
			break
		}
	}
	literal = strings.TrimRight(strings.TrimRight(literal, "0"), ".")
	if literal == "-0" {
		literal = "0"
	}
	if off < 1e-12*math.Abs(v) {
		off = 0 // of binary fractions only
	}
	return literal, off
}

// step is one unit of a literal's last printed digit.
func step(literal string) float64 {
	_, exponent, _ := strings.Cut(literal, "e")
	e, _ := strconv.Atoi(exponent)
	return math.Pow10(e - decimals(literal))
}
