package revision

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/schema"
)

// sheet is an invented one of two classes.
func sheet() *schema.Sheet {
	n := schema.MustNumber
	s := &schema.Sheet{Format: schema.Format, Maker: "Kestrel Ridge Solar", Series: "KR-HC108", Revision: "V2.1", Issued: "2024-03",
		Cell:     schema.Cell{Technology: "mono-perc", Count: n("108"), Cut: "half"},
		Body:     schema.Body{Length: n("1722"), Width: n("1134"), Mass: n("21.5"), CableLengths: []schema.Number{n("1200"), n("1200")}, Connector: "KR-Lock 4"},
		Thermal:  schema.Thermal{NMOT: n("43"), AlphaIsc: n("0.045"), BetaVoc: n("-0.275"), GammaPmax: n("-0.350")},
		Limits:   schema.Limits{SystemVoltage: []schema.Number{n("1500")}, SeriesFuse: n("25")},
		Warranty: schema.Warranty{ProductYears: n("12"), AnnualLoss: n("0.55")}, Certificates: []string{"IEC 61215", "IEC 61730"}}
	for _, m := range []struct{ name, p, vmp, imp, voc, isc string }{{"KR-400", "400", "31.01", "12.90", "37.07", "13.79"}, {"KR-405", "405", "31.21", "12.98", "37.23", "13.87"}} {
		s.Models = append(s.Models, schema.Model{Name: m.name, STC: schema.Electrical{Pmax: n(m.p), Vmp: n(m.vmp), Imp: n(m.imp), Voc: n(m.voc), Isc: n(m.isc)}})
	}
	return s
}

func TestJudge(t *testing.T) {
	n := schema.MustNumber
	tests := []struct {
		name, key string
		edit      func(*schema.Sheet)
		effect    Effect
		strings   bool
	}{
		{"Voc up", "models[KR-405].stc.voc_v", func(s *schema.Sheet) { s.Models[1].STC.Voc = n("37.83") }, Hurts, true},
		{"Voc down", "models[KR-405].stc.voc_v", func(s *schema.Sheet) { s.Models[1].STC.Voc = n("36.83") }, Helps, false},
		{"Voc at NMOT is no string's", "models[KR-405].nmot.voc_v", func(s *schema.Sheet) { s.Models[1].NMOT.Voc = n("35.01") }, Helps, false},
		{"coefficient steeper", "thermal.beta_voc_pct_per_k", func(s *schema.Sheet) { s.Thermal.BetaVoc = n("-0.285") }, Hurts, true},
		{"coefficient flatter", "thermal.beta_voc_pct_per_k", func(s *schema.Sheet) { s.Thermal.BetaVoc = n("-0.265") }, Helps, false},
		{"coefficient lost its minus", "thermal.beta_voc_pct_per_k", func(s *schema.Sheet) { s.Thermal.BetaVoc = n("0.275") }, Depends, false},
		{"more power is lost in the heat", "thermal.gamma_pmax_pct_per_k", func(s *schema.Sheet) { s.Thermal.GammaPmax = n("-0.360") }, Hurts, false},
		{"α is nobody's gain", "thermal.alpha_isc_pct_per_k", func(s *schema.Sheet) { s.Thermal.AlphaIsc = n("0.055") }, Depends, false},
		{"hotter", "thermal.nmot_c", func(s *schema.Sheet) { s.Thermal.NMOT = n("45") }, Hurts, false},
		{"fuse lower", "limits.series_fuse_a", func(s *schema.Sheet) { s.Limits.SeriesFuse = n("20") }, Hurts, false},
		{"system voltage lower", "limits.system_voltage_v[1500]", func(s *schema.Sheet) { s.Limits.SystemVoltage = []schema.Number{n("1000")} }, Hurts, true},
		{"heavier", "body.mass_kg", func(s *schema.Sheet) { s.Body.Mass = n("24.5") }, Hurts, false},
		{"longer", "body.length_mm", func(s *schema.Sheet) { s.Body.Length = n("1762") }, Depends, false},
		{"cable shorter", "body.cable_length_mm[1200#2]", func(s *schema.Sheet) { s.Body.CableLengths[0] = n("1100") }, Hurts, false},
		{"another connector", "body.connector", func(s *schema.Sheet) { s.Body.Connector = "KR-Lock 5" }, Depends, false},
		{"warranty worse by the year", "warranty.annual_loss_pct", func(s *schema.Sheet) { s.Warranty.AnnualLoss = n("0.60") }, Hurts, false},
		{"warranty longer", "warranty.product_years", func(s *schema.Sheet) { s.Warranty.ProductYears = n("15") }, Helps, false},
		{"warranty gone", "warranty.product_years", func(s *schema.Sheet) { s.Warranty.ProductYears = schema.Number{} }, Hurts, false},
		{"certificate gone", "certificates[IEC 61730]", func(s *schema.Sheet) { s.Certificates = s.Certificates[:1] }, Hurts, false},
		{"certificate added", "certificates[IEC 62716]", func(s *schema.Sheet) { s.Certificates = append(s.Certificates, "IEC 62716") }, Helps, false},
		{"another technology", "cell.technology", func(s *schema.Sheet) { s.Cell.Technology = "mono" }, Depends, false},
		{"more digits", "thermal.gamma_pmax_pct_per_k", func(s *schema.Sheet) { s.Thermal.GammaPmax = n("-0.3500") }, Neutral, false},
		{"within rounding", "body.mass_kg", func(s *schema.Sheet) { s.Body.Mass = n("21.52") }, Neutral, false},
		{"a name", "revision", func(s *schema.Sheet) { s.Revision = "V2.2" }, Neutral, false},
		{"more power of the same name", "models[KR-405].stc.pmax_w", func(s *schema.Sheet) { s.Models[1].STC.Pmax = n("406") }, Helps, false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			next := sheet()
			test.edit(next)
			j := Judge(sheet(), next)
			if len(j.Changes) == 0 {
				t.Fatal("no change")
			}
			c := j.Changes[0]
			if c.Key != test.key || c.Effect != test.effect || c.Strings != test.strings || len(j.Changes) > 1 {
				t.Errorf("%d changes, the first: %s %s, strings %v; want %s %s, %v", len(j.Changes), c.Key, c.Effect, c.Strings, test.key, test.effect, test.strings)
			}
			if c.Effect != Neutral && c.Why == "" && c.Effect != Depends {
				t.Error("no reason given")
			}
		})
	}
}

func TestSize(t *testing.T) {
	next := sheet()
	next.Models[1].STC.Voc = schema.MustNumber("37.8")
	c := Judge(sheet(), next).Changes[0]
	if math.Abs(c.Delta-0.57) > 1e-9 || math.Abs(c.Pct-1.531) > 1e-3 || math.Abs(c.Steps-5.7) > 1e-9 {
		t.Errorf("%+v, want 0.57 V, 1.53 %%, 5.7 steps of the coarser rounding", c)
	}
}

// TestStrings: the longest string is floor(limit / Voc in the cold), Voc in the cold by IEC 62548, Voc (1 + β (T - 25)), or by the factor of
// NEC Table 690.7(A) where that is more; worked by hand below.
func TestStrings(t *testing.T) {
	next := sheet()
	next.Models[1].STC.Voc = schema.MustNumber("38.00")
	// At -5 °C, the table's factor is 1.12: 37.23 × 1.12 = 41.70, 1500 / 41.70 = 35.97; 38.00 × 1.12 = 42.56, 1500 / 42.56 = 35.24: no change.
	// At -6 to -10 °C it is 1.14: 42.44 → 35.34 and 43.32 → 34.63.
	j := Judge(sheet(), next)
	if len(j.Strings) != 1 || j.Strings[0].Model != "KR-405" {
		t.Fatalf("%+v, want one class", j.Strings)
	}
	at := map[int]Fall{}
	for _, f := range j.Strings[0].Falls {
		for low := f.From; low <= f.To; low++ {
			at[low] = f
		}
	}
	if f, falls := at[-5]; falls {
		t.Errorf("-5 °C: %+v", f)
	}
	if diff := cmp.Diff(Fall{-10, -6, 35, 34}, at[-8]); diff != "" {
		t.Errorf("-8 °C: -want +got\n%s", diff)
	}

	steeper := sheet()
	steeper.Thermal.BetaVoc = schema.MustNumber("-0.450") // steeper than the table's 0.40 %/K
	// At -20 °C: 37.07 (1 + 0.0045 × 45) = 44.58, 1500 / 44.58 = 33.65; by the table 37.07 × 1.18 = 43.74: 34.29.
	found := false
	for _, f := range Judge(sheet(), steeper).Strings[0].Falls {
		found = found || f.From <= -20 && -20 <= f.To && f.Old == 34 && f.New == 33
	}
	if !found {
		t.Error("-20 °C: the steeper coefficient breaks no string")
	}

	lower := sheet()
	lower.Limits.SystemVoltage = []schema.Number{schema.MustNumber("1000")}
	if j := Judge(sheet(), lower); len(j.Strings) != 2 || j.Strings[0].Now != 1000 {
		t.Errorf("a lower system voltage: %+v", j.Strings)
	}
	if j := Judge(next, sheet()); len(j.Strings) != 0 {
		t.Errorf("Voc down breaks a string: %+v", j.Strings)
	}
}

func TestSilent(t *testing.T) {
	next := sheet()
	next.Warranty.AnnualLoss = schema.MustNumber("0.60")
	if !Judge(sheet(), next).Silent {
		t.Error("a changed value under the old revision is silent")
	}
	next.Revision = "V2.2"
	if Judge(sheet(), next).Silent || Judge(sheet(), sheet()).Silent {
		t.Error("an announced revision, or none, is not")
	}
}

func TestClasses(t *testing.T) {
	next := sheet()
	next.Models[0].Name, next.Models[0].STC.Pmax = "KR-410", schema.MustNumber("410")
	j := Judge(sheet(), next)
	if diff := cmp.Diff([]Class{{"KR-400", true}, {"KR-410", false}}, j.Classes); diff != "" || len(j.Changes) > 0 {
		t.Errorf("%d changes besides; -want +got\n%s", len(j.Changes), diff)
	}
	renamed := sheet()
	renamed.Models[0].Name = "KR-400-B"
	if j := Judge(sheet(), renamed); len(j.Classes) > 0 || len(j.Changes) != 1 || j.Changes[0].Effect != Neutral {
		t.Errorf("another name for the same power: %+v", j)
	}
}

// TestUndecided: what the reader left open is not gone.
func TestUndecided(t *testing.T) {
	next := sheet()
	next.Warranty.ProductYears = schema.Number{}
	next.Unresolved = []schema.Unresolved{{Field: "/warranty/product_years", Candidates: []string{"12", "15"}, Why: "two values"}}
	if c := Judge(sheet(), next).Changes[0]; c.Effect != Depends {
		t.Errorf("left open by the new edition's reader: %s, %s", c.Effect, c.Why)
	}
	if c := Judge(next, sheet()).Changes[0]; c.Effect != Depends {
		t.Errorf("left open by the old edition's reader: %s, %s", c.Effect, c.Why)
	}
}
