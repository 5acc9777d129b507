package policy

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/rules"
	"pvtally/schema"
)

func sheet(names ...string) *schema.Sheet {
	s := &schema.Sheet{Limits: schema.Limits{SystemVoltage: []schema.Number{schema.MustNumber("1500")}}}
	for _, name := range names {
		s.Models = append(s.Models, schema.Model{Name: name, STC: schema.Electrical{Imp: schema.MustNumber("13.98")}})
	}
	return s
}

func TestKeeper(t *testing.T) {
	const today = "2026-05-01"
	wrong := rules.Finding{Rule: "stc/power-product", Level: rules.Error, Fields: []string{"/models/1/stc/imp_a", "/limits/system_voltage_v/0"}, Printed: "13.98"}
	waiver := Waiver{Rule: wrong.Rule, Record: "kr.json", Field: "models[KR-405].stc.imp_a", Printed: "13.98", Reason: "asked"}
	change := func(f func(*Waiver)) Waiver { w := waiver; f(&w); return w }
	entry := waiver.finding()
	entry.Printed = "13.98 1500"
	tests := []struct {
		name     string
		waivers  []Waiver
		baseline []Finding
		kept     int
		stale    []string
	}{
		{"nothing silences", nil, nil, 1, nil},
		{"a waiver", []Waiver{waiver}, nil, 0, nil},
		{"on its last day", []Waiver{change(func(w *Waiver) { w.Until = today })}, nil, 0, nil},
		{"expired", []Waiver{change(func(w *Waiver) { w.Until = "2026-04-30" })}, nil, 1, []string{"expired kr.json"}},
		{"by another of its cells", []Waiver{change(func(w *Waiver) { w.Field, w.Printed = "limits.system_voltage_v[1500]", "1500" })}, nil, 0, nil},
		{"another printed value", []Waiver{change(func(w *Waiver) { w.Printed = "12.98" })}, nil, 1, []string{"unused kr.json"}},
		{"another class", []Waiver{change(func(w *Waiver) { w.Field = "models[KR-400].stc.imp_a" })}, nil, 1, []string{"unused kr.json"}},
		{"another rule", []Waiver{change(func(w *Waiver) { w.Rule = "stc/current-order" })}, nil, 1, []string{"unused kr.json"}},
		{"another record, not in this run", []Waiver{change(func(w *Waiver) { w.Record = "other.json" })}, nil, 1, nil},
		{"another record, which is gone", []Waiver{change(func(w *Waiver) { w.Record = "deleted.json" })}, nil, 1, []string{"unused deleted.json"}},
		{"the baseline", nil, []Finding{entry}, 0, nil},
		{"the baseline knew another value beside it", nil, []Finding{waiver.finding()}, 1, []string{"gone kr.json"}},
		{"the baseline's entry is gone", nil, []Finding{{Rule: "body/sides", Record: "kr.json"}, entry}, 0, []string{"gone kr.json"}},
		{"both: the waiver is used, the entry is gone", []Waiver{waiver}, []Finding{entry}, 0, []string{"gone kr.json"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			k := NewKeeper(&Policy{Waivers: test.waivers}, &Baseline{Findings: test.baseline}, today)
			kept := k.Keep("kr.json", "kr.json", sheet("KR-400", "KR-405"), []rules.Finding{wrong}, nil)
			if len(kept) != test.kept || k.Waived+k.Known != 1-test.kept {
				t.Errorf("%d kept, %d waived, %d known; want %d kept", len(kept), k.Waived, k.Known, test.kept)
			}
			exists := func(record string) bool { return record != "deleted.json" }
			var stale []string
			for _, s := range k.Stale(exists, exists) {
				stale = append(stale, s.State+" "+s.Record)
			}
			if diff := cmp.Diff(test.stale, stale); diff != "" {
				t.Errorf("stale: -want +got\n%s", diff)
			}
		})
	}
}

func TestRequire(t *testing.T) {
	tests := []struct {
		name  string
		s     *schema.Sheet
		paths []string
		level string
		want  []string // fields of the finding, none: no finding
	}{
		{"there", sheet("a"), []string{"limits.system_voltage_v", "models[].stc.imp_a", "limits"}, "", nil},
		{"a field", sheet("a"), []string{"limits.series_fuse_a", "limits.system_voltage_v"}, "", []string{"/limits/series_fuse_a"}},
		{"of every class", sheet("a", "b"), []string{"models[].stc.voc_v"}, "", []string{"/models/0/stc/voc_v"}},
		{"no class at all", sheet(), []string{"models[].stc.voc_v"}, "", []string{"/models"}},
		{"off", sheet("a"), []string{"limits.series_fuse_a"}, "off", nil},
		{"a block", sheet("a"), []string{"warranty"}, "note", []string{"/warranty"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			k := NewKeeper(&Policy{Required: test.paths, Rules: map[string]Rule{Required.ID: {Level: test.level}}}, nil, "")
			var fields []string
			for _, f := range k.Require(test.s, nil) {
				fields = append(fields, f.Fields...)
				if want := map[string]rules.Level{"": rules.Error, "note": rules.Note}[test.level]; f.Level != want {
					t.Errorf("level %v, want %v", f.Level, want)
				}
			}
			if diff := cmp.Diff(test.want, fields); diff != "" {
				t.Errorf("-want +got\n%s", diff)
			}
		})
	}
	t.Run("a coefficient printed for each class counts", func(t *testing.T) {
		s := sheet("a", "b")
		for i := range s.Models {
			s.Models[i].Thermal.BetaVoc = schema.MustNumber("-0.27")
		}
		k := NewKeeper(&Policy{Required: []string{"thermal.beta_voc_pct_per_k"}}, nil, "")
		if found := k.Require(s, nil); len(found) > 0 {
			t.Errorf("%v", found)
		}
	})
}

func TestBaselineIsSortedAndComesBack(t *testing.T) {
	b := &Baseline{Findings: []Finding{
		{"stc/power-product", "b.json", "models[\"<&>].stc.imp_a", "13.98"}, {"stc/voltage-order", "a.json", "", ""}, {"body/sides", "b.json", "", "40"},
		{"stc/voltage-order", "a.json", "", ""},
	}}
	text, err := b.Encode()
	if err != nil {
		t.Fatal(err)
	}
	back, err := ParseBaseline(text)
	if err != nil {
		t.Fatalf("%v in %s", err, text)
	}
	want := []Finding{b.Findings[1], b.Findings[2], b.Findings[0]}
	if diff := cmp.Diff(want, back.Findings); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
	slices.Reverse(b.Findings)
	if again, _ := b.Encode(); string(again) != string(text) {
		t.Errorf("another order gives other bytes:\n%s\n%s", text, again)
	}
	for _, bad := range []string{`{}`, `{"format": "pvtally.baseline/1", "x": 1}`, `{"format": "pvtally.policy/1"}`} {
		if _, err := ParseBaseline([]byte(bad)); err == nil {
			t.Errorf("%s was taken", bad)
		}
	}
}

// TestKeeperCause: a waiver is about a value. It accepts all that comes of it, and nothing else.
func TestKeeperCause(t *testing.T) {
	product := rules.Finding{Rule: "stc/power-product", Level: rules.Error, Fields: []string{"/models/1/stc/pmax_w", "/models/1/stc/imp_a"}, Printed: "405"}
	order := rules.Finding{Rule: "nmot/order", Level: rules.Error, Fields: []string{"/models/1/nmot/imp_a"}, Printed: "11.01"} // does not list the wrong value
	other := rules.Finding{Rule: "body/sides", Level: rules.Error, Fields: []string{"/body/length_mm"}, Printed: "1"}
	cause := Cause{Cells: []string{"/models/1/stc/imp_a"}, Findings: []int{0, 1}}
	tests := []struct {
		name, rule string
		causes     []Cause
		kept       int
		stale      int
	}{
		{"one cause, by the one rule", "stc/power-product", []Cause{cause}, 1, 0},
		{"by the other", "nmot/order", []Cause{cause}, 1, 0},
		{"no cause known", "stc/power-product", nil, 2, 0},
		{"a rule that finds nothing", "stc/current-order", []Cause{cause}, 3, 1},
		{"another cause", "stc/power-product", []Cause{{Cells: []string{"/body/length_mm"}, Findings: []int{2}}}, 2, 0},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			waiver := Waiver{Rule: test.rule, Record: "kr.json", Field: "models[KR-405].stc.imp_a", Printed: "13.98", Reason: "asked"}
			k := NewKeeper(&Policy{Waivers: []Waiver{waiver}}, nil, "2026-05-01")
			kept := k.Keep("kr.json", "kr.json", sheet("KR-400", "KR-405"), []rules.Finding{product, order, other}, test.causes)
			all := func(string) bool { return true }
			if stale := k.Stale(all, all); len(kept) != test.kept || k.Waived != 3-test.kept || len(stale) != test.stale {
				t.Errorf("%d kept, %d waived, %d stale; want %d kept, %d stale", len(kept), k.Waived, len(stale), test.kept, test.stale)
			}
		})
	}
}
