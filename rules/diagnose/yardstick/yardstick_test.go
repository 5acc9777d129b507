package yardstick

import (
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"pvtally/rules/diagnose"
	"pvtally/schema"
)

func honest(t *testing.T, seed uint64) (*schema.Sheet, *rand.Rand) {
	t.Helper()
	f, err := os.Open("../../../testdata/open/modules.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	list, err := Read(f)
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(seed, 1))
	return Honest(list[rng.IntN(len(list))], rng), rng
}

// TestFaults: a faulty sheet differs from the honest one in the cells it says and in no other, and every kind of mistake comes up.
func TestFaults(t *testing.T) {
	kinds := map[diagnose.Mistake]bool{}
	for seed := range uint64(20) {
		s, rng := honest(t, seed)
		for _, f := range Faults(s, rng) {
			kinds[f.Kind] = true
			var changed []string
			for _, c := range schema.Diff(s, f.Sheet) {
				changed = append(changed, c.New.Pointer)
			}
			slices.Sort(changed)
			if !slices.Equal(changed, f.Fields) || f.Change <= 0 {
				t.Errorf("%s: changed %v, said %v", f.Kind, changed, f.Fields)
			}
		}
		for _, p := range Pairs(s, rng, 3) {
			if n := len(schema.Diff(s, p[0].Sheet)); n != len(p[0].Fields)+len(p[1].Fields) || p[0].Sheet != p[1].Sheet {
				t.Errorf("%v and %v: %d changes", p[0].Fields, p[1].Fields, n)
			}
		}
	}
	for _, k := range []diagnose.Mistake{diagnose.Swap, diagnose.Transposed, diagnose.OneDigit, diagnose.DecimalPoint, diagnose.SlippedRow, diagnose.Neighbour, diagnose.Sign,
		diagnose.RowsSwapped, diagnose.Unit, diagnose.OtherFormat, diagnose.CellEfficiency, diagnose.CellCount} {
		if !kinds[k] {
			t.Errorf("no %s", k)
		}
	}
}

func TestReadRefuses(t *testing.T) {
	for _, text := range []string{"", "a,b\n1", "family,technology\n\"x"} {
		if _, err := Read(strings.NewReader(text)); err == nil {
			t.Errorf("%q was read", text)
		}
	}
}
