package relate

import "math"

// Cap bounds Pct, Steps and RoundingPct: beyond it a figure says only "far off".
const Cap = 1e6

// slack is the share of a value that floating-point arithmetic may be off; a gap below it is none.
const slack = 1e-12

// Gap is how far a printed value lies from what other printed values make of it. Every figure is finite and not negative;
// Pct + RoundingPct is the whole deviation of the printed value from the middle of the expected interval.
type Gap struct {
	Abs         float64 // what rounding cannot explain, in the value's unit
	Pct         float64 // the same in per cent of the expected middle
	Steps       float64 // the same in units of the last printed digit
	RoundingPct float64 // what rounding explains, in per cent of the expected middle
	Sign        int     // +1 where the printed value is too high, -1 where it is too low, 0 where all is explained
}

// Holds reports that rounding explains everything.
func (g Gap) Holds() bool { return g.Abs == 0 }

// Compare is the project's one comparison of numbers: the printed value and its interval against the interval that the other printed
// values imply. A one-sided expectation (AtLeast, AtMost) is measured from its bound. What is unknown (All, not-a-number) fits everything.
func Compare(printed Interval, printedValue float64, expected Interval) Gap {
	printed, expected = printed.ordered(), expected.ordered()
	if math.IsNaN(printedValue) || math.IsInf(printedValue, 0) {
		printedValue = printed.Mid()
	}
	middle := expected.Mid()
	var g Gap
	g.Abs = printed.Gap(expected)
	if g.Abs <= slack*max(math.Abs(printedValue), math.Abs(middle)) {
		g.Abs = 0
	}
	if g.Abs > 0 {
		g.Sign = 1
		if printed.Hi < expected.Lo {
			g.Sign = -1
		}
	}
	deviation := math.Abs(printedValue - middle)
	if !expected.bounded() && expected.Contains(printedValue) {
		deviation = 0
	}
	g.Pct = share(100, g.Abs, math.Abs(middle))
	g.Steps = share(1, g.Abs, 2*printed.Half())
	g.RoundingPct = share(100, max(deviation-g.Abs, 0), math.Abs(middle))
	return g
}

// share is k × part / whole, from 0 to Cap.
func share(k, part, whole float64) float64 {
	if part == 0 {
		return 0
	}
	if s := part / whole * k; s < Cap { // false for not-a-number too
		return s
	}
	return Cap
}
