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
	inf := math.Inf(1)
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
