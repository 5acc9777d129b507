package diagnose

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/schema"
)

func texts(list []schema.Number) (out []string) {
	for _, n := range list {
		out = append(out, n.String())
	}
	return out
}

func TestTransposed(t *testing.T) {
	for text, want := range map[string][]string{
		"13.98":  {"31.98", "19.38", "13.89"},
		"405":    {"450"}, // 045 is no number
		"-0.27":  {"-2.07", "-0.72"},
		"11":     nil,
		"36.36":  {"63.36", "33.66", "36.63"},
		"1500.0": {"5100.0", "1050.0"},
	} {
		if diff := cmp.Diff(want, texts(transposed(text))); diff != "" {
			t.Errorf("%s: -want +got\n%s", text, diff)
		}
	}
}

func TestOtherDigits(t *testing.T) {
	got := texts(otherDigits("40.5"))
	// nine for each digit, the first never a zero before another digit
	if len(got) != 26 || !slices.Contains(got, "40.8") || !slices.Contains(got, "90.5") || slices.Contains(got, "00.5") || slices.Contains(got, "40.5") {
		t.Errorf("%d: %v", len(got), got)
	}
}

func TestCompleted(t *testing.T) {
	for text, want := range map[string][2]string{"14.0": {"14.01", "14.09"}, "37": {"37.1", "37.9"}} {
		got := texts(completed(text))
		if len(got) != 9 || got[0] != want[0] || got[8] != want[1] {
			t.Errorf("%s: %v", text, got)
		}
	}
}

func TestMoved(t *testing.T) {
	for _, c := range []struct {
		text     string
		decimals int
		want     []string
	}{
		{"1.400", 2, []string{"14.00", "0.14", "140.0", "0.014"}},
		{"3000", 0, []string{"30000", "300", "300000", "30"}},
		{"195", 1, []string{"1950", "19.5", "19500", "1.95"}},
		{"-0.46", 3, []string{"-4.6", "-0.046", "-46", "-0.0046"}},
	} {
		if diff := cmp.Diff(c.want, texts(moved(c.text, c.decimals))); diff != "" {
			t.Errorf("%s: -want +got\n%s", c.text, diff)
		}
	}
}

func TestSignificant(t *testing.T) {
	for _, c := range []struct {
		value float64
		like  string
		want  string
	}{
		{-0.27548, "-0.103", "-0.275"}, {1722.3, "172.2", "1722"}, {24.494, "54.0", "24.5"}, {0.04984, "4.6", "0.050"}, {1651, "65", "1651"}, {0.0000001, "1", "0.000000"},
	} {
		got, ok := significant(c.value, c.like)
		if !ok || got.String() != c.want {
			t.Errorf("%v like %s: %s, want %s", c.value, c.like, got, c.want)
		}
	}
	if _, ok := significant(0, "1"); ok {
		t.Error("zero has no significant digits")
	}
}

// FuzzDigits: whatever a literal looks like, what the slips make of it are numbers, and undoing a shift or a sign gives it back.
func FuzzDigits(f *testing.F) {
	for _, s := range []string{"13.98", "-0.275", "405", "0", "-0", "1e5", "0.000001", "9999999999999999999999"} {
		f.Add(s, 2)
	}
	f.Fuzz(func(t *testing.T, text string, decimals int) {
		n, err := schema.ParseNumber(text)
		if err != nil || !plain(text) || decimals < 0 || decimals > 20 {
			t.Skip()
		}
		for _, list := range [][]schema.Number{otherDigits(text), transposed(text), moved(text, decimals)} {
			for _, m := range list {
				if m.String() == "" {
					t.Errorf("%s: empty", text)
				}
			}
		}
		if negated(negated(text)) != text {
			t.Errorf("%s", text)
		}
		if back, err := schema.ParseNumber(shift(shift(text, 1, 40), -1, 40)); err == nil && back.Float() != n.Float() {
			t.Errorf("%s became %s", text, back)
		}
	})
}
