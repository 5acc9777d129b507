package envelope

import (
	"math"
	"testing"

	"pvtally/schema"
)

// TestEveryTechnology: each word of the record has the ranges that rules ask for, each with a sane order and an origin.
func TestEveryTechnology(t *testing.T) {
	for _, technology := range append([]string{Any}, schema.Technologies...) {
		r, ok := table[technology]
		if !ok {
			t.Errorf("%s has no ranges", technology)
			continue
		}
		for q := range quantities {
			x := r[q]
			if x == nil {
				if q <= VocCell || q >= Alpha && q <= Gamma || q == Efficiency || q == Operating {
					t.Errorf("%s has no range of %s", technology, q)
				}
				continue
			}
			if !(x.Lo < x.Hi && x.LoScale >= 0 && x.HiScale > 0) || x.LoOrigin == "" || x.HiOrigin == "" {
				t.Errorf("%s %s: %+v", technology, q, *x)
			}
		}
	}
	if For("") != For(Any) || For("unheard-of") != For(Any) {
		t.Error("an unknown word must have the widest ranges")
	}
}

// TestCommonPractice: typical module efficiencies, 17.5 % mono and 15.5 % multi, lie inside (common practice, no source); so do the
// medians of the list's edition of 2021-12 (calculated there): Voc per cell 0.679 V, FF 0.786, β -0.271, γ -0.362 %/K for PERC-like modules.
func TestCommonPractice(t *testing.T) {
	for _, c := range []struct {
		technology string
		q          Quantity
		v          float64
	}{
		{"mono", Efficiency, 17.5}, {"multi", Efficiency, 15.5},
		{"mono-perc", VocCell, 0.679}, {"mono-perc", FillFactor, 0.786}, {"mono-perc", Beta, -0.271}, {"mono-perc", Gamma, -0.362},
		{"multi", VocCell, 0.627}, {"multi", FillFactor, 0.760}, {"multi", Beta, -0.331}, {"multi", Gamma, -0.450}, {"multi", Operating, 46.1},
		{"hjt", VocCell, 0.735}, {"hjt", Gamma, -0.272}, {"ibc", VocCell, 0.707}, {"cdte", VocCell, 0.826}, {"cdte", Beta, -0.280}, {"cigs", VocCell, 0.667},
	} {
		if r := For(c.technology)[c.q]; r.Excess(c.v, c.v) != 0 {
			t.Errorf("%s %s %v lies outside %v to %v", c.technology, c.q, c.v, r.Lo, r.Hi)
		}
	}
}

func TestExcess(t *testing.T) {
	r := Range{Lo: 10, Hi: 20, LoScale: 2, HiScale: 5}
	for _, c := range []struct{ lo, hi, want float64 }{{12, 13, 0}, {20, 21, 0}, {21, 22, 0.2}, {30, 30, 2}, {7, 8, 1}, {5, 25, 0}, {9, 10, 0}} {
		if got := r.Excess(c.lo, c.hi); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("Excess(%v, %v) = %v, want %v", c.lo, c.hi, got, c.want)
		}
	}
	r.LoScale = 0 // a range that begins at its median
	if got := r.Excess(0, 5); got != 1 {
		t.Errorf("without a lower scale: %v", got)
	}
}

// TestLikeness: an ordinary 60-cell module of 1.637 m2 is like the list's with 60 cells and with no other usual count.
func TestLikeness(t *testing.T) {
	l := LikenessOf("multi")
	distance := func(n float64) float64 {
		cell := 38.3 / n
		theory := 1000 * (-0.0032*cell - (cell-1.206-3*0.0256926)/298.15)
		return l.Distance(16.5, cell, 9.23*n/1.6368/10, theory)
	}
	if d := distance(60); d > 10 {
		t.Errorf("60 cells: %v", d)
	}
	for _, n := range []float64{48, 54, 66, 72, 96} {
		if d := distance(n); d < 30 {
			t.Errorf("%v cells: %v", n, d)
		}
	}
	if d := l.Distance(16.5, 38.3/60, 9.23*60/1.6368/10, math.NaN()); d > distance(60) || math.IsNaN(d) {
		t.Errorf("without β: %v", d)
	}
	if LikenessOf("cdte") != nil {
		t.Error("the list's silicon says nothing of cadmium telluride")
	}
}

func TestSlopes(t *testing.T) {
	for _, field := range []string{"vmp_v", "imp_a", "voc_v", "isc_a"} {
		s, ok := SlopeOf(field)
		if !ok || !(s.Q01 < s.Q05 && s.Q05 < s.Median && s.Median < s.Q95 && s.Q95 < s.Q99) || s.Families < 1000 {
			t.Errorf("%s: %+v", field, s)
		}
	}
	v, _ := SlopeOf("vmp_v")
	i, _ := SlopeOf("imp_a")
	if sum := v.Median + i.Median; math.Abs(sum-1) > 0.01 {
		t.Errorf("Vmp and Imp together grow by %v, power by 1", sum)
	}
}
