package relate

import (
	"math"
	"testing"

	"pvtally/schema"
)

func of(text string) (Interval, float64) {
	n := schema.MustNumber(text)
	return Of(n, n.HalfStep()), n.Float()
}

func TestCompare(t *testing.T) {
	tests := []struct {
		name     string
		printed  string
		expected Interval
		want     Gap
	}{
		{"inside", "37.2", Interval{37.18, 37.3}, Gap{RoundingPct: 0.10741138560687436}},
		{"touching ends is no gap", "0.3", Interval{0.35, 0.4}, Gap{RoundingPct: 20}},
		{"too low", "405", Interval{436, 437}, Gap{Abs: 30.5, Pct: 100 * 30.5 / 436.5, Steps: 30.5, RoundingPct: 100 * 1 / 436.5, Sign: -1}},
		{"too high, negative value", "-0.20", Interval{-0.31, -0.29}, Gap{Abs: 0.085, Pct: 100 * 0.085 / 0.3, Steps: 8.5, RoundingPct: 5, Sign: 1}},
		{"expected zero is capped", "0.1", Interval{0, 0}, Gap{Abs: 0.05, Pct: Cap, Steps: 0.5, RoundingPct: Cap, Sign: 1}},
		{"unknown fits", "5", All, Gap{}},
		{"at least, held", "25", AtLeast(17.3), Gap{}},
		{"at least, broken", "15", AtLeast(17.5), Gap{Abs: 2, Pct: 100 * 2 / 17.5, Steps: 2, RoundingPct: 100 * 0.5 / 17.5, Sign: -1}},
		{"at most, reached only by rounding", "15", AtMost(14.9), Gap{RoundingPct: 100 * 0.1 / 14.9}},
		{"not a number", "1", Interval{math.NaN(), 3}, Gap{}},
		{"just beyond", "37.2", Interval{37.25 + 1e-9, 38}, Gap{Abs: 1e-9, Pct: 1e-7 / 37.625, Steps: 1e-8, RoundingPct: 100 * (0.425 - 0.5e-9) / 37.6250000005, Sign: -1}},
		{"a conversion's wide step", "965", Interval{966, 967}, Gap{Abs: 0.5, Pct: 50 / 966.5, Steps: 0.5, RoundingPct: 100 / 966.5, Sign: -1}},
		{"at most zero", "0.2", AtMost(0), Gap{Abs: 0.15, Pct: Cap, Steps: 1.5, RoundingPct: Cap, Sign: 1}},
		{"far", "1", Interval{1e300, inf}, Gap{Abs: 1e300, Pct: 100, Steps: Cap, Sign: -1}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			printed, value := of(tt.printed)
			got := Compare(printed, value, tt.expected)
			for _, d := range []struct {
				name      string
				got, want float64
			}{{"Abs", got.Abs, tt.want.Abs}, {"Pct", got.Pct, tt.want.Pct}, {"Steps", got.Steps, tt.want.Steps},
				{"RoundingPct", got.RoundingPct, tt.want.RoundingPct}, {"Sign", float64(got.Sign), float64(tt.want.Sign)}} {
				if math.Abs(d.got-d.want) > 1e-9*math.Max(1, math.Abs(d.want)) {
					t.Errorf("%s = %v, want %v", d.name, d.got, d.want)
				}
			}
		})
	}
}

func TestCompareExactPrint(t *testing.T) {
	got := Compare(Exactly(5), 5, Exactly(4))
	if got.Steps != Cap || got.Abs != 1 || got.Pct != 25 || got.RoundingPct != 0 {
		t.Errorf("%+v", got)
	}
	if got := Compare(Exactly(5), 5, Exactly(5)); !got.Holds() || got != (Gap{}) {
		t.Errorf("%+v", got)
	}
}

// FuzzCompare: every figure is finite and not negative for any input, and agrees with the others.
func FuzzCompare(f *testing.F) {
	f.Add(37.15, 37.25, 37.2, 37.3, 37.4)
	f.Add(math.Inf(-1), math.Inf(1), math.NaN(), 0.0, 0.0)
	f.Add(math.MaxFloat64, -math.MaxFloat64, 1.0, math.Inf(1), math.Inf(1))
	f.Add(-5e-324, 5e-324, 0.0, 5e-324, 1e308)
	f.Fuzz(func(t *testing.T, lo, hi, value, from, to float64) {
		printed, expected := Interval{lo, hi}, Interval{from, to}
		g := Compare(printed, value, expected)
		for name, v := range map[string]float64{"Abs": g.Abs, "Pct": g.Pct, "Steps": g.Steps, "RoundingPct": g.RoundingPct} {
			if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
				t.Errorf("%s = %v", name, v)
			}
		}
		if g.Pct > Cap || g.Steps > Cap || g.RoundingPct > Cap {
			t.Errorf("beyond the cap: %+v", g)
		}
		if g.Holds() != (g.Sign == 0) || g.Holds() && (g.Pct != 0 || g.Steps != 0) {
			t.Errorf("%+v contradicts itself", g)
		}
		if back := Compare(printed, value, expected); back != g {
			t.Errorf("%+v, then %+v", g, back)
		}
		if !g.Holds() && Compare(printed.ordered().Inflate(g.Abs*1.000001), value, expected).Sign == -g.Sign {
			t.Errorf("closing the gap turns it round: %+v", g)
		}
	})
}
