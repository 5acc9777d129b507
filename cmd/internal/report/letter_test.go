package report

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"pvtally/rules"
	"pvtally/rules/diagnose"
	"pvtally/schema"
)

// TestLetterWords: every phrase, rule, mistake and field has its words in every language, with the same names to be filled in.
func TestLetterWords(t *testing.T) {
	names := regexp.MustCompile(`\{[a-z]+\}`)
	english := letterWords()["en"]
	for _, language := range LetterLanguages {
		w := letterWords()[language]
		for key, text := range english.phrases {
			want, got := names.FindAllString(text, -1), names.FindAllString(w.phrases[key], -1)
			slices.Sort(want)
			slices.Sort(got)
			if w.phrases[key] == "" || !slices.Equal(want, got) {
				t.Errorf("%s: %q has %v, want %v", language, key, got, want)
			}
		}
		for _, r := range rules.All() {
			if r.CheckAll == nil && w.relation(r.ID) == "" {
				t.Errorf("%s: no words for the rule %s", language, r.ID)
			}
		}
		for rule := range w.relations {
			if _, ok := rules.Lookup(rule); !ok {
				t.Errorf("%s: words for a rule %s that does not exist", language, rule)
			}
		}
		for m := range mistakes {
			if w.phrases["kind."+string(m)] == "" {
				t.Errorf("%s: no words for the mistake %s", language, m)
			}
		}
		for _, at := range allFields(t) {
			if d, ok := schema.Describe(at); !ok || w.terms[d.Title] == "" {
				t.Errorf("%s: no word for %s (%s)", language, at, d.Title)
			}
		}
	}
}

// allFields are pointers of every kind of number that a record may hold.
func allFields(t *testing.T) (out []string) {
	t.Helper()
	const text = `{"format": "pvtally.sheet/1", "cell": {"count": 1, "width_mm": 1, "height_mm": 1, "busbars": 1},
		"body": {"length_mm": 1, "width_mm": 1, "depth_mm": 1, "mass_kg": 1, "front_glass_mm": 1, "rear_glass_mm": 1, "cable_mm2": 1, "cable_length_mm": [1], "bypass_diodes": 1},
		"bifacial": {"factor_pct": 1, "factor_tolerance_pct": 1},
		"thermal": {"nmot_c": 1, "nmot_tolerance_c": 1, "noct_c": 1, "noct_tolerance_c": 1, "alpha_isc_pct_per_k": 1, "alpha_isc_a_per_k": 1, "beta_voc_pct_per_k": 1,
			"beta_voc_v_per_k": 1, "gamma_pmax_pct_per_k": 1, "gamma_pmax_w_per_k": 1},
		"limits": {"system_voltage_v": [1], "series_fuse_a": 1, "reverse_current_a": 1, "temperature_min_c": 1, "temperature_max_c": 1, "front_load_pa": 1, "rear_load_pa": 1,
			"front_design_load_pa": 1, "rear_design_load_pa": 1},
		"tolerance": {"power_plus_w": 1, "power_minus_w": 1, "power_plus_pct": 1, "power_minus_pct": 1, "voc_pct": 1, "isc_pct": 1, "measurement_pct": 1},
		"conditions": {"bnpi": {"irradiance_w_m2": 1, "rear_irradiance_w_m2": 1, "ambient_c": 1, "cell_c": 1, "wind_m_s": 1, "air_mass": 1}},
		"warranty": {"product_years": 1, "performance_years": 1, "first_year_loss_pct": 1, "annual_loss_pct": 1, "final_output_pct": 1},
		"packing": {"modules_per_pallet": 1, "pallets_per_container": 1, "modules_per_container": 1},
		"low_light": {"irradiance_w_m2": 1, "relative_efficiency_pct": 1},
		"models": [{"stc": {"pmax_w": 1, "vmp_v": 1, "imp_a": 1, "voc_v": 1, "isc_a": 1, "efficiency_pct": 1}, "ptc_w": 1, "low": {"irradiance_w_m2": 1},
			"rear_gain": [{"gain_pct": 1}], "rear_ratio": [{"ratio_pct": 1}]}]}`
	d, err := schema.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet.Walk(func(at string, _ schema.Number) { out = append(out, at) })
	return out
}

// TestLetterFieldNames: a value's table is said in each language.
func TestLetterFieldNames(t *testing.T) {
	s := &schema.Sheet{Models: []schema.Model{{Name: "A", RearGain: []schema.RearGain{{Gain: schema.MustNumber("10")}, {Gain: schema.MustNumber("12.5")}}}}}
	for _, c := range []struct{ language, at, want string }{
		{"en", "/models/0/stc/vmp_v", "Vmp at STC"},
		{"de", "/models/0/nmot/efficiency_pct", "Wirkungsgrad bei NMOT"},
		{"fr", "/models/0/noct/pmax_w", "Pmax à la NOCT"},
		{"es", "/models/0/low/pmax_w", "Pmax con poca luz"},
		{"de", "/models/0/rear_gain/1/pmax_w", "Pmax mit 12,5 % rückseitigem Gewinn"},
		{"en", "/models/0/ptc_w", "PTC"},
		{"fr", "/body/length_mm", "Longueur"},
		{"en", "/nothing/known", "nothing.known"},
	} {
		if got := letterWords()[c.language].name(s, c.at); got != c.want {
			t.Errorf("%s in %s: %q, want %q", c.at, c.language, got, c.want)
		}
	}
}

// TestLetterHostile: nothing a sheet says gets a meaning in the letter: no markup, no control character, no line of its own.
func TestLetterHostile(t *testing.T) {
	evil := "\x1b]0;x\x07\u202e\n# [x](http://x) <script>*_`|"
	s := accused()
	s.Suspects = s.Suspects[:1]
	s.File, s.Record.Maker, s.Record.Series, s.Record.Revision, s.Record.Issued, s.Record.Models[1].Name = evil, evil, evil, evil, evil, evil
	s.Record.Source.File, s.Findings[1].Model = evil, evil
	s.Record.Evidence["/models/1/stc/imp_a"] = schema.Evidence{Label: evil, Printed: evil, Page: 1}
	for _, markdown := range []bool{true, false} {
		var b strings.Builder
		n, err := WriteLetter(&b, s, "en", markdown)
		if err != nil || n == 0 {
			t.Fatal(n, err)
		}
		text := b.String()
		if strings.ContainsAny(text, "\x1b\x07\u202e") || markdown && (strings.Contains(text, "<script") || strings.Contains(text, "[x](") || strings.Contains(text, "\n# [")) {
			t.Errorf("markdown %v:\n%s", markdown, text)
		}
	}
}

// TestLetterQuestions: one question for what a suspect explains, none for its rivals, one for each rule whose findings nobody explains.
func TestLetterQuestions(t *testing.T) {
	s := accused()
	s.Findings = append(s.Findings,
		rules.Finding{Rule: "classes/monotone", Level: rules.Warning, Fields: []string{"/models/1/stc/vmp_v", "/models/0/stc/vmp_v"}, Message: "one"},
		rules.Finding{Rule: "classes/monotone", Level: rules.Warning, Fields: []string{"/models/1/stc/pmax_w", "/models/0/stc/pmax_w"}, Message: "two"},
		rules.Finding{Rule: "no/such", Level: rules.Error, Fields: []string{"/body/length_mm"}, Message: "of a policy"})
	s.Suspects = append(s.Suspects[:1], diagnose.Suspect{Field: "/models/1/stc/pmax_w", Confidence: 0.6, Mistake: diagnose.OneDigit, Findings: []int{1},
		Cells: []diagnose.Cell{{Field: "/models/1/stc/pmax_w", Printed: schema.MustNumber("405"), WouldBe: schema.MustNumber("436")}}})
	var b strings.Builder
	n, err := WriteLetter(&b, s, "en", true)
	if err != nil || n != 2 || strings.Contains(b.String(), "436 W") || !strings.Contains(b.String(), "rises: one") || !strings.Contains(b.String(), "rises: two") {
		t.Errorf("%d questions, %v\n%s", n, err, b.String())
	}
	if n, err := WriteLetter(&b, &Sheet{Record: &schema.Sheet{}}, "en", true); n != 0 || err != nil {
		t.Error(n, err)
	}
	if _, err := WriteLetter(&b, s, "xx", true); err == nil {
		t.Error("no error for an unknown language")
	}
}

func TestLetterFolded(t *testing.T) {
	words := unbroken("Vmp = 49.52 V ≥ 41.77 V; and 5.4 %/K, of 1000 W/m²): 3 V")
	want := []string{"Vmp", "=", "49.52 V", "≥", "41.77 V;", "and", "5.4 %/K,", "of", "1000 W/m²):", "3 V"}
	if !slices.Equal(words, want) {
		t.Errorf("%q", words)
	}
}
