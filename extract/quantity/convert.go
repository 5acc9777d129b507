package quantity

import (
	"math"
	"strconv"
	"strings"
)

// inch, pound and psf in SI units, exact by NIST SP 811 (psf from pound-force and foot).
const (
	mmPerInch = 25.4
	kgPerLb   = 0.45359237
	paPerPSF  = kgPerLb * 9.80665 / (0.3048 * 0.3048) // 47.880259
)

// scale holds each unit's size in the base unit of its dimension, and the zero of its scale.
var scale = map[Unit]struct {
	base   Unit
	factor float64
	zero   float64 // added before the factor
}{
	MM: {MM, 1, 0}, CM: {MM, 10, 0}, M: {MM, 1000, 0}, Inch: {MM, mmPerInch, 0}, Foot: {MM, 12 * mmPerInch, 0},
	KG: {KG, 1, 0}, G: {KG, 0.001, 0}, Pound: {KG, kgPerLb, 0}, Ton: {KG, 1000, 0},
	C: {C, 1, 0}, F: {C, 1 / 1.8, -32}, K: {C, 1, -273.15},
	Pa: {Pa, 1, 0}, NPerM2: {Pa, 1, 0}, KPa: {Pa, 1000, 0}, PSF: {Pa, paPerPSF, 0}, KgPerM2: {Pa, 9.80665, 0},
	V: {V, 1, 0}, KV: {V, 1000, 0}, MilliV: {V, 0.001, 0},
	A: {A, 1, 0}, MilliA: {A, 0.001, 0},
	W: {W, 1, 0}, KW: {W, 1000, 0}, MW: {W, 1e6, 0},
	WH: {WH, 1, 0}, KWH: {WH, 1000, 0},
	MM2: {MM2, 1, 0}, CM2: {MM2, 100, 0}, M2: {MM2, 1e6, 0}, Foot2: {MM2, 144 * mmPerInch * mmPerInch, 0}, Inch2: {MM2, mmPerInch * mmPerInch, 0},
	MPerS: {MPerS, 1, 0}, KMPerH: {MPerS, 1 / 3.6, 0}, MPH: {MPerS, 0.44704, 0},
	PctPerK: {PctPerK, 1, 0}, PctPerF: {PctPerK, 1.8, 0}, PerK: {PctPerK, 100, 0}, PPMPerK: {PctPerK, 1e-4, 0},
	VPerK: {VPerK, 1, 0}, MVPerK: {VPerK, 0.001, 0}, VPerF: {VPerK, 1.8, 0},
	APerK: {APerK, 1, 0}, MAPerK: {APerK, 0.001, 0}, APerF: {APerK, 1.8, 0},
	WPerK: {WPerK, 1, 0}, WPerF: {WPerK, 1.8, 0},
}

// Convert expresses a term printed in one unit in another. halfStep is half of the last printed digit, converted: the
// interval of the printed value; literal is the value rounded to two digits below that. ok is false between unlike units.
// Factors: NIST SP 811.
func Convert(t Term, from, to Unit) (value, halfStep float64, literal string, ok bool) {
	a, okA := scale[from]
	b, okB := scale[to]
	if !okA || !okB || a.base != b.base {
		return 0, 0, "", false
	}
	value = (t.Value+a.zero)*a.factor/b.factor - b.zero
	halfStep = 0.5 * step(t.Literal) * a.factor / b.factor
	if from == to {
		return t.Value, halfStep, t.Literal, true
	}
	places := max(0, int(math.Ceil(1-math.Log10(halfStep))))
	literal = strconv.FormatFloat(value, 'f', min(places, 12), 64)
	if strings.Contains(literal, ".") {
		literal = strings.TrimRight(strings.TrimRight(literal, "0"), ".")
	}
	return value, halfStep, literal, true
}

// step is one unit of a literal's last printed digit.
func step(literal string) float64 {
	mantissa, exp, _ := strings.Cut(literal, "e")
	e, _ := strconv.Atoi(exp)
	return math.Pow(10, float64(e-decimals(mantissa)))
}
