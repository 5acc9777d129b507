package label

import "testing"

func TestNear(t *testing.T) {
	for text, want := range map[string]Concept{
		"Zellgroe":                                 "cell_size", // ß is lost
		"Tamaiio de célula":                        "cell_size",
		"Temperatura nominal de operacién":         "noct",
		"Temperaturkoeffizient Soannung":           "",
		"Voo":                                      "", // too short to tell from Voc, Vmp …
		"Kestrel Ridge Solar":                      "",
		"Maximum system voltoge":                   "sysvolt",
		"Values are subject to change at pleasure": "",
	} {
		got := Concept("")
		if f, ok := Near(text); ok {
			got = f.Concept()
		}
		if got != want {
			t.Errorf("Near(%q) is %q, want %q", text, got, want)
		}
	}
}

func TestEdits(t *testing.T) {
	for _, tt := range []struct {
		a, b string
		most int
		want int
	}{
		{"kitten", "sitting", 5, 3}, // the usual worked example of the Levenshtein distance
		{"kitten", "sitting", 2, 3},
		{"same", "same", 3, 0},
		{"", "ab", 3, 2},
		{"far", "different", 3, 4},
	} {
		if got := edits(tt.a, tt.b, tt.most); got != tt.want {
			t.Errorf("edits(%q, %q, %d) = %d, want %d", tt.a, tt.b, tt.most, got, tt.want)
		}
	}
}

func TestNearSymbol(t *testing.T) {
	for _, c := range []struct {
		text  string
		among []Concept
		want  Concept
	}{
		{"Dmax", []Concept{"pmax"}, "pmax"},
		{"Vinp", []Concept{"vmp", "voc"}, "vmp"},
		{"Voc", []Concept{"vmp", "voc"}, "voc"},
		{"Irnp", []Concept{"imp", "isc"}, "imp"},
		{"Vsys", []Concept{"vmp", "voc"}, ""},
		{"V", []Concept{"vmp", "voc"}, ""},
		{"Pmax", nil, ""},
	} {
		got, ok := NearSymbol(c.text, c.among...)
		if !ok {
			got = ""
		}
		if got != c.want {
			t.Errorf("%q among %v: %q, want %q", c.text, c.among, got, c.want)
		}
	}
}
