package quantity

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// scanCase is one printed form and what must be read in it, each quantity as show writes it. Texts and values are invented;
// the forms are those of design/reading.md.
type scanCase struct {
	name, text string
	want       []string
}

// run scans every case.
func run(t *testing.T, cases []scanCase) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, q := range Scan(c.text) {
				got = append(got, show(q))
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("%q (-want +got):\n%s", c.text, diff)
			}
		})
	}
}

// show writes a quantity: shape, bound, literals, unit. A literal carries + for a sign taken, d for one that stands apart, ?x for
// a second reading x, and ·u for a unit of its own; ! stands for a unit that was printed cut off.
func show(q Quantity) string {
	out := []string{string(q.Shape)}
	if q.Bound != Exact {
		out = append(out, string(q.Bound))
	}
	for _, t := range q.Terms {
		s := t.Literal
		if t.Signed {
			s += "+"
		}
		if t.Detached {
			s += "d"
		}
		if t.Ambiguous {
			s += "?" + t.Other
		}
		if t.Unit != q.Unit {
			s += "·" + string(t.Unit)
		}
		out = append(out, s)
	}
	if q.Unit != None {
		out = append(out, string(q.Unit))
	}
	if q.UnitCut {
		out = append(out, "!")
	}
	return strings.Join(out, " ")
}

func TestPlaces(t *testing.T) {
	cases := []struct {
		name, text string
		want       []string // the text of each quantity, then of its terms
	}{
		{"unit included", "Voc 37.23 V", []string{"37.23 V", "37.23"}},
		{"bound included", "η ≥ 17.1 %", []string{"≥ 17.1 %", "17.1"}},
		{"bound behind", "25 A max.", []string{"25 A max.", "25"}},
		{"sign included", "γ −0.35 %/°C", []string{"−0.35 %/°C", "−0.35"}},
		{"detached sign included", "- 0.29 %/℃", []string{"- 0.29 %/℃", "- 0.29"}},
		{"dash left out", "loss - 0.55 %", []string{"0.55 %", "0.55"}},
		{"full width", "（６×１６）", []string{"６×１６", "６", "１６"}},
		{"bracket of the unit included", "(-0.28±0.028)%/℃", []string{"(-0.28±0.028)%/℃", "-0.28", "0.028"}},
		{"spread in printed places", "+5/−0 %", []string{"+5/−0 %", "−0", "+5"}},
		{"characters of no width", "37\u200b.2\u200b3 V", []string{"37\u200b.2\u200b3 V", "37\u200b.2\u200b3"}},
		{"broken UTF-8 beside", "\xff37.23 V\xff", []string{"37.23 V", "37.23"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, q := range Scan(c.text) {
				got = append(got, c.text[q.Start:q.End])
				for _, term := range q.Terms {
					got = append(got, c.text[term.Start:term.End])
				}
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("%q (-want +got):\n%s", c.text, diff)
			}
		})
	}
}

func TestIn(t *testing.T) {
	cases := []struct {
		name, text string
		unit       Unit
		want       string
	}{
		{"column's unit tells thousands", "1.500", V, "single 1500 V"},
		{"column's unit tells decimals", "13.870", A, "single 13.870 A"},
		{"every term", "1,722 x 1,134 x 30", MM, "product 1722 1134 30 mm"},
		{"what stays open stays so", "24.500", KG, "single 24.500?24500 kg"},
		{"a dash becomes a minus before a coefficient", "Voc - 0.27", PctPerK, "single -0.27+d %/K"},
		{"a dash stays one elsewhere", "Loss - 0.55", Percent, "single 0.55d %"},
		{"a printed unit stands", "37.2 V", A, "single 37.2 V"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			q := Scan(c.text)
			if len(q) != 1 {
				t.Fatalf("Scan(%q) found %d quantities, want 1", c.text, len(q))
			}
			before := show(q[0])
			if diff := cmp.Diff(c.want, show(q[0].In(c.unit))); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if show(q[0]) != before {
				t.Errorf("In changed its receiver: %s, was %s", show(q[0]), before)
			}
		})
	}
}

func TestTermsAreBounded(t *testing.T) {
	got := Scan(strings.Repeat("37.23 V ", maxTerms+10))
	if len(got) != maxTerms {
		t.Errorf("%d quantities, want %d", len(got), maxTerms)
	}
}

func ExampleScan() {
	for _, q := range Scan("Size 1722 × 1134 × 30 mm, mass 24,5 kg, γ − 0.29 %/℃, −40~+85 °C") {
		fmt.Println(show(q))
	}
	// Output:
	// product 1722 1134 30 mm
	// single 24.5 kg
	// single -0.29+d %/K
	// range -40+ 85+ °C
}
