package site

import (
	"math"
	"strings"
	"testing"

	"pvtally/schema/relate"
)

// TestFacts: what an invented sheet says, made comparable; worked by hand.
func TestFacts(t *testing.T) {
	m := load(t, "roof/kr-hc108.json")
	area := 1.722 * 1.134
	for id, want := range map[string]Value{
		"pmax":              {V: 425, Interval: relate.Interval{Lo: 424.5, Hi: 430.5}}, // half a watt, and 0/+5 W
		"power_per_area":    {V: 425 / area, Interval: relate.Interval{Lo: 424.5 / (1.7225 * 1.1345), Hi: 430.5 / (1.7215 * 1.1335)}},
		"efficiency":        {V: 21.8, Interval: relate.Interval{Lo: 21.75, Hi: 21.85 + 21.8*5/425}},
		"voc":               {V: 37.73, Interval: relate.Interval{Lo: 37.725 - 0.03*37.73, Hi: 37.735 + 0.03*37.73}}, // ±3 %
		"isc":               {V: 14, Interval: relate.Interval{Lo: 13.995 - 0.42, Hi: 14.005 + 0.42}},
		"nmot":              {V: 43, Interval: relate.Interval{Lo: 40.5, Hi: 45.5}}, // ±2 K
		"bifaciality":       {V: 70, Interval: relate.Interval{Lo: 64.5, Hi: 75.5}}, // ±5 points
		"mass_per_area":     {V: 24.5 / area, Interval: relate.Interval{Lo: 24.45 / (1.7225 * 1.1345), Hi: 24.55 / (1.7215 * 1.1335)}},
		"fuse":              Exactly(25),
		"system_voltage":    Exactly(1500),
		"power_plus":        Exactly(100 * 5 / 425.0),
		"power_minus":       Exactly(0),
		"performance_years": Exactly(30),
		"final_output":      Exactly(84.95),
	} {
		found := false
		for _, f := range Facts {
			if f.ID != id {
				continue
			}
			found = true
			got := f.Of(m)
			if !got.Known() || math.Abs(got.V-want.V)+math.Abs(got.Lo-want.Lo)+math.Abs(got.Hi-want.Hi) > 1e-9 {
				t.Errorf("%s = %v %v %q, want %v %v", id, got.V, got.Interval, got.Why, want.V, want.Interval)
			}
		}
		if !found {
			t.Errorf("no fact %q", id)
		}
	}
	bare := decode(t, []byte(`{"format": "pvtally.sheet/1", "models": [{}]}`))
	for _, f := range Facts {
		if v := f.Of(bare); v.Known() || v.Why == "" {
			t.Errorf("%s of an empty sheet: %v %q", f.ID, v.V, v.Why)
		}
	}
}

// TestAsPrinted: what a sheet prints oddly is used safely and said.
func TestAsPrinted(t *testing.T) {
	m := decode(t, []byte(`{"format": "pvtally.sheet/1", "series": "KR-60", "limits": {"system_voltage_v": [1500, 1000]},
		"thermal": {"beta_voc_pct_per_k": 0.30}, "tolerance": {"power_plus_w": 5, "power_plus_pct": 3, "power_minus_w": 0},
		"models": [{"stc": {"pmax_w": 300, "voc_v": 40.0}}]}`))
	near(t, "β without its minus", m.Beta, -0.30, 0)
	if len(m.Notes) == 0 || !strings.Contains(m.Notes[0], "β(Voc) is printed without its minus") {
		t.Errorf("notes %q", m.Notes)
	}
	near(t, "the lower system voltage", m.SystemVoltage(), 1000, 0)
	if got := m.SystemVoltages(); got != "1500 V and 1000 V" {
		t.Errorf("%q", got)
	}
	near(t, "a tolerance in W and %: the wider", m.PowerTolerance(), 3, 1e-12)
	if m.Name != "KR-60 300 W" {
		t.Errorf("name %q", m.Name)
	}
}

// TestStandoff: the rows of NREL/TP-6A20-67399, section 10.6 (from memory), in inches.
func TestStandoff(t *testing.T) {
	for inches, want := range map[float64]float64{0.4: 18, 1: 11, 2: 6, 3: 2, 3.6: 0, 40: 0} {
		if got := StandoffRise(inches * 25.4); got != want {
			t.Errorf("%v in: %v K, want %v K", inches, got, want)
		}
	}
}

// TestSpan: the worked module between -10 and 65 °C: 75 K at 0.06 %/K of 9.43 A and -0.36 %/K of 38.3 V.
func TestSpan(t *testing.T) {
	isc, voc := decode(t, []byte(sixtyCells)).Span(Exactly(-10), Exactly(65))
	near(t, "Isc", isc, 0.005658*75, 1e-9)
	near(t, "Voc", voc, -0.13788*75, 1e-9)
}

// TestFindClimate: the invented climates by name.
func TestFindClimate(t *testing.T) {
	if c, ok := FindClimate("hot-dry"); !ok || !c.Invented || len(c.Year) != 12 {
		t.Errorf("%+v", c)
	}
	if _, ok := FindClimate("nice"); ok {
		t.Error("a climate of no name")
	}
}
