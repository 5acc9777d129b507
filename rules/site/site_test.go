package site

import (
	"fmt"
	"math"
	"os"
	"testing"

	"pvtally/rules/physics"
	"pvtally/schema"
)

// load is the first class of a record in testdata/compare.
func load(t testing.TB, name string) *Module {
	t.Helper()
	data, err := os.ReadFile("../../testdata/compare/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return decode(t, data)
}

func decode(t testing.TB, data []byte) *Module {
	t.Helper()
	doc, err := schema.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return &Modules(doc.Sheet)[0]
}

// sixtyCells is the module of the worked values: the inputs of pvlib's test_fit_desoto as a sheet prints them (α 0.005658 A/K of
// 9.43 A and β -0.13788 V/K of 38.3 V are 0.06 and -0.36 %/K).
const sixtyCells = `{"format": "pvtally.sheet/1", "cell": {"technology": "multi", "count": 60},
	"thermal": {"noct_c": 45, "alpha_isc_pct_per_k": 0.06, "beta_voc_pct_per_k": -0.36, "gamma_pmax_pct_per_k": -0.42686},
	"models": [{"name": "sixty cells", "stc": {"pmax_w": 270.01, "vmp_v": 31.0, "imp_a": 8.71, "voc_v": 38.3, "isc_a": 9.43}}]}`

func near(t *testing.T, what string, got Value, want, tol float64) {
	t.Helper()
	if !got.Known() {
		t.Errorf("%s: no number: %s", what, got.Why)
	} else if math.Abs(got.V-want) > tol {
		t.Errorf("%s = %v, want %v within %v", what, got.V, want, tol)
	}
}

// TestCommonPractice: two modules of 38 × 66 in and 270 and 260 W for 5.4 kW are 20 and 21 modules, 5,400 and 5,460 W; over 20 K an Isc
// of 8 A drifts by 0.06 A with 0.04 %/K and by 0.08 A with 0.051 %/K (common practice, no source).
func TestCommonPractice(t *testing.T) {
	module := 45.0
	for _, c := range []struct {
		file         string
		count, power float64
		drift        float64
	}{{"example-270.json", 20, 5400, 0.06}, {"example-260.json", 21, 5460, 0.08}} {
		m := load(t, c.file)
		near(t, "length", m.Length, 66*25.4, 0.5)
		near(t, "width", m.Width, 38*25.4, 0.5)
		n := m.Needed(5400)
		near(t, "count", n, c.count, 0)
		near(t, "power", m.Pmax.Times(n.V), c.power, 0)
		near(t, "drift", m.At(Hour{Module: &module}, Mounting{}).IscDrift, c.drift, 0.005)
	}
}

// TestColdMorning: the worked module at -10 and -40 °C by the model (independent solver), and by β at -40 °C: 47.26 V; the table's line
// is Voc × factor in every row.
func TestColdMorning(t *testing.T) {
	m := decode(t, []byte(sixtyCells))
	for _, c := range []struct{ low, coefficient, model float64 }{{-10, 38.3 * (1 + 0.0036*35), 43.0943}, {-40, 47.26, 47.1517}} {
		cold := m.OnColdest(c.low)
		near(t, "by coefficient", cold.Coefficient, c.coefficient, 0.005)
		near(t, "by model", cold.Model, c.model, 2e-4)
	}
	for _, c := range []struct{ warm, cold, factor float64 }{
		{24, 20, 1.02}, {19, 15, 1.04}, {14, 10, 1.06}, {9, 5, 1.08}, {4, 0, 1.10}, {-1, -5, 1.12}, {-6, -10, 1.14},
		{-11, -15, 1.16}, {-16, -20, 1.18}, {-21, -25, 1.20}, {-26, -30, 1.21}, {-31, -35, 1.23}, {-36, -40, 1.25},
	} { // NEC Table 690.7(A), °C, from memory
		for _, low := range []float64{c.warm, c.cold, c.cold + 0.5} {
			near(t, fmt.Sprintf("Table 690.7(A) at %g °C", low), m.OnColdest(low).Table, 38.3*c.factor, 1e-9)
		}
	}
	near(t, "between two rows the colder", m.OnColdest(-5.5).Table, 38.3*1.14, 1e-9)
	near(t, "from 25 °C up", m.OnColdest(25).Table, 38.3, 1e-9)
	for what, v := range map[string]Value{"below the table": m.OnColdest(-41).Table, "no coefficient": without(t, "beta_voc_pct_per_k").OnColdest(-10).Coefficient} {
		if v.Known() {
			t.Errorf("%s: %v, want no number", what, v.V)
		}
	}
	thin := decode(t, []byte(`{"format": "pvtally.sheet/1", "cell": {"technology": "cdte", "count": 216}, "models": [{"stc": {"voc_v": 86.5}}]}`))
	if c := thin.OnColdest(-10); c.Table.Known() {
		t.Error("the table holds for silicon only")
	}
}

// without is the worked module with one value not printed.
func without(t *testing.T, field string) *Module {
	doc, err := schema.Decode([]byte(sixtyCells))
	if err != nil {
		t.Fatal(err)
	}
	for _, group := range []string{"/thermal/", "/models/0/stc/"} {
		if _, ok := doc.Sheet.At(group + field); ok {
			if err := doc.Sheet.Set(group+field, schema.Number{}); err != nil {
				t.Fatal(err)
			}
			return &Modules(doc.Sheet)[0]
		}
	}
	t.Fatalf("no field %q", field)
	return nil
}

// TestCellTemperature: the tests of pvlib for Ross's form, NREL's (NREL/TP-6A20-67399, section 10.6), Faiman's and Sandia's.
func TestCellTemperature(t *testing.T) {
	still, gale := 1.0, 5.0
	noct := func(v float64) *Module {
		m := &Module{NMOT: None("not printed"), NOCT: Exactly(v), Pmax: Exactly(200), Area: Exactly(1), Efficiency: None("not printed")}
		return m
	}
	nmot := &Module{NMOT: Exactly(50), NOCT: None("not printed")}
	glass := physics.GlassGlassOpenRack
	for _, c := range []struct {
		name  string
		m     *Module
		h     Hour
		mount Mounting
		want  float64
	}{
		{"Ross 1000", nmot, Hour{30, 1000, nil, nil}, Mounting{}, 67.5},
		{"Ross 800", nmot, Hour{20, 800, nil, nil}, Mounting{}, 50},
		{"Ross 700", nmot, Hour{30, 700, nil, nil}, Mounting{}, 56.25},
		{"Ross 600", noct(50), Hour{40, 600, nil, nil}, Mounting{}, 62.5},
		{"NREL with wind, efficiency 0.2", noct(45), Hour{25, 1000, &still, nil}, Mounting{}, 55.230790492},
		{"Faiman", nmot, Hour{20, 900, &gale, nil}, Mounting{Faiman: &Faiman{25, 6.84}}, 35.203},
		{"Faiman, other coefficients", nmot, Hour{20, 900, &gale, nil}, Mounting{Faiman: &Faiman{22, 6}}, 37.308},
		{"Faiman, 500", nmot, Hour{10, 500, &gale, nil}, Mounting{Faiman: &Faiman{25, 6.84}}, 18.446},
		{"Sandia", nmot, Hour{20, 900, &gale, nil}, Mounting{Sandia: &glass}, 43.509},
		{"given", nmot, Hour{20, 900, &gale, &gale}, Mounting{}, 5},
	} {
		near(t, c.name, c.m.CellTemperature(c.h, c.mount), c.want, 1e-3)
	}
	// A gap of 50 mm to the roof makes NOCT 6 K warmer (NREL/TP-6A20-67399, from memory): at 800 W/m2 the cell as well.
	gap := 50.0
	near(t, "close to a roof", nmot.CellTemperature(Hour{20, 800, nil, nil}, Mounting{Standoff: &gap}), 56, 1e-9)
	none := &Module{NMOT: None("not printed"), NOCT: None("not printed")}
	if v := none.CellTemperature(Hour{20, 800, nil, nil}, Mounting{}); v.Known() {
		t.Errorf("without NMOT and NOCT: %v, want no number", v.V)
	}
}

// TestHeat: the worked module by the model at the conditions of the reference (independent solver), by γ as 0.8 (1 + γ (T - 25)).
func TestHeat(t *testing.T) {
	m := decode(t, []byte(sixtyCells))
	forty5, fifty := 45.0, 50.0
	near(t, "model, 800 W/m2, 45 °C", m.At(Hour{Irradiance: 800, Module: &forty5}, Mounting{}).Model, 198.410, 2e-3)
	near(t, "γ, 800 W/m2, 45 °C", m.At(Hour{Irradiance: 800, Module: &forty5}, Mounting{}).Power, 197.57, 0.01)
	near(t, "model, 1000 W/m2, 50 °C", m.At(Hour{Irradiance: 1000, Module: &fifty}, Mounting{}).Model, 240.770, 2e-3)
	near(t, "drift of Voc", m.At(Hour{Module: &fifty}, Mounting{}).VocDrift, -0.0036*38.3*25, 1e-9)
	printed, calculated := m.NominalPower()
	if printed.Known() {
		t.Error("no power at NOCT is printed")
	}
	near(t, "power at NOCT", calculated, 197.57, 0.01)
	if h := without(t, "gamma_pmax_pct_per_k").At(Hour{Irradiance: 800, Module: &forty5}, Mounting{}); h.Power.Known() || h.Loss.Known() {
		t.Error("a power without a coefficient")
	}
}

// TestYear: two hours of unlike light, by hand: cells of 65 and 25 °C, three to one in energy, are 55 °C on average.
func TestYear(t *testing.T) {
	m := decode(t, []byte(sixtyCells))
	hot, cool := 65.0, 25.0
	y := m.Over([]Sample{{Hour{Module: &hot}, 3}, {Hour{Module: &cool}, 1}, {Hour{Module: &hot}, 0}}, Mounting{})
	near(t, "cells", y.Cell, 55, 1e-12)
	near(t, "effect", y.Effect, -0.42686*30, 1e-9)
	if y := m.Over(nil, Mounting{}); y.Cell.Known() || y.Effect.Known() {
		t.Error("a year without light has no number")
	}
	for _, c := range Climates {
		s := Site{Climate: c}
		if err := s.Check(); err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
		if mean, sunny, hottest := m.Over(c.Year, Mounting{}).Cell.V, m.CellTemperature(c.Sunny, Mounting{}).V, m.CellTemperature(c.Hottest, Mounting{}).V; !(mean < sunny && sunny < hottest && mean > sunny-15) {
			t.Errorf("%s: cells of %.0f °C over the year, %.0f °C in a sunny hour, %.0f °C in the hottest", c.Name, mean, sunny, hottest)
		}
	}
}

// TestReal: a difference is real only when the intervals of rounding and tolerance part.
func TestReal(t *testing.T) {
	sheet := func(power, tolerance string) *Module {
		return decode(t, fmt.Appendf(nil, `{"format": "pvtally.sheet/1", "tolerance": {%s}, "models": [{"stc": {"pmax_w": %s}}]}`, tolerance, power))
	}
	for _, c := range []struct {
		name    string
		a, b    *Module
		real    bool
		abs, pc float64
	}{
		{"rounding alone parts", sheet("270", ""), sheet("268", ""), true, -2, -100 * 2 / 270.0},
		{"rounding touches", sheet("270", ""), sheet("269", ""), false, -1, -100 / 270.0},
		{"one decimal", sheet("270.0", ""), sheet("269.8", ""), true, -0.2, -100 * 0.2 / 270},
		{"+5 W reaches the next class", sheet("265", `"power_plus_w": 5`), sheet("270", `"power_plus_w": 5`), false, 5, 100 * 5 / 265.0},
		{"+5 W does not reach the second", sheet("260", `"power_plus_w": 5`), sheet("270", `"power_plus_w": 5`), true, 10, 100 * 10 / 260.0},
		{"±3 %", sheet("270", `"power_plus_pct": 3, "power_minus_pct": 3`), sheet("260", `"power_plus_pct": 3, "power_minus_pct": 3`), false, -10, -100 * 10 / 270.0},
	} {
		d, ok := c.b.Pmax.Against(c.a.Pmax)
		if !ok || d.Real != c.real || math.Abs(d.Abs-c.abs) > 1e-9 || math.Abs(d.Pct-c.pc) > 1e-9 {
			t.Errorf("%s: %+v, want %v W, %v %%, real %v", c.name, d, c.abs, c.pc, c.real)
		}
	}
	if _, ok := None("not printed").Against(Exactly(1)); ok {
		t.Error("a difference to nothing")
	}
}
