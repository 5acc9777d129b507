package quantity

import (
	"math"
	"testing"
)

func term(literal string) Term { return Term{Literal: literal, Value: value(literal)} }

// TestConvertHandbook checks the factors against the conversions of design/domain.md, section 10 (NIST SP 811; constants from
// memory, results calculated) and 11 (melting point of silicon, CRC Handbook, from memory). tol is half a unit of the last
// digit given there.
func TestConvertHandbook(t *testing.T) {
	cases := []struct {
		name     string
		literal  string
		from, to Unit
		want     float64
		tol      float64
	}{
		{"psf in pascals", "1", PSF, Pa, 47.880259, 5e-7},
		{"1600 Pa", "1600", Pa, PSF, 33.4, 0.05},
		{"2400 Pa", "2400", Pa, PSF, 50.1, 0.05},
		{"3600 Pa", "3600", Pa, PSF, 75.2, 0.05},
		{"5400 Pa", "5400", Pa, PSF, 112.8, 0.05},
		{"6000 Pa", "6000", Pa, PSF, 125.3, 0.05},
		{"8000 Pa", "8000", Pa, PSF, 167.1, 0.05},
		{"inch", "1", Inch, MM, 25.4, 1e-12},
		{"992 mm", "992", MM, Inch, 39.06, 0.005},
		{"1134 mm", "1134", MM, Inch, 44.65, 0.005},
		{"1303 mm", "1303", MM, Inch, 51.30, 0.005},
		{"1640 mm", "1640", MM, Inch, 64.57, 0.005},
		{"1722 mm", "1722", MM, Inch, 67.80, 0.005},
		{"1762 mm", "1762", MM, Inch, 69.37, 0.005},
		{"1956 mm", "1956", MM, Inch, 77.01, 0.005},
		{"2278 mm", "2278", MM, Inch, 89.69, 0.005},
		{"2382 mm", "2382", MM, Inch, 93.78, 0.005},
		{"2384 mm", "2384", MM, Inch, 93.86, 0.005},
		{"2465 mm", "2465", MM, Inch, 97.05, 0.005},
		{"square foot", "1", Foot2, M2, 0.09290304, 1e-12},
		{"1.9527 m2", "1.9527", M2, Foot2, 21.02, 0.005},
		{"2.5833 m2", "2.5833", M2, Foot2, 27.81, 0.005},
		{"3.1064 m2", "3.1064", M2, Foot2, 33.44, 0.005},
		{"pound", "1", Pound, KG, 0.45359237, 1e-12},
		{"18 kg", "18", KG, Pound, 39.7, 0.05},
		{"21.5 kg", "21.5", KG, Pound, 47.4, 0.05},
		{"27 kg", "27", KG, Pound, 59.5, 0.05},
		{"32 kg", "32", KG, Pound, 70.5, 0.05},
		{"33.5 kg", "33.5", KG, Pound, 73.9, 0.05},
		{"foot", "1", Foot, M, 0.3048, 1e-12},
		{"hail of 25 mm", "25", MM, Inch, 0.984, 0.0005},
		{"23 m/s", "23", MPerS, MPH, 51.4, 0.05},
		{"melting silicon in °F", "1414", C, F, 2577.2, 1e-9},
		{"melting silicon in K", "1413.85", C, K, 1687, 1e-9},
		{"melting silicon from °F", "2577.2", F, C, 1414, 1e-9},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, _, _, ok := Convert(term(c.literal), c.from, c.to)
			if !ok || math.Abs(got-c.want) > c.tol {
				t.Errorf("%s %s = %v %s (%t), want %v", c.literal, c.from, got, c.to, ok, c.want)
			}
		})
	}
}

func TestConvert(t *testing.T) {
	cases := []struct {
		name     string
		literal  string
		from, to Unit
		want     string
		halfStep float64
	}{
		{"whole inches", "38", Inch, MM, "965.2", 12.7}, // design/record.md
		{"inches", "65.5", Inch, MM, "1663.7", 1.27},
		{"inches, two decimals", "67.80", Inch, MM, "1722.1", 0.127 + 0.02},
		{"pounds, rounding counted", "39.5", Pound, KG, "17.9", 0.02267961850 + 0.01689861500},
		{"centimetres", "172.2", CM, MM, "1722", 0.5},
		{"metres", "1.722", M, MM, "1722", 0.5},
		{"feet", "3.9", Foot, MM, "1188.7", 15.24 + 0.02},
		{"kilopascals", "5.4", KPa, Pa, "5400", 50},
		{"N/m2", "2400", NPerM2, Pa, "2400", 0.5},
		{"psf", "50", PSF, Pa, "2394", 23.9401 + 0.0129},
		{"kg/m2", "550", KgPerM2, Pa, "5393.7", 4.903325 + 0.0425},
		{"mV/K", "-102", MVPerK, VPerK, "-0.102", 0.0005},
		{"mA/K", "6.2", MAPerK, APerK, "0.0062", 0.00005},
		{"%/°F", "-0.15", PctPerF, PctPerK, "-0.27", 0.009},
		{"1/K", "4.5e-4", PerK, PctPerK, "0.045", 0.0005},
		{"ppm/K", "450", PPMPerK, PctPerK, "0.045", 0.00005},
		{"more decimals than a literal is given", "0.56666666", PctPerK, PerK, "0.005666667", 5e-11 + 4e-10},
		{"cold end", "-40", F, C, "-40", 0.5 / 1.8},
		{"hot end", "185", F, C, "85", 0.5 / 1.8},
		{"same unit keeps the literal", "13.10", A, A, "13.10", 0.005},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, half, literal, ok := Convert(term(c.literal), c.from, c.to)
			if !ok || literal != c.want || math.Abs(half-c.halfStep) > 1e-4*c.halfStep {
				t.Errorf("%s %s = %s ± %v %s (%t), want %s ± %v", c.literal, c.from, literal, half, c.to, ok, c.want, c.halfStep)
			}
			if math.Abs(value(literal)-got) > half {
				t.Errorf("%s is not within %v of %v", literal, half, got)
			}
		})
	}
}

func TestConvertDifference(t *testing.T) {
	cases := []struct {
		name, literal string
		from, to      Unit
		want          string
	}{
		{"tolerance in °F", "5.4", F, C, "3"},
		{"tolerance in K", "2", K, C, "2"},
		{"tolerance in inches", "0.1", Inch, MM, "2.5"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if _, _, literal, ok := ConvertDifference(term(c.literal), c.from, c.to); !ok || literal != c.want {
				t.Errorf("%s %s = %s %s (%t), want %s", c.literal, c.from, literal, c.to, ok, c.want)
			}
		})
	}
}

func TestConvertRefuses(t *testing.T) {
	for _, c := range []struct {
		name     string
		from, to Unit
	}{{"unlike dimensions", KG, MM}, {"no unit", None, MM}, {"gauge", AWG, MM2}, {"relative to absolute", PctPerK, VPerK}} {
		t.Run(c.name, func(t *testing.T) {
			if _, _, literal, ok := Convert(term("5"), c.from, c.to); ok {
				t.Errorf("converted %s to %s: %s", c.from, c.to, literal)
			}
		})
	}
}
