package schema

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestDiff(t *testing.T) {
	tests := []struct {
		name string
		edit func(*Sheet)
		want []string
	}{
		{"nothing", func(*Sheet) {}, nil},
		{"places and notes", func(s *Sheet) { s.Evidence, s.Notes, s.Also, s.Unresolved, s.Source = nil, nil, nil, nil, Source{} }, nil},
		{"a value", func(s *Sheet) { s.Models[1].STC.Voc = MustNumber("37.52") },
			[]string{"models[KR-HC108-M10-410].stc.voc_v /models/1/stc/voc_v 37.32±0.005 -> /models/1/stc/voc_v 37.52±0.005"}},
		{"precision only", func(s *Sheet) { s.Body.FrontGlass = MustNumber("2") }, []string{"body.front_glass_mm /body/front_glass_mm 2.0±0.05 -> /body/front_glass_mm 2±0.5"}},
		{"a converted value", func(s *Sheet) { s.Body.Mass = MustNumber("24.6"); s.Evidence = nil },
			[]string{"body.mass_kg /body/mass_kg 24.5±0.23 -> /body/mass_kg 24.6±0.05"}},
		{"gone and new", func(s *Sheet) { s.Models[0].PTC = Number{}; s.Models[0].NOCT.Voc = MustNumber("35.0"); s.Maker = "" },
			[]string{"maker /maker Kestrel Ridge Solar ->  ",
				"models[KR-HC108-M10-405].noct.voc_v   -> /models/0/noct/voc_v 35.0±0.05",
				"models[KR-HC108-M10-405].ptc_w /models/0/ptc_w 378.2±0.05 ->  "}},
		{"a class more below", func(s *Sheet) {
			s.Models = append([]Model{{Name: "KR-HC108-M10-400", STC: Electrical{Pmax: MustNumber("400")}}}, s.Models...)
		}, []string{"models[KR-HC108-M10-400].name   -> /models/0/name KR-HC108-M10-400", "models[KR-HC108-M10-400].stc.pmax_w   -> /models/0/stc/pmax_w 400±0.5"}},
		{"a class renamed", func(s *Sheet) { s.Models[1].Name = "KR-410" }, []string{"models[KR-HC108-M10-410].name /models/1/name KR-HC108-M10-410 -> /models/1/name KR-410"}},
		{"a gain changed and one added", func(s *Sheet) {
			s.Models[0].RearGain[0].Pmax = MustNumber("450")
			s.Models[0].RearGain = append([]RearGain{{Gain: MustNumber("5")}}, s.Models[0].RearGain...)
		}, []string{"models[KR-HC108-M10-405].rear_gain[10].pmax_w /models/0/rear_gain/0/pmax_w 446±0.5 -> /models/0/rear_gain/1/pmax_w 450±0.5",
			"models[KR-HC108-M10-405].rear_gain[5].gain_pct   -> /models/0/rear_gain/0/gain_pct 5±0.5"}},
		{"lists", func(s *Sheet) {
			s.Body.CableLengths[1] = MustNumber("1400")
			s.Limits.SystemVoltage = s.Limits.SystemVoltage[1:]
			s.Certificates = []string{"IEC 61730", "IEC 61215", "IEC 61701"}
		}, []string{"body.cable_length_mm[1200#2] /body/cable_length_mm/1 1200±0.5 -> /body/cable_length_mm/1 1400±0.5",
			"limits.system_voltage_v[1000] /limits/system_voltage_v/0 1000±0.5 ->  ",
			"certificates[IEC 61701]   -> /certificates/2 IEC 61701"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			a := mustDecode(t, kestrel).Sheet
			b := a.Clone()
			tt.edit(b)
			if diff := cmp.Diff(tt.want, lines(Diff(a, b))); diff != "" {
				t.Errorf("-want +got:\n%s", diff)
			}
			back := Diff(b, a)
			if len(back) != len(tt.want) {
				t.Errorf("%d changes one way, %d back", len(tt.want), len(back))
			}
			for _, c := range back { // every pointer leads to what it says
				for sheet, p := range map[*Sheet]Printed{b: c.Old, a: c.New} {
					if n, ok := sheet.At(p.Pointer); ok && n.String() != p.Text {
						t.Errorf("%s: %s is %v, not %s", c.Key, p.Pointer, n, p.Text)
					}
				}
			}
		})
	}
}

func lines(changes []Change) []string {
	var lines []string
	show := func(p Printed) string {
		if p.HalfStep != 0 {
			return fmt.Sprintf("%s %s±%g", p.Pointer, p.Text, p.HalfStep)
		}
		return p.Pointer + " " + p.Text
	}
	for _, c := range changes {
		lines = append(lines, fmt.Sprintf("%s %s -> %s", c.Key, show(c.Old), show(c.New)))
	}
	return lines
}

// TestDiffKeys: the key of a change is the Key of its cell.
func TestDiffKeys(t *testing.T) {
	a := mustDecode(t, kestrel).Sheet
	changes := Diff(a, &Sheet{})
	n := 0
	a.Walk(func(string, Number) { n++ })
	a.WalkText(func(string, string) { n++ })
	if len(changes) != n {
		t.Errorf("%d of %d values are gone", len(changes), n)
	}
	for _, c := range changes {
		if got := Key(a, c.Old.Pointer); got != c.Key || !c.New.IsZero() {
			t.Errorf("%s has the key %s, the change %s", c.Old.Pointer, got, c.Key)
		}
	}
}
