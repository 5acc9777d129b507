package diagnose

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"pvtally/rules"
	"pvtally/schema"
)

// wild is a sheet of random numbers.
func wild(classes int, rng *rand.Rand) *schema.Sheet {
	n := func() schema.Number {
		return schema.MustNumber(fmt.Sprintf("%.*f", rng.IntN(4), (rng.Float64()-0.1)*500))
	}
	e := func() schema.Electrical {
		return schema.Electrical{Pmax: n(), Vmp: n(), Imp: n(), Voc: n(), Isc: n(), Efficiency: n()}
	}
	s := &schema.Sheet{Cell: schema.Cell{Technology: "mono", Count: n()}, Body: schema.Body{Length: n(), Width: n(), Depth: n(), Mass: n()},
		Thermal: schema.Thermal{NMOT: n(), AlphaIsc: n(), BetaVoc: n(), GammaPmax: n(), BetaVocAbs: n()}}
	for i := range classes {
		m := schema.Model{Name: fmt.Sprint("A", i), STC: e(), NMOT: e(), BNPI: e()}
		for range rng.IntN(30) {
			m.RearGain = append(m.RearGain, schema.RearGain{Gain: n(), Electrical: e()})
		}
		s.Models = append(s.Models, m)
	}
	return s
}

// TestHostile: nonsense of any size gives a short answer.
func TestHostile(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for _, classes := range []int{0, 1, 2, 7, 12, maxClasses, maxClasses + 1} {
		s := wild(classes, rng)
		got := Suspects(s, rules.Check(s, rules.Options{}), rules.Options{})
		if len(got) > maxSuspects {
			t.Errorf("%d classes: %d suspects", classes, len(got))
		}
		for _, x := range got {
			if x.Confidence < 0 || x.Confidence > 1 || len(x.Cells) == 0 || x.Cells[0].Field != x.Field {
				t.Errorf("%d classes: %+v", classes, x)
			}
		}
	}
}

// FuzzSuspects: no record makes the diagnosis fail, and what it names is printed on the sheet.
func FuzzSuspects(f *testing.F) {
	f.Add([]byte(`{"format": "pvtally.sheet/1", "models": [{"stc": {"pmax_w": 400, "vmp_v": 31, "imp_a": 13.9, "voc_v": 0, "isc_a": -1}}]}`))
	f.Add([]byte(`{"format": "pvtally.sheet/1", "cell": {"count": 1e9}, "limits": {"system_voltage_v": [5], "temperature_min_c": 40}, "models": [{"name": "5"}, {"stc": {"pmax_w": 1e-300, "vmp_v": 1e300}}]}`))
	f.Add([]byte(`{"format": "pvtally.sheet/1", "also": [{"field": "/body/mass_kg", "printed": "1", "value": 0}], "body": {"mass_kg": 0, "length_mm": 0, "width_mm": 0}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		d, err := schema.Decode(text)
		if err != nil {
			t.Skip()
		}
		for _, x := range Suspects(d.Sheet, rules.Check(d.Sheet, rules.Options{}), rules.Options{}) {
			for _, c := range x.Cells {
				if n, ok := d.Sheet.At(c.Field); !ok || n != c.Printed {
					t.Errorf("%s is not printed as %s", c.Field, c.Printed)
				}
			}
		}
	})
}

// BenchmarkSuspects: sheets of seven classes with all of a record's blocks, and one mistake or two.
func BenchmarkSuspects(b *testing.B) {
	n := schema.MustNumber
	for _, c := range []struct {
		name    string
		printed map[string]string
	}{
		{"digit", map[string]string{"/models/1/stc/imp_a": "13.98"}}, {"length", map[string]string{"/body/length_mm": "1922"}},
		{"two", map[string]string{"/models/1/stc/imp_a": "13.98", "/thermal/beta_voc_pct_per_k": "0.275"}},
	} {
		s := soundBoard(b).sheet
		s.Models = append(s.Models, schema.Model{Name: "KR-HC108-M10-430", STC: schema.Electrical{Pmax: n("430"), Vmp: n("32.37"), Imp: n("13.28"), Voc: n("37.90"), Isc: n("14.06"), Efficiency: n("22.0")},
			NMOT: schema.Electrical{Pmax: n("323.2"), Vmp: n("30.29"), Imp: n("10.67"), Voc: n("35.69"), Isc: n("11.34")}})
		for at, text := range c.printed {
			s.Set(at, n(text))
		}
		found := rules.Check(s, rules.Options{})
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Suspects(s, found, rules.Options{})
			}
		})
	}
}
