package schema

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestSpanRFC6901 is the table of RFC 6901, section 5.
func TestSpanRFC6901(t *testing.T) {
	const src = `{"foo": ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3, "g|h": 4, "i\\j": 5, "k\"l": 6, " ": 7, "m~n": 8}`
	for pointer, want := range map[string]string{
		"": src, "/foo": `["bar", "baz"]`, "/foo/0": `"bar"`, "/": "0", "/a~1b": "1", "/c%d": "2", "/e^f": "3", "/g|h": "4",
		`/i\j`: "5", `/k"l`: "6", "/ ": "7", "/m~0n": "8",
	} {
		if start, end, ok := span(src, pointer); !ok || src[start:end] != want {
			t.Errorf("%q is %q, want %q", pointer, src[start:end], want)
		}
	}
	for _, pointer := range []string{"foo", "/foo/2", "/foo/-", "/foo/00", "/foo/+1", "/foo/0/x", "/bar", "/foo/", "//", "/foo/99999999999999999999"} {
		if start, end, ok := span(src, pointer); ok {
			t.Errorf("%q passes for %q", pointer, src[start:end])
		}
	}
}

func TestPosition(t *testing.T) {
	doc := mustDecode(t, kestrel)
	text := string(kestrel)
	for pointer, want := range map[string]string{
		"/format":                                   `"pvtally.sheet/1"`,
		"/models/0/stc/voc_v":                       "37.23",
		"/models/1/stc/voc_v":                       "37.32",
		"/models/0/rear_gain/0/gain_pct":            "10",
		"/limits/system_voltage_v/1":                "1500",
		"/evidence/~1models~10~1stc~1voc_v/printed": `"37.23"`,
		"/models/0/stc/_note":                       `"Imp smudged"`,
		"/_either/deep/0/a":                         "1.50",
	} {
		offset, line, ok := doc.Position(pointer)
		if !ok || !strings.HasPrefix(text[offset:], want) {
			t.Errorf("%s: %v %q", pointer, ok, text[offset:min(offset+20, len(text))])
			continue
		}
		key := pointer[strings.LastIndexByte(pointer, '/')+1:]
		if got := strings.Split(text, "\n")[line-1]; !digits(key) && !strings.Contains(got, `"`+key+`": `+want) {
			t.Errorf("%s: line %d is %q", pointer, line, got)
		}
	}
	for _, pointer := range []string{"/models/2", "/models/0/stc/voc", "/maker/0", "models"} {
		if _, _, ok := doc.Position(pointer); ok {
			t.Errorf("%s has a position", pointer)
		}
	}
}

func TestAtAndSet(t *testing.T) {
	s := mustDecode(t, kestrel).Sheet
	for pointer, want := range map[string]string{
		"/body/mass_kg": "24.5", "/models/0/stc/voc_v": "37.23", "/models/1/stc/voc_v": "37.32", "/models/0/ptc_w": "378.2",
		"/models/0/low/irradiance_w_m2": "200", "/models/0/low/pmax_w": "79.1", "/models/0/rear_gain/0/isc_a": "15.26",
		"/limits/system_voltage_v/1": "1500", "/conditions/nmot/wind_m_s": "1", "/also/0/value": "24.49", "/also/0/half_step": "0.02",
	} {
		if n, ok := s.At(pointer); !ok || n.String() != want {
			t.Errorf("%s is %q, want %s", pointer, n, want)
		}
		if err := s.Set(pointer, MustNumber("7.0")); err != nil {
			t.Error(err)
		}
		if n, _ := s.At(pointer); n.String() != "7.0" {
			t.Errorf("%s stays %q", pointer, n)
		}
	}
	for _, pointer := range []string{
		"", "/", "body/mass_kg", "/body", "/body/mass", "/body/mass_kg/", "/body/mass_kg/0", "/body/connector", "/models", "/models/2/stc/voc_v", "/models/-1/stc/voc_v",
		"/models/00/stc/voc_v", "/models/0", "/limits/system_voltage_v", "/limits/system_voltage_v/2", "/limits/system_voltage_v/-", "/evidence/x/half_step", "/source/pages",
	} {
		if n, ok := s.At(pointer); ok {
			t.Errorf("%q passes for %v", pointer, n)
		}
		if err := s.Set(pointer, MustNumber("1")); err == nil {
			t.Errorf("%q could be set", pointer)
		}
	}
}

func TestSetTakesAway(t *testing.T) {
	s := mustDecode(t, kestrel).Sheet
	if err := s.Set("/models/0/noct/voc_v", MustNumber("35.0")); err != nil {
		t.Errorf("a value that was not printed cannot be set: %v", err)
	}
	if err := s.Set("/models/0/stc/voc_v", Number{}); err != nil {
		t.Error(err)
	}
	if n, ok := s.At("/models/0/stc/voc_v"); ok {
		t.Errorf("Voc is still %v", n)
	}
	if err := s.Set("/limits/system_voltage_v/0", Number{}); err == nil {
		t.Error("a list has a hole")
	}
}

func TestClone(t *testing.T) {
	s := mustDecode(t, kestrel).Sheet
	c := s.Clone()
	if diff := cmp.Diff(s, c); diff != "" {
		t.Fatalf("the copy differs:\n%s", diff)
	}
	before, _ := Encode(s)
	c.Walk(func(pointer string, _ Number) { c.Set(pointer, MustNumber("1")) })
	c.Models[0].Aliases[0] = "x"
	c.Models[0].STC.Notes["_note"] = []byte("1")
	c.Evidence["/body/mass_kg"] = Evidence{}
	c.Also[0].Field = "/x"
	c.EvidenceNotes["_until"] = []byte("2")
	if after, _ := Encode(s); string(before) != string(after) {
		t.Error("a change of the copy changed the original")
	}
}

func TestHalfStep(t *testing.T) {
	s := mustDecode(t, kestrel).Sheet
	for pointer, want := range map[string]float64{
		"/body/mass_kg":                      0.23, // from its evidence: it was converted
		"/models/0/stc/voc_v":                0.005,
		"/body/front_glass_mm":               0.05,
		"/limits/system_voltage_v/1":         0.5,
		"/thermal/gamma_pmax_pct_per_k":      0.0005,
		"/models/0/noct/voc_v":               0,
		"/models/0/rear_gain/0/pmax_w":       0.5,
		"/conditions/stc/air_mass":           0.05,
		"/models/0/thermal/beta_voc_v_per_k": 0.0005,
	} {
		if got := s.HalfStep(pointer); got != want {
			t.Errorf("%s: %v, want %v", pointer, got, want)
		}
	}
}

func TestPointerOrder(t *testing.T) {
	sorted := []string{"", "/2", "/10", "/", "/a", "/a/1/x", "/a/b", "/models/0/stc/voc_v", "/models/2/stc/imp_a", "/models/10/stc/imp_a", "/models/1a"}
	for i, a := range sorted {
		for j, b := range sorted {
			if c := comparePointers(a, b); (c < 0) != (i < j) || (c == 0) != (i == j) {
				t.Errorf("comparePointers(%q, %q) = %d", a, b, c)
			}
		}
	}
}

// FuzzPointers: no pointer breaks anything, what At finds can be set and has a key, and the order is a strict one.
func FuzzPointers(f *testing.F) {
	doc := mustDecode(f, kestrel)
	doc.Sheet.Walk(func(pointer string, _ Number) { f.Add(pointer, "/models/10") })
	f.Add("/evidence/~1body~1mass_kg/page", "/~2/01")
	f.Add("/also/0/field", "x")
	f.Fuzz(func(t *testing.T, a, b string) {
		s := doc.Sheet.Clone()
		if Key(s, a) == "" && strings.HasPrefix(a, "/") && len(a) > 1 && a[1] != '/' {
			t.Errorf("%q has no key", a)
		}
		doc.Position(a)
		Describe(a)
		s.HalfStep(a)
		if n, ok := s.At(a); ok {
			if _, _, ok := doc.Position(a); !ok {
				t.Errorf("%q is in the record and not in the text", a)
			}
			if err := s.Set(a, n); err != nil {
				t.Error(err)
			}
		}
		if comparePointers(a, b) != 0 && (comparePointers(a, b) < 0) == (comparePointers(b, a) < 0) {
			t.Errorf("%q and %q have no order", a, b)
		}
		list := []string{a, b, "/2", "/10", "/x"}
		slices.SortFunc(list, comparePointers)
		if !slices.IsSortedFunc(list, comparePointers) {
			t.Errorf("no order in %q", list)
		}
		if isPointer(a) && unescape(escape(a)) != a {
			t.Errorf("%q is not itself after escaping", a)
		}
	})
}
