package diagnose_test

import (
	"bytes"
	"os"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/rules"
	"pvtally/rules/diagnose"
	"pvtally/schema"
)

// soundSheet is the invented sheet with every block of the record, six classes and no mistake.
func soundSheet(t testing.TB) *schema.Sheet {
	t.Helper()
	text, err := os.ReadFile("../../testdata/sheets/kr-hc108.expected.json")
	if err != nil {
		t.Fatal(err)
	}
	d, err := schema.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	return d.Sheet
}

// misprinted is the sound sheet with some cells printed otherwise.
func misprinted(t testing.TB, cells map[string]string) *schema.Sheet {
	t.Helper()
	s := soundSheet(t)
	for at, text := range cells {
		if err := s.Set(at, schema.MustNumber(text)); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

func suspects(s *schema.Sheet) []diagnose.Suspect {
	return diagnose.Suspects(s, rules.Check(s, rules.Options{}), rules.Options{})
}

// row gives the cells of a row of the sheet's six classes.
func row(name string, texts ...string) map[string]string {
	cells := map[string]string{}
	for i, text := range texts {
		if text != "" {
			cells["/models/"+string(rune('0'+i))+"/"+name] = text
		}
	}
	return cells
}

// merge joins cells.
func merge(all ...map[string]string) map[string]string {
	out := map[string]string{}
	for _, m := range all {
		for k, v := range m {
			out[k] = v
		}
	}
	return out
}

// kinds are one case for each way in which sheets go wrong, and more where a kind has several faces.
var kinds = []struct {
	name    string
	printed map[string]string
	mistake diagnose.Mistake
	field   string
	wouldBe string
}{
	{"one digit of a current", map[string]string{"/models/1/stc/imp_a": "13.98"}, diagnose.OneDigit, "/models/1/stc/imp_a", "12.98"},
	{"one digit of a voltage that only the line knows", map[string]string{"/models/2/stc/voc_v": "37.72"}, diagnose.OneDigit, "/models/2/stc/voc_v", "37.22"},
	{"one digit of a power, against its name", map[string]string{"/models/3/stc/pmax_w": "445"}, diagnose.OneDigit, "/models/3/stc/pmax_w", "415"},
	{"one digit at NMOT", map[string]string{"/models/4/nmot/voc_v": "36.37"}, diagnose.OneDigit, "/models/4/nmot/voc_v", "35.37"},
	{"one digit of the length", map[string]string{"/body/length_mm": "1222"}, diagnose.OneDigit, "/body/length_mm", "1722"},
	{"one digit of a warranty", map[string]string{"/warranty/final_output_pct": "87.95"}, diagnose.OneDigit, "/warranty/final_output_pct", "84.95"},
	{"the last digit of a voltage lost", map[string]string{"/models/3/stc/voc_v": "37.3"}, diagnose.OneDigit, "/models/3/stc/voc_v", "37.39"},
	{"digits transposed", map[string]string{"/models/1/stc/vmp_v": "13.19"}, diagnose.Transposed, "/models/1/stc/vmp_v", "31.19"},
	{"digits of the efficiency transposed", map[string]string{"/models/3/stc/efficiency_pct": "23.1"}, diagnose.Transposed, "/models/3/stc/efficiency_pct", "21.3"},
	{"decimal point of a current", map[string]string{"/models/5/stc/isc_a": "1.400"}, diagnose.DecimalPoint, "/models/5/stc/isc_a", "14.00"},
	{"decimal point of a coefficient", map[string]string{"/thermal/alpha_isc_pct_per_k": "0.46"}, diagnose.DecimalPoint, "/thermal/alpha_isc_pct_per_k", "0.046"},
	{"voltages of a class swapped", map[string]string{"/models/2/stc/vmp_v": "37.22", "/models/2/stc/voc_v": "31.43"}, diagnose.Swap, "/models/2/stc/vmp_v", "31.43"},
	{"two classes' currents swapped", map[string]string{"/models/2/stc/isc_a": "13.88", "/models/3/stc/isc_a": "13.82"}, diagnose.Swap, "/models/2/stc/isc_a", "13.82"},
	{"a neighbour's voltage", map[string]string{"/models/2/stc/vmp_v": "31.67"}, diagnose.Neighbour, "/models/2/stc/vmp_v", "31.43"},
	{"STC's voltage at NMOT", map[string]string{"/models/2/nmot/voc_v": "37.22"}, diagnose.Neighbour, "/models/2/nmot/voc_v", "35.05"},
	{"a row one column off", row("stc/voc_v", "37.05", "37.22", "37.39", "37.56", "37.73", "36.88"), diagnose.SlippedRow, "/models/0/stc/voc_v", "36.88"},
	{"a lost minus", map[string]string{"/thermal/beta_voc_pct_per_k": "0.275"}, diagnose.Sign, "/thermal/beta_voc_pct_per_k", "-0.275"},
	{"the lowest temperature without its minus", map[string]string{"/limits/temperature_min_c": "40"}, diagnose.Sign, "/limits/temperature_min_c", "-40"},
	{"coefficients in each other's row", map[string]string{"/thermal/beta_voc_pct_per_k": "-0.325", "/thermal/gamma_pmax_pct_per_k": "-0.275"}, diagnose.RowsSwapped, "/thermal/beta_voc_pct_per_k", "-0.275"},
	{"headings at NMOT interchanged", merge(row("nmot/voc_v", "29.04", "29.25", "29.47", "29.68", "29.88", "30.09"), row("nmot/vmp_v", "34.73", "34.89", "35.05", "35.21", "35.37", "35.53")),
		diagnose.RowsSwapped, "/models/0/nmot/vmp_v", "29.04"},
	{"V/K printed as %/K", map[string]string{"/thermal/beta_voc_pct_per_k": "-0.103"}, diagnose.Unit, "/thermal/beta_voc_pct_per_k", "-0.275"},
	{"a length in cm", map[string]string{"/body/length_mm": "172.2"}, diagnose.Unit, "/body/length_mm", "1722"},
	{"a mass in lb", map[string]string{"/body/mass_kg": "54.0"}, diagnose.Unit, "/body/mass_kg", "24.5"},
	{"the length of 60 cells", map[string]string{"/body/length_mm": "1908"}, diagnose.OtherFormat, "/body/length_mm", "1722"},
	{"the cells' efficiency", row("stc/efficiency_pct", "22.8", "23.1", "23.4", "23.7", "24.0", "24.3"), diagnose.CellEfficiency, "/models/0/stc/efficiency_pct", "20.5"},
	{"half cells counted twice", map[string]string{"/cell/count": "216"}, diagnose.CellCount, "/cell/count", "108"},
	{"another format's count", map[string]string{"/cell/count": "120"}, diagnose.CellCount, "/cell/count", "108"},
	{"a mistake made before NMOT was calculated", map[string]string{"/models/2/stc/isc_a": "13.32", "/models/2/nmot/isc_a": "10.75"}, diagnose.OneDigit, "/models/2/stc/isc_a", "13.82"},
	{"any number", map[string]string{"/models/2/stc/imp_a": "11.87"}, diagnose.Unknown, "/models/2/stc/imp_a", "13.04"},
}

func TestKinds(t *testing.T) {
	for _, c := range kinds {
		t.Run(c.name, func(t *testing.T) {
			s := misprinted(t, c.printed)
			list := suspects(s)
			if len(list) == 0 {
				t.Fatalf("no suspect; findings: %v", rules.Check(s, rules.Options{}))
			}
			got := list[0]
			if got.Mistake != c.mistake || got.Field != c.field || got.Cells[0].WouldBe.Float() != schema.MustNumber(c.wouldBe).Float() {
				t.Errorf("first suspect %+v, want %s of %s, %s", got, c.mistake, c.field, c.wouldBe)
				for _, f := range rules.Check(s, rules.Options{}) {
					t.Log(f.Level, f.Rule, f.Message)
				}
				for _, x := range list {
					t.Logf("%+v", x)
				}
			}
			if got.Cells[0].Printed.String() != c.printed[c.field] || got.Confidence < 0.3 || got.Because == "" || len(got.Findings) == 0 {
				t.Errorf("%+v", got)
			}
		})
	}
}

// TestReading: where the evidence has one reading, or comes off a picture, the first suspect is the reading, and the page is to be checked before the
// maker is asked.
func TestReading(t *testing.T) {
	const at = "/models/1/stc/imp_a"
	for _, e := range []schema.Evidence{{By: "picture", Readings: 2, Printed: "13.98"}, {By: "text", Readings: 1, Printed: "13.98"}} {
		s := misprinted(t, map[string]string{at: "13.98"})
		s.Evidence = map[string]schema.Evidence{at: e}
		got := suspects(s)
		if len(got) == 0 || got[0].Mistake != diagnose.Reading || got[0].Field != at || !bytes.Contains([]byte(got[0].Because), []byte("check the page first")) {
			t.Errorf("%+v: %+v", e, got)
		}
	}
	s := misprinted(t, map[string]string{at: "13.98"})
	s.Evidence = map[string]schema.Evidence{at: {By: "text", Readings: 2, Printed: "13.98"}}
	if got := suspects(s); len(got) == 0 || got[0].Mistake != diagnose.OneDigit {
		t.Errorf("two readings agree: %+v", got)
	}
}

// TestSeveral: independent mistakes are all named, before anything else.
func TestSeveral(t *testing.T) {
	s := misprinted(t, map[string]string{"/models/1/stc/imp_a": "13.98", "/thermal/beta_voc_pct_per_k": "0.275", "/body/mass_kg": "54.0", "/models/4/nmot/voc_v": "36.37"})
	var fields []string
	for _, x := range suspects(s) {
		if x.Confidence > 0.5 {
			fields = append(fields, x.Field)
		}
	}
	slices.Sort(fields)
	if diff := cmp.Diff([]string{"/body/mass_kg", "/models/1/stc/imp_a", "/models/4/nmot/voc_v", "/thermal/beta_voc_pct_per_k"}, fields); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
}

// TestUnexplained: nothing convincing is an answer too, and no value is made up.
func TestUnexplained(t *testing.T) {
	s := misprinted(t, row("stc/efficiency_pct", "20.7", "20.9", "21.2", "21.5", "21.7", "22.0")) // a production average
	got := suspects(s)
	if len(got) != 1 || got[0].Mistake != diagnose.Unknown || !got[0].Cells[0].WouldBe.IsZero() || got[0].Confidence > 0.3 || got[0].Share != 0 {
		t.Errorf("%+v", got)
	}
}

// TestWaived: what a policy has accepted is not brought up again, and does not stand in the way.
func TestWaived(t *testing.T) {
	s := misprinted(t, map[string]string{"/models/1/stc/imp_a": "13.98", "/thermal/beta_voc_pct_per_k": "0.275"})
	found := slices.DeleteFunc(rules.Check(s, rules.Options{}), func(f rules.Finding) bool { return slices.Contains(f.Fields, "/thermal/beta_voc_pct_per_k") })
	got := diagnose.Suspects(s, found, rules.Options{})
	if len(got) != 1 || got[0].Field != "/models/1/stc/imp_a" {
		t.Errorf("%+v", got)
	}
}

// TestCleanPaysNothing: without a warning or an error nothing is done.
func TestCleanPaysNothing(t *testing.T) {
	s := soundSheet(t)
	found := rules.Check(s, rules.Options{})
	if got := diagnose.Suspects(s, found, rules.Options{}); got != nil {
		t.Errorf("%+v", got)
	}
	if n := testing.AllocsPerRun(100, func() { diagnose.Suspects(s, found, rules.Options{}) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

// TestRecordUntouched: the record is never corrected, and the answer does not depend on the run.
func TestRecordUntouched(t *testing.T) {
	for _, c := range kinds {
		s := misprinted(t, c.printed)
		before := s.Clone()
		first := suspects(s)
		for range 3 {
			if diff := cmp.Diff(first, suspects(s)); diff != "" {
				t.Fatalf("%s: -first +again\n%s", c.name, diff)
			}
		}
		if diff := cmp.Diff(before, s); diff != "" {
			t.Fatalf("%s: -before +after\n%s", c.name, diff)
		}
	}
}
