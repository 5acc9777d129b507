package site

import (
	"fmt"
	"math"

	"pvtally/schema/relate"
)

// Value is a number with the interval it may stand for. Where there is no number, Why is the sentence that says why.
type Value struct {
	V float64
	relate.Interval
	Literal string // as printed; "" where it is calculated
	Why     string
}

// Known reports that there is a number.
func (v Value) Known() bool { return v.Why == "" }

// None is no number, with the reason.
func None(format string, args ...any) Value {
	return Value{Why: fmt.Sprintf(format, args...), Interval: relate.All}
}

// Exactly is a number without any doubt of its own: a count, a given quantity.
func Exactly(v float64) Value { return Value{V: v, Interval: relate.Exactly(v)} }

// within is a calculated number with its interval. What is not finite is no number.
func within(v float64, i relate.Interval) Value {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return None("the arithmetic has no result")
	}
	return Value{V: v, Interval: i}
}

// Missing is the first reason among values without a number, "" where all are known.
func Missing(values ...Value) string {
	for _, v := range values {
		if !v.Known() {
			return v.Why
		}
	}
	return ""
}

// Times multiplies by a constant.
func (v Value) Times(k float64) Value {
	if !v.Known() {
		return v
	}
	return within(v.V*k, v.Scale(k))
}

// Sum adds, Product multiplies, Quotient divides, each with the intervals; without a number in one there is none in the result.
func (v Value) Sum(w Value) Value {
	if why := Missing(v, w); why != "" {
		return None("%s", why)
	}
	return within(v.V+w.V, v.Add(w.Interval))
}

func (v Value) Product(w Value) Value {
	if why := Missing(v, w); why != "" {
		return None("%s", why)
	}
	return within(v.V*w.V, v.Mul(w.Interval))
}

func (v Value) Quotient(w Value) Value {
	if why := Missing(v, w); why != "" {
		return None("%s", why)
	}
	return within(v.V/w.V, v.Div(w.Interval))
}

// Difference is how one value stands to another of the same quantity.
type Difference struct {
	Abs  float64 // in the quantity's unit
	Pct  float64 // of the other value; NaN where that is zero
	Real bool    // the intervals part: printed rounding and tolerance cannot explain it
}

// Against compares v with the base; ok is false where one of the two is no number.
func (v Value) Against(base Value) (d Difference, ok bool) {
	if !v.Known() || !base.Known() {
		return Difference{}, false
	}
	d = Difference{Abs: v.V - base.V, Pct: math.NaN(), Real: !relate.Compare(v.Interval, v.V, base.Interval).Holds()}
	if base.V != 0 {
		d.Pct = 100 * (v.V - base.V) / math.Abs(base.V)
	}
	return d, true
}

// whole rounds a ratio down or up to a whole number of things; a ratio that floating point left a hair beside a whole number is that number.
func down(x float64) float64 { return math.Floor(x + 1e-9) }
func up(x float64) float64   { return math.Ceil(x - 1e-9) }
