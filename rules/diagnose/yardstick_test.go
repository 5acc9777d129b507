package diagnose_test

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"pvtally/rules"
	"pvtally/rules/diagnose"
	"pvtally/rules/diagnose/yardstick"
	"pvtally/schema"
)

func modules(t testing.TB) []yardstick.Module {
	t.Helper()
	f, err := os.Open("../../testdata/open/modules.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	list, err := yardstick.Read(f)
	if err != nil {
		t.Fatal(err)
	}
	if len(list) < 400 {
		t.Fatalf("only %d product lines", len(list))
	}
	return list
}

// TestYardstick: of the mistakes that bring a warning or an error, the wrong value is named as CALIBRATION.md says, and confidences mean what they say. The
// bounds are those that the diagnosis must keep on any seed; 80 sheets are a sample of the page's 900.
func TestYardstick(t *testing.T) {
	list := modules(t)
	rng := rand.New(rand.NewPCG(31, 7))
	var m yardstick.Measure
	for range 80 {
		honest := yardstick.Honest(list[rng.IntN(len(list))], rng)
		clean := rules.Check(honest, rules.Options{})
		for _, f := range yardstick.Faults(honest, rng) {
			found := rules.Check(f.Sheet, rules.Options{})
			m.Add(clean, found, diagnose.Suspects(f.Sheet, found, rules.Options{}), f)
		}
	}
	least := map[string][3]float64{"3 % and more": {99, 93, 98}, "1 to 3 %": {85, 80, 90}, "below 1 %": {30, 60, 60}}
	for _, r := range m.Rows() {
		if r.Kind != "all" {
			continue
		}
		if want := least[r.Band]; r.Detected < want[0] || r.First < want[1] || r.Three < want[2] || r.Sheets < 20 {
			t.Errorf("%+v, want at least %v", r, want)
		}
	}
	for i, b := range m.Bins() {
		if b.N >= 400 && (b.Right-b.Confidence > 0.05 || b.Confidence-b.Right > 0.05) {
			t.Errorf("confidence %.1f: %.3f of %d are right, said was %.3f", float64(i)/10, b.Right, b.N, b.Confidence)
		}
	}
}

// TestTwoMistakes: two independent mistakes are both among the first three suspects.
func TestTwoMistakes(t *testing.T) {
	list := modules(t)
	rng := rand.New(rand.NewPCG(32, 7))
	var m yardstick.Measure
	for m.Sheets < 120 {
		honest := yardstick.Honest(list[rng.IntN(len(list))], rng)
		for _, p := range yardstick.Pairs(honest, rng, 1) {
			found := rules.Check(p[0].Sheet, rules.Options{})
			m.Add(nil, found, diagnose.Suspects(p[0].Sheet, found, rules.Options{}), p[0], p[1])
		}
	}
	if m.Both() < 80 || m.One() < 95 {
		t.Errorf("both on %.1f %%, one on %.1f %%", m.Both(), m.One())
	}
}

// TestAnyNumber: a digit changed, or two transposed, anywhere on the thirty invented sheets with all their tables, each number in five once.
func TestAnyNumber(t *testing.T) {
	files, err := filepath.Glob("../../testdata/sheets/*.expected.json")
	if err != nil || len(files) < 25 {
		t.Fatalf("%d sheets, %v", len(files), err)
	}
	rng := rand.New(rand.NewPCG(34, 7))
	var m yardstick.Measure
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		d, err := schema.Decode(text)
		if err != nil {
			t.Fatal(err)
		}
		clean := rules.Check(d.Sheet, rules.Options{})
		var all []string
		d.Sheet.Walk(func(at string, _ schema.Number) { all = append(all, at) })
		for _, at := range all {
			if rng.IntN(5) > 0 {
				continue
			}
			f, ok := yardstick.Misprint(d.Sheet, at, rng)
			if !ok {
				continue
			}
			found := rules.Check(f.Sheet, rules.Options{})
			m.Add(clean, found, diagnose.Suspects(f.Sheet, found, rules.Options{}), f)
		}
	}
	for _, r := range m.Rows() {
		if r.Kind == "all" && r.Band == "3 % and more" && (r.Detected < 60 || r.First < 88 || r.Three < 92 || r.Sheets < 300) {
			t.Errorf("%+v", r)
		}
	}
}

// TestRealSheets: misprints that are known on real sheets, as printed; the sheets themselves are not in the repository.
func TestRealSheets(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "shared", "sheets", "truth")
	if _, err := os.Stat(folder); err != nil {
		t.Skip("the real sheets are not here")
	}
	for _, c := range []struct {
		file    string
		mistake diagnose.Mistake
		field   string
	}{
		{"s40.json", diagnose.RowsSwapped, "/models/0/noct/imp_a"}, // headings of a table interchanged
		{"s26.json", diagnose.Unknown, "/models/0/stc/isc_a"},      // wrong in both tables
	} {
		text, err := os.ReadFile(filepath.Join(folder, c.file))
		if err != nil {
			t.Fatal(err)
		}
		d, err := schema.Decode(text)
		if err != nil {
			t.Fatal(err)
		}
		got := suspects(d.Sheet)
		if len(got) == 0 || got[0].Mistake != c.mistake || got[0].Field != c.field || got[0].Confidence < 0.9 {
			t.Errorf("%s: %+v", c.file, got)
		}
	}
}

// TestHonestYardstick: the sheets that the yardstick calls honest are so, but for the list's own oddities.
func TestHonestYardstick(t *testing.T) {
	list := modules(t)
	rng := rand.New(rand.NewPCG(33, 7))
	wrong, queried := 0, 0
	for i := range 200 {
		s := yardstick.Honest(list[i%len(list)], rng)
		found := rules.Check(s, rules.Options{})
		if slices.ContainsFunc(found, func(f rules.Finding) bool { return f.Level == rules.Error }) {
			wrong++
		} else if slices.ContainsFunc(found, func(f rules.Finding) bool { return f.Level == rules.Warning }) {
			queried++
		}
	}
	if wrong > 4 || queried > 16 {
		t.Errorf("%d of 200 with an error, %d with a warning", wrong, queried)
	}
}
