package compare

import (
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/xeipuuv/gojsonschema"
)

// noFile is for sites that name no weather file.
func noFile(string) ([]byte, error) { return nil, errors.New("could not read it") }

// fault is a file and what is wrong with it, "" for nothing. Loose faults are beyond what the JSON Schema can say.
type fault struct {
	name, text, want string
	loose            bool
}

var siteFaults = []fault{
	{"least", `{"format": "pvtally.site/1"}`, "", false},
	{"all of an hour", `{"format": "pvtally.site/1", "sunny": {"ambient_c": 20, "irradiance_w_m2": 800, "wind_m_s": 2}, "hottest": {"module_c": 70}}`, "", false},
	{"Faiman", `{"format": "pvtally.site/1", "mounting": {"u0_w_m2_k": 25, "u1_w_s_m3_k": 6.84}}`, "", false},
	{"Sandia", `{"format": "pvtally.site/1", "mounting": {"sandia": "glass-polymer-open-rack"}}`, "", false},
	{"no format", `{}`, `/format: found no "format"`, false},
	{"other format", `{"format": "pvtally.site/2"}`, `allowed: "pvtally.site/1"`, false},
	{"unknown key", `{"format": "pvtally.site/1", "max_voltage": 600}`, "max_voltage", false},
	{"unknown key inside", `{"format": "pvtally.site/1", "strings": {"max_voltage": 600}}`, "max_voltage", false},
	{"key of another case", `{"format": "pvtally.site/1", "Target_W": 600}`, "Target_W", false},
	{"target 0", `{"format": "pvtally.site/1", "target_w": 0}`, "target_w is 0", false},
	{"negative target", `{"format": "pvtally.site/1", "target_w": -5}`, "target_w is -5", false},
	{"target as text", `{"format": "pvtally.site/1", "target_w": "5 kW"}`, "target_w", false},
	{"area without depth", `{"format": "pvtally.site/1", "area": {"width_m": 5}}`, "depth_m", false},
	{"area of nothing", `{"format": "pvtally.site/1", "area": {"width_m": 0, "depth_m": 4}}`, "area.width_m is 0", false},
	{"negative setback", `{"format": "pvtally.site/1", "area": {"width_m": 5, "depth_m": 4, "setback": {"left_m": -1}}}`, "area.setback.left_m is -1", false},
	{"setbacks too wide", `{"format": "pvtally.site/1", "area": {"width_m": 5, "depth_m": 4, "setback": {"left_m": 3, "right_m": 2}}}`, "the setbacks leave nothing", true},
	{"half a rail", `{"format": "pvtally.site/1", "racking": {"rails_per_row": 1.5}}`, "rails_per_row", false},
	{"unknown climate", `{"format": "pvtally.site/1", "climate": "nice"}`, `/climate: found "nice", allowed: mild`, false},
	{"eleven months", `{"format": "pvtally.site/1", "months": [` + strings.Repeat(`{},`, 10) + `{}]}`, "/months: found 11, a year has 12", false},
	{"hot month", `{"format": "pvtally.site/1", "months": [{"ambient_c": 99}` + strings.Repeat(`,{}`, 11) + `]}`, "/months/0: ambient_c is 99", false},
	{"windy month", `{"format": "pvtally.site/1", "months": [{"wind_m_s": -1}` + strings.Repeat(`,{}`, 11) + `]}`, "/months/0: wind_m_s is -1", false},
	{"hour without temperature", `{"format": "pvtally.site/1", "hottest": {"irradiance_w_m2": 1000}}`, "/hottest: it needs ambient_c", false},
	{"hour too bright", `{"format": "pvtally.site/1", "hottest": {"ambient_c": 30, "irradiance_w_m2": 10000}}`, "hottest.irradiance_w_m2 is 10000", false},
	{"record low in kelvin", `{"format": "pvtally.site/1", "record_low_c": 251}`, "record_low_c is 251", false},
	{"u0 alone", `{"format": "pvtally.site/1", "mounting": {"u0_w_m2_k": 25}}`, "go together", false},
	{"two mountings", `{"format": "pvtally.site/1", "mounting": {"standoff_mm": 25, "sandia": "glass-polymer-open-rack"}}`, "not several", true},
	{"unknown mounting", `{"format": "pvtally.site/1", "mounting": {"sandia": "roof"}}`, `/mounting/sandia: found "roof"`, false},
	{"voltage 0", `{"format": "pvtally.site/1", "strings": {"max_voltage_v": 0}}`, "strings.max_voltage_v is 0", false},
	{"window upside down", `{"format": "pvtally.site/1", "strings": {"track_min_v": 500, "track_max_v": 200}}`, "above strings.track_max_v", true},
	{"negative strings", `{"format": "pvtally.site/1", "strings": {"parallel": -2}}`, "strings.parallel is -2", false},
	{"twice", `{"format": "pvtally.site/1", "target_w": 1000, "target_w": 2000}`, "a second time", true},
	{"no JSON", `format: pvtally.site/1`, "invalid", true},
}

// TestSiteFile: what a site file may hold, and that its JSON Schema says the same.
func TestSiteFile(t *testing.T) {
	parse := func(text []byte) error { _, err := ParseSite(text, noFile); return err }
	checkFaults(t, SiteSchema(), parse, siteFaults)
	_, err := ParseSite([]byte(`{"format": "pvtally.site/1", "climate": "mild", "weather": "x.epw"}`), func(string) ([]byte, error) { return epwYear(nil), nil })
	if err == nil || !strings.Contains(err.Error(), "one of climate, weather and months") {
		t.Errorf("two climates: %v", err)
	}
	if text, err := os.ReadFile(data + "roof/site.json"); err != nil || parse(text) != nil {
		t.Error("the golden site is refused")
	}
}

// TestPriceFile is the same for prices.
func TestPriceFile(t *testing.T) {
	const head = `{"format": "pvtally.prices/1", "currency": "EUR", "modules": {"a": 1}`
	checkFaults(t, PricesSchema(), func(text []byte) error { _, err := ParsePrices(text); return err }, []fault{
		{"least", head + `}`, "", false},
		{"all", head + `, "rail_per_m": 1, "racking_per_module": 2, "electronics_per_unit": 3, "labour_per_module": 4, "fixed": 0}`, "", false},
		{"a sign", `{"format": "pvtally.prices/1", "currency": "€", "modules": {"a": 1}}`, "", false},
		{"no format", `{"currency": "EUR", "modules": {"a": 1}}`, "/format", false},
		{"no currency", `{"format": "pvtally.prices/1", "modules": {"a": 1}}`, "/currency", false},
		{"a sentence", `{"format": "pvtally.prices/1", "currency": "euros each", "modules": {"a": 1}}`, "/currency", false},
		{"no module", `{"format": "pvtally.prices/1", "currency": "EUR", "modules": {}}`, "/modules", false},
		{"negative price", `{"format": "pvtally.prices/1", "currency": "EUR", "modules": {"a": -1}}`, `the price of "a" is -1`, false},
		{"negative labour", head + `, "labour_per_module": -4}`, "labour_per_module is -4", false},
		{"unknown key", head + `, "labor_per_module": 4}`, "labor_per_module", false},
		{"price as text", `{"format": "pvtally.prices/1", "currency": "EUR", "modules": {"a": "96"}}`, "modules", false},
	})
}

func checkFaults(t *testing.T, schemaText []byte, parse func([]byte) error, list []fault) {
	t.Helper()
	schema, err := gojsonschema.NewSchema(gojsonschema.NewBytesLoader(schemaText))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range list {
		err := parse([]byte(c.text))
		if (c.want == "") != (err == nil) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		} else if err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %q, want %q", c.name, err, c.want)
		}
		if c.loose {
			continue
		}
		result, bad := schema.Validate(gojsonschema.NewStringLoader(c.text))
		if bad != nil || result.Valid() != (err == nil) {
			t.Errorf("%s: the program says %v, the JSON Schema %v (%v)", c.name, err, result, bad)
		}
	}
}

// TestPrices: a price is found by name or alias, whatever the case; a module without one has no cost, and the sentence names it.
func TestPrices(t *testing.T) {
	p, err := ParsePrices([]byte(`{"format": "pvtally.prices/1", "currency": "EUR", "modules": {"kr-66s-270": 80}, "labour_per_module": 20}`))
	if err != nil {
		t.Fatal(err)
	}
	d := build(t, Input{Site: target(t, "5.4kW", ""), Prices: p, Options: candidates(t, nil, "example-270.json", "example-260.json")})
	if got := value(t, d, "cost", "total", 0).Value.String(); got != "2000.00" {
		t.Errorf("20 × (80 + 20) = %s", got)
	}
	if c := value(t, d, "cost", "total", 1); c.Why != `the prices name no "HG-M66-260"` || !c.Value.IsZero() {
		t.Errorf("%+v", c)
	}
	if !strings.HasSuffix(d.Answer, "A costs 2000.00 EUR in all.") {
		t.Error(d.Answer)
	}
}

// TestBreakEven: with B at its break-even price the two cost the same.
func TestBreakEven(t *testing.T) {
	in := roofInput(t)
	d := build(t, in)
	in.Prices.modules[key("WZ-T48-455")] = value(t, d, "cost", "break_even", 1).Value.Float()
	d = build(t, in)
	a, b := value(t, d, "cost", "total", 0).Value.Float(), value(t, d, "cost", "total", 1).Value.Float()
	if diff := a - b; diff < -0.11 || diff > 0.11 { // twenty modules of half a cent
		t.Errorf("%v and %v", a, b)
	}
}

func FuzzParseSite(f *testing.F) {
	for _, c := range siteFaults {
		f.Add([]byte(c.text))
	}
	options := candidates(f, nil, "example-270.json", "example-260.json")
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := ParseSite(text, noFile)
		if err != nil {
			return
		}
		d, err := Build(Input{Site: s, Options: options})
		if err != nil {
			t.Fatal(err)
		}
		for _, form := range []string{"text", "json", "html"} {
			write(t, form, d)
		}
	})
}
