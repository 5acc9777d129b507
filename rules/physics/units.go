package physics

import "math"

// Exact conversion factors (NIST SP 811); PascalPerPsf follows from the pound-force and the foot.
const (
	MillimetresPerInch = 25.4
	KilogramsPerPound  = 0.45359237
	MetresPerFoot      = 0.3048
	PascalPerPsf       = KilogramsPerPound * 9.80665 / (MetresPerFoot * MetresPerFoot)
)

// Fahrenheit converts °C.
func Fahrenheit(celsius float64) float64 { return celsius*1.8 + 32 }

// AWGArea is a conductor's cross-section in mm2 by its American wire gauge: d = 0.127 mm × 92^((36-n)/39). Source: ASTM B258.
func AWGArea(gauge float64) float64 {
	d := 0.127 * math.Pow(92, (36-gauge)/39)
	return math.Pi / 4 * d * d
}
