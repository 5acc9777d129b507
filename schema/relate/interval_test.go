package relate

import (
	"math"
	"testing"

	"pvtally/schema"
)

var inf = math.Inf(1)

func TestOf(t *testing.T) {
	tests := []struct {
		name string
		got  Interval
		want Interval
	}{
		// The record's own example: 13.10 stands for 13.095 … 13.105.
		{"printed decimals", Of(schema.MustNumber("13.10"), schema.MustNumber("13.10").HalfStep()), Interval{13.095, 13.105}},
		{"a converted value", Of(schema.MustNumber("965.2"), 1.27), Interval{963.93, 966.47}},
		{"absent", Of(schema.Number{}, 0.5), All},
		{"zero", Of(schema.MustNumber("0"), 0.5), Interval{-0.5, 0.5}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if !near(tt.got, tt.want) {
				t.Errorf("got %v, want %v", tt.got, tt.want)
			}
		})
	}
}

func TestArithmetic(t *testing.T) {
	i := func(lo, hi float64) Interval { return Interval{lo, hi} }
	tests := []struct {
		name      string
		got, want Interval
	}{
		{"add", i(1, 2).Add(i(-3, 4)), i(-2, 6)},
		{"sub", i(1, 2).Sub(i(-3, 4)), i(-3, 5)},
		{"mul of positives", i(1, 2).Mul(i(3, 4)), i(3, 8)},
		{"mul of negatives", i(-2, -1).Mul(i(-4, -3)), i(3, 8)},
		{"mul across zero", i(-2, 3).Mul(i(-5, 7)), i(-15, 21)},
		{"mul of zero and all", i(0, 0).Mul(All), i(0, 0)},
		{"scale turns round", i(1, 2).Scale(-3), i(-6, -3)},
		{"div of positives", i(1, 2).Div(i(4, 8)), i(0.125, 0.5)},
		{"div by negatives", i(1, 2).Div(i(-8, -4)), i(-0.5, -0.125)},
		{"div by what may be zero", i(1, 2).Div(i(0, 4)), i(0.25, inf)},
		{"div by what may be zero from below", i(1, 2).Div(i(-4, 0)), i(-inf, -0.25)},
		{"negative over what may be zero", i(-2, -1).Div(i(0, 4)), i(-inf, -0.25)},
		{"zero over what may be zero", i(0, 1).Div(i(0, 4)), i(0, inf)},
		{"div across zero", i(1, 2).Div(i(-1, 1)), All},
		{"div by zero", i(1, 2).Div(i(0, 0)), All},
		{"zero by zero", i(0, 0).Div(i(0, 0)), All},
		{"div by a half line", i(1, 2).Div(i(4, inf)), i(0, 0.5)},
		{"hull", i(1, 2).Hull(i(5, 6)), i(1, 6)},
		{"inflate", i(1, 2).Inflate(0.5), i(0.5, 2.5)},
		{"deflate", i(1, 2).Inflate(-0.25), i(1.25, 1.75)},
		{"deflate to nothing", i(1, 2).Inflate(-3), i(1.5, 1.5)},
		{"inflate by the unknown", i(1, 2).Inflate(math.NaN()), All},
		{"infinite minus infinite", AtLeast(1).Sub(AtLeast(1)), All},
		{"overflow stays finite below", Exactly(1e300).Mul(Exactly(1e300)), i(math.MaxFloat64, inf)},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if !near(tt.got, tt.want) {
				t.Errorf("got %v, want %v", tt.got, tt.want)
			}
		})
	}
}

func TestGapAndContains(t *testing.T) {
	a := Interval{1, 2}
	for _, tt := range []struct {
		b    Interval
		want float64
	}{{Interval{1.5, 3}, 0}, {Interval{2, 3}, 0}, {Interval{2.5, 3}, 0.5}, {Interval{-1, 0.75}, 0.25}, {All, 0}, {AtLeast(5), 3}, {Interval{math.NaN(), 1}, 0}} {
		if got := a.Gap(tt.b); got != tt.want {
			t.Errorf("gap to %v is %v, want %v", tt.b, got, tt.want)
		}
		if a.Gap(tt.b) != tt.b.Gap(a) {
			t.Errorf("gap to %v depends on the side", tt.b)
		}
	}
	for v, want := range map[float64]bool{0.999: false, 1: true, 1.5: true, 2: true, 2.001: false} {
		if a.Contains(v) != want {
			t.Errorf("%v in %v: %v", v, a, !want)
		}
	}
}

// FuzzArithmetic: the result of an operation holds the operation's result for any values of the operands (inclusion, the fundamental
// property of interval arithmetic: Moore, Kearfott & Cloud, Introduction to Interval Analysis, 2009; from memory).
func FuzzArithmetic(f *testing.F) {
	f.Add(1.0, 2.0, 0.5, -3.0, 4.0, 0.25)
	f.Add(-1.0, 1.0, 0.0, 0.0, 0.0, 1.0)
	f.Add(0.0, 1e-320, 1.0, -1e308, 1e308, 0.5)
	f.Fuzz(func(t *testing.T, a0, a1, s, b0, b1, u float64) {
		for _, v := range []float64{a0, a1, b0, b1, s, u} {
			if math.IsNaN(v) || math.Abs(v) > 1e100 {
				t.Skip()
			}
		}
		a, b := Interval{a0, a1}.ordered(), Interval{b0, b1}.ordered()
		x, y := inside(a, s), inside(b, u)
		for _, op := range []struct {
			name string
			got  Interval
			v    float64
		}{{"+", a.Add(b), x + y}, {"-", a.Sub(b), x - y}, {"×", a.Mul(b), x * y}, {"÷", a.Div(b), x / y}, {"hull", a.Hull(b), x}, {"scale", a.Scale(y), x * y}} {
			if math.IsNaN(op.v) || math.IsInf(op.v, 0) {
				continue
			}
			room := 1e-12 * math.Max(math.Abs(op.v), math.SmallestNonzeroFloat64)
			if op.name == "÷" || op.name == "×" {
				room += math.SmallestNonzeroFloat64
			}
			if op.name == "+" || op.name == "-" {
				room += 1e-15 * (math.Abs(x) + math.Abs(y))
			}
			if !op.got.Inflate(room).Contains(op.v) {
				t.Errorf("%v %s %v = %v does not hold %v %s %v = %v", a, op.name, b, op.got, x, op.name, y, op.v)
			}
		}
	})
}

// inside picks a value of an interval by a share.
func inside(a Interval, share float64) float64 {
	_, share = math.Modf(math.Abs(share))
	return math.Min(a.Hi, math.Max(a.Lo, a.Lo+share*(a.Hi-a.Lo)))
}

func near(a, b Interval) bool {
	same := func(x, y float64) bool { return x == y || math.Abs(x-y) <= 1e-12*math.Max(math.Abs(x), math.Abs(y)) }
	return same(a.Lo, b.Lo) && same(a.Hi, b.Hi)
}
