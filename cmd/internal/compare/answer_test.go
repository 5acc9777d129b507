package compare

import (
	"regexp"
	"strings"
	"testing"

	"pvtally/schema"
)

func target(t testing.TB, watts, area string) *Site {
	t.Helper()
	s := DefaultSite()
	if watts != "" {
		if err := s.SetTarget(watts); err != nil {
			t.Fatal(err)
		}
	}
	if area != "" {
		if err := s.SetArea(area); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

// TestAnswerOfCommonPractice: two modules of 38 × 66 in, 270 and 260 W, target 5.4 kW (common practice, no source): 20 and 21 modules,
// 5400 and 5460 W; over 20 K the Isc of 8 A drifts by 0.06 and 0.08 A, a difference below the printed power tolerance on a mild site.
func TestAnswerOfCommonPractice(t *testing.T) {
	d := build(t, Input{Site: target(t, "5.4kW", ""), Options: candidates(t, nil, "example-270.json", "example-260.json")})
	want := "For 5400 W you need 20 × A, KR-66S-270 (5400 W) or 21 × B, HG-M66-260 (5460 W); B really has 10 W less per module than A (3.7 %); " +
		"on a mild site (module at 45 °C) heat moves Isc by 0.06 A against 0.08 A, and the difference of 0.02 A (0.2 % of Isc) is below the printed power tolerance of 1.9 %."
	if d.Answer != want {
		t.Errorf("got  %s\nwant %s", d.Answer, want)
	}
}

// value is a cell of the document by section, row and option.
func value(t testing.TB, d *Doc, section, row string, option int) Cell {
	t.Helper()
	for _, s := range d.Sections {
		for _, r := range s.Rows {
			if s.ID == section && r.ID == row {
				return r.Cells[option]
			}
		}
	}
	t.Fatalf("no row %s in %s", row, section)
	return Cell{}
}

// TestPointsAndPercent: a difference of per cent is given in points and in per cent, each by its name.
func TestPointsAndPercent(t *testing.T) {
	d := build(t, Input{Options: candidates(t, nil, "example-270.json", "example-260.json")})
	c := value(t, d, "facts", "efficiency", 1)
	if got := c.against(); got != "-0.6 points, -3.6 %: real" {
		t.Errorf("got %q", got)
	}
	// Per cent of a negative number could be read either way: β of -0.30 after -0.29 %/K is neither more nor less.
	c = value(t, d, "facts", "beta", 1)
	if got := c.against(); got != "-0.01 %/K: "+Within {
		t.Errorf("got %q", got)
	}
}

// TestOneSentence: the answer is one sentence whatever is given.
func TestOneSentence(t *testing.T) {
	stop := regexp.MustCompile(`[.!?]\s`)
	for _, in := range []Input{
		{Options: candidates(t, nil, "example-270.json")},
		{Options: candidates(t, nil, "example-270.json", "example-260.json")},
		{Options: candidates(t, nil, "example-270.json", "example-260.json"), Site: target(t, "", "12 m x 4.5 m")},
		{Options: candidates(t, nil, "example-270.json", "example-260.json"), Site: target(t, "9kW", "12 m x 4.5 m")},
		{Options: candidates(t, nil, "example-270.json", "example-260.json"), Site: target(t, "9kW", "1 m x 1 m")},
		roofInput(t),
	} {
		answer := build(t, in).Answer
		if stop.MatchString(answer) || !strings.HasSuffix(answer, ".") {
			t.Errorf("not one sentence: %s", answer)
		}
	}
}

// TestNonsense: what makes no sense gets a sentence and no number.
func TestNonsense(t *testing.T) {
	drop := func(fields ...string) func(*schema.Sheet) {
		return func(s *schema.Sheet) {
			for _, f := range fields {
				if err := s.Set(f, schema.Number{}); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	for _, c := range []struct {
		name         string
		site         *Site
		edit         func(*schema.Sheet)
		section, row string
		why          string
	}{
		{"area smaller than a module", target(t, "5.4kW", "1.5 m x 0.9 m"), nil, "roof", "count", "takes no module of 1.676 m × 0.965 m"},
		{"the same, rails", target(t, "5.4kW", "1.5 m x 0.9 m"), nil, "roof", "rail", "takes no module of 1.676 m × 0.965 m"},
		{"the same, power", target(t, "5.4kW", "1.5 m x 0.9 m"), nil, "roof", "installed", "takes no module"},
		{"no α", nil, drop("/thermal/alpha_isc_pct_per_k"), "heat", "sunny_isc", "α(Isc) is not printed"},
		{"no β", nil, drop("/thermal/beta_voc_pct_per_k"), "cold", "voc_coefficient", "β(Voc) is not printed"},
		{"no β, no model", nil, drop("/thermal/beta_voc_pct_per_k"), "cold", "voc_model", "no single-diode curve"},
		{"no γ", nil, drop("/thermal/gamma_pmax_pct_per_k"), "heat", "hottest_power", "γ(Pmax) is not printed"},
		{"no γ, no year", nil, drop("/thermal/gamma_pmax_pct_per_k"), "heat", "year_effect", "γ(Pmax) is not printed"},
		{"no NOCT", nil, drop("/thermal/noct_c"), "heat", "sunny_power", "neither NMOT nor NOCT is printed"},
		{"no Pmax", target(t, "5.4kW", ""), drop("/models/0/stc/pmax_w"), "roof", "count", "Pmax is not printed"},
		{"no size", target(t, "5.4kW", ""), drop("/body/length_mm"), "roof", "rail", "the length is not printed"},
		{"no mass", target(t, "5.4kW", ""), drop("/body/mass_kg"), "roof", "load", "the mass is not printed"},
		{"no fuse", nil, drop("/limits/series_fuse_a"), "fuse", "nec_fits", "the maximum series fuse is not printed"},
		{"no Isc", nil, drop("/models/0/stc/isc_a"), "fuse", "nec_fuse", "Isc is not printed"},
	} {
		d := build(t, Input{Site: c.site, Options: candidates(t, c.edit, "example-270.json", "example-260.json")})
		cell := value(t, d, c.section, c.row, 0)
		if !cell.Value.IsZero() || !strings.Contains(cell.Why, c.why) {
			t.Errorf("%s: %q %q, want no number and %q", c.name, cell.Value, cell.Why, c.why)
		}
	}
	for text, want := range map[string]string{
		"0":         "a target of 0 needs no module",
		"0kW":       "a target of 0 needs no module",
		"-5kW":      `"-5kW" is no positive number`,
		"5,4kW":     `"5,4kW" is no positive number`,
		"5 hp":      `unit "hp": W, kW or MW`,
		"9e9kW":     `is no positive number`,
		"9999999MW": "the target in W is",
	} {
		if _, err := ParsePower(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("target %q: %v, want %q", text, err, want)
		}
	}
	for text, want := range map[string]string{
		"12 m": "two sides are expected", "12 x 4.5": "no unit known here", "0 m x 4 m": "along the eaves", "12 m x 4.5 acres": "no unit known here",
		"12 m x": "two sides are expected", "a x b": "no positive number", "1 x 2 x 3 m": "two sides",
	} {
		if _, _, err := ParseArea(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("area %q: %v, want %q", text, err, want)
		}
	}
}

// TestParse: ways to write a target and an area. 39 ft are 11.887 m (1 ft = 0.3048 m, NIST SP 811).
func TestParse(t *testing.T) {
	for text, want := range map[string]float64{"5.4kW": 5400, "5400": 5400, "5400 W": 5400, "5.4 kWp": 5400, "0.0054 MW": 5400} {
		if got, err := ParsePower(text); err != nil || got < want-1e-9 || got > want+1e-9 {
			t.Errorf("%q: %v %v, want %v", text, got, err, want)
		}
	}
	for _, c := range []struct {
		text string
		w, d float64
	}{{"12 m x 4.5 m", 12, 4.5}, {"12x4.5m", 12, 4.5}, {"12 × 4.5 m", 12, 4.5}, {"39 ft x 15 ft", 11.8872, 4.572}, {"1200 cm x 4500 mm", 12, 4.5}, {`468" x 15'`, 11.8872, 4.572}} {
		if w, d, err := ParseArea(c.text); err != nil || w < c.w-1e-9 || w > c.w+1e-9 || d < c.d-1e-9 || d > c.d+1e-9 {
			t.Errorf("%q: %v × %v %v", c.text, w, d, err)
		}
	}
}

// TestShort: an area that takes fewer than the target needs says so, and all sums stand on what lies.
func TestShort(t *testing.T) {
	d := build(t, Input{Site: target(t, "9kW", "12 m x 4.5 m"), Options: candidates(t, nil, "example-270.json")})
	if want := "The area takes only 28 of the 34 × A, KR-66S-270 (7560 W)"; !strings.HasPrefix(d.Answer, want) {
		t.Errorf("%s, want %s …", d.Answer, want)
	}
	if c := value(t, d, "roof", "installed", 0); c.Value.String() != "7560" {
		t.Errorf("installed %s", c.Value)
	}
}

// TestNoTolerance: without a printed tolerance the difference stands alone.
func TestNoTolerance(t *testing.T) {
	d := build(t, Input{Options: candidates(t, func(s *schema.Sheet) { s.Tolerance = schema.Tolerance{} }, "example-270.json", "example-260.json")})
	if !strings.HasSuffix(d.Answer, "heat moves Isc by 0.06 A against 0.08 A, a difference of 0.02 A (0.2 % of Isc).") {
		t.Error(d.Answer)
	}
}

// TestMonths: twelve months make a climate: its sunny hour is their mean weighted with the light; it has no record low.
func TestMonths(t *testing.T) {
	text := `{"format": "pvtally.site/1", "name": "Kestrel Ridge", "months": [` +
		strings.Repeat(`{"ambient_c": 10, "irradiance_w_m2": 500, "insolation_kwh_m2": 50},`, 6) +
		strings.Repeat(`{"ambient_c": 20, "irradiance_w_m2": 700, "insolation_kwh_m2": 150},`, 5) +
		`{"ambient_c": 20, "irradiance_w_m2": 700, "insolation_kwh_m2": 150}]}`
	s, err := ParseSite([]byte(text), noFile)
	if err != nil {
		t.Fatal(err)
	}
	if h := s.Climate.Sunny; h.Ambient != 17.5 || h.Irradiance != 650 || h.Wind != nil || s.Climate.Hottest.Irradiance != 700 || s.Climate.RecordLow != nil {
		t.Errorf("%+v", s.Climate)
	}
	d := build(t, Input{Site: s, Options: candidates(t, nil, "example-270.json", "example-260.json")})
	// Ross: (10 + 25 × 500/800) × 0.25 + (20 + 25 × 700/800) × 0.75 = 37.8 °C
	if c := value(t, d, "heat", "year_cell", 0); c.Value.String() != "37.8" {
		t.Errorf("year at %s °C", c.Value)
	}
	if c := value(t, d, "cold", "most", 0); c.Why == "" {
		t.Errorf("a string sized without a record low: %s", c.Value)
	}
}

// TestReject: a sheet to be rejected is marked wherever it is looked at.
func TestReject(t *testing.T) {
	list := candidates(t, nil, "example-270.json", "example-260.json")
	list[1].Verdict = "reject"
	d := build(t, Input{Options: list})
	if d.Options[1].Verdict != "reject" || !strings.HasPrefix(d.More[0], "B's sheet is to be rejected") {
		t.Errorf("%+v, %s", d.Options[1], d.More[0])
	}
}

// TestUnlikeTemperatures: NOCT against NMOT is two measurements; the heat of such modules is not judged.
func TestUnlikeTemperatures(t *testing.T) {
	d := build(t, roofInput(t))
	if got := value(t, d, "heat", "hottest_power", 2).Difference.Verdict; got != "not judged: NOCT against NMOT" {
		t.Errorf("got %q", got)
	}
	if got := value(t, d, "heat", "hottest_power", 1).Difference.Verdict; got != Real {
		t.Errorf("got %q", got)
	}
}

// TestUnits: US customary values of the worked module; 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 ft2 = 0.09290304 m2 (NIST SP 811).
func TestUnits(t *testing.T) {
	d := build(t, Input{US: true, Site: target(t, "5.4kW", ""), Options: candidates(t, nil, "example-270.json")})
	for row, want := range map[string]string{"length": "65.98", "width": "37.99", "mass": "39.2", "mass_per_area": "2.25", "noct": "113", "power_per_area": "15.51"} {
		if got := value(t, d, "facts", row, 0).Value.String(); got != want {
			t.Errorf("%s = %s, want %s", row, got, want)
		}
	}
}
