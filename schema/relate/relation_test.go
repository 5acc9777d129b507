package relate

import (
	"math"
	"testing"

	"pvtally/schema"
)

func sheet(pmax, vmp, imp, voc, isc, efficiency string) *schema.Sheet {
	n := func(text string) schema.Number {
		if text == "" {
			return schema.Number{}
		}
		return schema.MustNumber(text)
	}
	return &schema.Sheet{
		Body:   schema.Body{Length: n("1722"), Width: n("1134")},
		Models: []schema.Model{{STC: schema.Electrical{Pmax: n(pmax), Vmp: n(vmp), Imp: n(imp), Voc: n(voc), Isc: n(isc), Efficiency: n(efficiency)}}},
	}
}

func TestPlainRelations(t *testing.T) {
	tests := []struct {
		name     string
		relation Relation
		sheet    *schema.Sheet
		holds    bool
		pct      float64 // unexplained
	}{
		// The record's own example: 31.21 V × 12.98 A = 405.1 W; 405 W / (1.722 m × 1.134 m × 1000 W/m2) = 20.74 %.
		{"product holds", Product, sheet("405", "31.21", "12.98", "", "", ""), true, 0},
		{"one digit of Imp", Product, sheet("405", "31.21", "13.98", "", "", ""), false, 7.02},
		{"efficiency holds", Efficiency, sheet("405", "", "", "", "", "20.7"), true, 0},
		{"cell efficiency printed", Efficiency, sheet("405", "", "", "", "", "22.4"), false, 7.57},
		{"order holds", VoltageOrder, sheet("", "31.21", "", "37.23", "", ""), true, 0},
		{"voltages swapped", VoltageOrder, sheet("", "37.23", "", "31.21", "", ""), false, 19.25},
		{"order within rounding", CurrentOrder, sheet("", "", "13.9", "", "13.87", ""), true, 0},
		{"currents swapped", CurrentOrder, sheet("", "", "13.87", "", "12.98", ""), false, 6.78},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, ok := tt.relation.In(tt.sheet, "/models/0/stc")
			if !ok {
				t.Fatal("a value is missing")
			}
			if got.Holds() != tt.holds || math.Abs(got.Pct-tt.pct) > 0.01 {
				t.Errorf("got %+v, want holds %v at %v %%", got, tt.holds, tt.pct)
			}
		})
	}
	if _, ok := Product.In(sheet("405", "", "12.98", "", "", ""), "/models/0/stc"); ok {
		t.Error("a missing value was judged")
	}
	if _, ok := Product.In(sheet("405", "31", "12.98", "", "", ""), "/models/1/stc"); ok {
		t.Error("a model that is not there was judged")
	}
}
