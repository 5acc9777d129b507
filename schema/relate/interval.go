// Package relate is the arithmetic of printed values: a printed decimal stands for an interval, and two quantities disagree only by
// the part of their gap that rounding cannot explain. extract uses it to choose between places, rules to judge what is printed.
// It must not import anything of the project but schema.
package relate

import (
	"math"

	"pvtally/schema"
)

// Interval is a closed interval of real numbers; an unbounded side is an infinity. All holds nothing back: the value is unknown.
type Interval struct{ Lo, Hi float64 }

// All is the interval of an unknown value: it contradicts nothing.
var All = Interval{math.Inf(-1), math.Inf(1)}

// Of is what a printed number stands for: value ± halfStep (see schema.Sheet.HalfStep). An absent number may be anything.
func Of(n schema.Number, halfStep float64) Interval {
	if n.IsZero() {
		return All
	}
	return Interval{n.Float(), n.Float()}.Inflate(math.Abs(halfStep))
}

// Exactly is the interval of one value.
func Exactly(v float64) Interval { return Interval{v, v}.ordered() }

// AtLeast is everything from v on.
func AtLeast(v float64) Interval { return Interval{v, math.Inf(1)}.ordered() }

// AtMost is everything up to v.
func AtMost(v float64) Interval { return Interval{math.Inf(-1), v}.ordered() }

// Add is every sum of a value of a and one of b.
func (a Interval) Add(b Interval) Interval { return Interval{a.Lo + b.Lo, a.Hi + b.Hi}.ordered() }

// Sub is every difference.
func (a Interval) Sub(b Interval) Interval { return Interval{a.Lo - b.Hi, a.Hi - b.Lo}.ordered() }

// Mul is every product.
func (a Interval) Mul(b Interval) Interval {
	p, q, r, s := mul(a.Lo, b.Lo), mul(a.Lo, b.Hi), mul(a.Hi, b.Lo), mul(a.Hi, b.Hi)
	return Interval{min(p, q, r, s), max(p, q, r, s)}.ordered()
}

// Div is every quotient. A divisor that may be zero from one side gives a half line, one that spans zero (or is zero) gives All.
func (a Interval) Div(b Interval) Interval {
	switch {
	case b.Lo > 0 || b.Hi < 0:
		return a.Mul(Interval{1 / b.Hi, 1 / b.Lo})
	case b.Lo == 0 && b.Hi > 0:
		return a.Mul(Interval{1 / b.Hi, math.Inf(1)})
	case b.Hi == 0 && b.Lo < 0:
		return a.Mul(Interval{math.Inf(-1), 1 / b.Lo})
	}
	return All
}

// Scale multiplies by a constant.
func (a Interval) Scale(k float64) Interval { return a.Mul(Interval{k, k}) }

// Inflate moves both ends outwards by d; a negative d moves them inwards, at most to the middle.
func (a Interval) Inflate(d float64) Interval {
	b := Interval{a.Lo - d, a.Hi + d}
	if d < 0 && b.Lo > b.Hi {
		return Exactly(a.Mid())
	}
	return b.ordered()
}

// Hull is the smallest interval that holds both.
func (a Interval) Hull(b Interval) Interval {
	return Interval{min(a.Lo, b.Lo), max(a.Hi, b.Hi)}.ordered()
}

// Contains reports whether v lies in the interval, its ends included.
func (a Interval) Contains(v float64) bool { return a.Lo <= v && v <= a.Hi }

// Gap is the distance between the nearest ends, 0 where the intervals touch or overlap.
func (a Interval) Gap(b Interval) float64 {
	a, b = a.ordered(), b.ordered()
	return min(max(a.Lo-b.Hi, b.Lo-a.Hi, 0), math.MaxFloat64)
}

// Mid is the middle; of a half line its end, of All 0.
func (a Interval) Mid() float64 {
	switch lo, hi := math.IsInf(a.Lo, 0), math.IsInf(a.Hi, 0); {
	case lo && hi:
		return 0
	case lo:
		return a.Hi
	case hi:
		return a.Lo
	}
	return a.Lo/2 + a.Hi/2
}

// Half is half the width.
func (a Interval) Half() float64 { return a.Hi/2 - a.Lo/2 }

func (a Interval) bounded() bool { return !math.IsInf(a.Lo, 0) && !math.IsInf(a.Hi, 0) }

// mul takes zero times infinity for zero: the infinity is a bound that is never reached.
func mul(x, y float64) float64 {
	if x == 0 || y == 0 {
		return 0
	}
	return x * y
}

// ordered makes an interval of any two numbers: not-a-number knows nothing, and what overflowed is large, not infinite.
func (a Interval) ordered() Interval {
	if math.IsNaN(a.Lo) || math.IsNaN(a.Hi) {
		return All
	}
	return Interval{min(a.Lo, a.Hi, math.MaxFloat64), max(a.Lo, a.Hi, -math.MaxFloat64)}
}
