package extract

import (
	"slices"
	"strings"
	"testing"

	"pvtally/schema"
)

// What a picture gives stays where it may be a maker's slip, and stays open where it can only be misread. The bounds are common practice,
// no source, but for the weight of glass (2500 kg/m³, EN 572-1, from memory).
func TestMisread(t *testing.T) {
	whole := map[string]string{
		"/models/0/stc/pmax_w": "430", "/models/0/stc/vmp_v": "32.54", "/models/0/stc/imp_a": "13.21", "/models/0/stc/voc_v": "38.72",
		"/models/0/stc/isc_a": "13.95", "/models/0/stc/efficiency_pct": "22.0", "/models/0/noct/pmax_w": "324", "/models/0/noct/isc_a": "11.26",
		"/models/1/stc/pmax_w": "435", "/models/1/stc/vmp_v": "32.73", "/models/1/stc/imp_a": "13.29",
		"/body/length_mm": "1722", "/body/width_mm": "1134", "/body/mass_kg": "24.5", "/body/front_glass_mm": "2.0", "/body/rear_glass_mm": "2.0",
		"/cell/count": "108", "/thermal/gamma_pmax_pct_per_k": "-0.30", "/warranty/product_years": "25", "/warranty/annual_loss_pct": "0.4",
	}
	for _, c := range []struct {
		name string
		set  map[string]string
		by   string // "" is picture
		want []string
	}{
		{name: "all tallies"},
		{name: "a text says what it says", set: map[string]string{"/models/0/stc/pmax_w": "13.21"}, by: "text"},
		{name: "voltages interchanged are the maker's slip", set: map[string]string{"/models/0/stc/vmp_v": "38.72", "/models/0/stc/voc_v": "32.54"}},
		{name: "a voltage of another column", set: map[string]string{"/models/0/stc/vmp_v": "38.72"},
			want: []string{"/models/0/stc/imp_a", "/models/0/stc/isc_a", "/models/0/stc/pmax_w", "/models/0/stc/vmp_v", "/models/0/stc/voc_v"}},
		{name: "a digit off by one is the maker's slip", set: map[string]string{"/models/0/stc/isc_a": "13.35"}},
		{name: "the current in the power's place", set: map[string]string{"/models/1/stc/pmax_w": "13.29"}, want: []string{"/models/1/stc/imp_a", "/models/1/stc/pmax_w", "/models/1/stc/vmp_v"}},
		{name: "a coefficient in the current's place", set: map[string]string{"/models/0/noct/isc_a": "0.08"}, want: []string{"/models/0/noct/isc_a"}},
		{name: "a digit lost at the front", set: map[string]string{"/body/mass_kg": "4.5", "/warranty/product_years": "2", "/cell/count": "44"}, want: []string{"/body/mass_kg", "/cell/count", "/warranty/product_years"}},
		{name: "a lost sign is the maker's slip", set: map[string]string{"/thermal/gamma_pmax_pct_per_k": "0.30"}},
		{name: "a point lost", set: map[string]string{"/warranty/annual_loss_pct": "4"}, want: []string{"/warranty/annual_loss_pct"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			by := c.by
			if by == "" {
				by = "picture"
			}
			s := &schema.Sheet{Models: make([]schema.Model, 2), Evidence: map[string]schema.Evidence{}}
			for f, v := range whole {
				if other, ok := c.set[f]; ok {
					v = other
				}
				if err := s.Set(f, schema.MustNumber(v)); err != nil {
					t.Fatal(err)
				}
				s.Evidence[f] = schema.Evidence{Printed: v, By: by}
			}
			misread(s, false)
			var open []string
			for _, u := range s.Unresolved {
				open = append(open, u.Field)
				if _, ok := s.At(u.Field); ok {
					t.Errorf("%s is open and filled", u.Field)
				}
			}
			if !slices.Equal(open, c.want) {
				t.Errorf("open %v, want %v", open, c.want)
			}
		})
	}
}

func TestMisreadNames(t *testing.T) {
	for _, c := range []struct {
		names []string
		open  []int
	}{
		{[]string{"KR-430N54", "KR-435N54", "KR-440N54"}, nil},
		{[]string{"KR-430N54", "KB-435N54", "KR-440N54"}, []int{1}},
		{[]string{"KR-430N54", "KR-435N", "KR-440N54"}, []int{0, 1, 2}}, // which end was lost, or added, nothing tells
		{[]string{"KR-[30N54", "KR-435N54"}, []int{0, 1}},
		{[]string{"KR-95M", "KR-100M"}, nil},
		{[]string{"KR-400M", "KR-405M", "KR-400M-B", "KR-405M-B"}, nil},
		{[]string{"Fellmark 60 black", "KR-100M"}, nil},
	} {
		s := &schema.Sheet{Evidence: map[string]schema.Evidence{}}
		for i, n := range c.names {
			s.Models = append(s.Models, schema.Model{Name: n})
			s.Evidence["/models/"+itoa(i)+"/name"] = schema.Evidence{Printed: n, By: "picture"}
		}
		misread(s, false)
		var open []int
		for i, m := range s.Models {
			if m.Name == "" {
				open = append(open, i)
			}
		}
		if !slices.Equal(open, c.open) {
			t.Errorf("%q: open %v, want %v", c.names, open, c.open)
		}
	}
}

func TestLikeDigit(t *testing.T) {
	for text, want := range map[string]bool{"51.4] V": true, "51.4 V": false, "[51.4]": false, "|51.4 V": true, "| 51.4 V": false, "51.4": false, "{51.4} V": false} {
		from := strings.Index(text, "51.4")
		if got := likeDigit(text, from, from+4); got != want {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
}

// TestMisreadVoltages: what is no round figure goes, and what stands behind it keeps its evidence.
func TestMisreadVoltages(t *testing.T) {
	s := &schema.Sheet{Evidence: map[string]schema.Evidence{
		"/limits/system_voltage_v/0": {Printed: "1506 V", By: "picture"},
		"/limits/system_voltage_v/1": {Printed: "1000 V", By: "picture"},
	}}
	s.Limits.SystemVoltage = []schema.Number{schema.MustNumber("1506"), schema.MustNumber("1000")}
	misread(s, false)
	if v := s.Limits.SystemVoltage; len(v) != 1 || v[0].Float() != 1000 || len(s.Evidence) != 1 || s.Evidence["/limits/system_voltage_v/0"].Printed != "1000 V" {
		t.Errorf("left %v with %v", v, s.Evidence)
	}
	if len(s.Unresolved) != 1 || s.Unresolved[0].Candidates[0] != "1506 V" {
		t.Errorf("open %v", s.Unresolved)
	}
}
