package schema

import (
	"encoding/json"
	"testing"
)

func TestNumber(t *testing.T) {
	tests := []struct {
		text     string
		value    float64
		decimals int
		half     float64
	}{
		{"13.10", 13.1, 2, 0.005},
		{"37.2", 37.2, 1, 0.05},
		{"1500", 1500, 0, 0.5},
		{"0", 0, 0, 0.5},
		{"-0.275", -0.275, 3, 0.0005},
		{"-0", 0, 0, 0.5},
		{"1.5e3", 1500, 1, 50},
		{"1.50E+3", 1500, 2, 5},
		{"45e-2", 0.45, 0, 0.005},
		{"0.000", 0, 3, 0.0005},
		{"0e5", 0, 0, 50000},
		{"1e308", 1e308, 0, 5e307},
		{"4.9e-324", 5e-324, 1, 0},
	}
	for _, tt := range tests {
		t.Run(tt.text, func(t *testing.T) {
			n, err := ParseNumber(tt.text)
			if err != nil {
				t.Fatal(err)
			}
			if n.Float() != tt.value || n.Decimals() != tt.decimals || n.HalfStep() != tt.half || n.String() != tt.text || n.IsZero() {
				t.Errorf("got %v, %d decimals, half step %v, text %q", n.Float(), n.Decimals(), n.HalfStep(), n)
			}
			var back Number
			text, err := json.Marshal(n)
			if err != nil || string(text) != tt.text || json.Unmarshal(text, &back) != nil || back != n {
				t.Errorf("JSON gives %s and back %q (%v)", text, back, err)
			}
		})
	}
}

func TestNotANumber(t *testing.T) {
	for _, text := range []string{
		"", "-", "+1", ".5", "5.", "01", "-01", "1e", "1e+", "0x10", "1_000", "Inf", "NaN", "1,5", " 1", "1 ", "１", "−1",
		"1e309", "-1e999", "1e-400", "1e999999999", "1234567890123456789012345678901234567890.5",
	} {
		if n, err := ParseNumber(text); err == nil {
			t.Errorf("%q passes for %v", text, n.Float())
		}
	}
}

func TestAbsentNumber(t *testing.T) {
	var n Number
	text, err := json.Marshal(n)
	if !n.IsZero() || n.HalfStep() != 0 || n.Decimals() != 0 || err != nil || string(text) != "null" {
		t.Errorf("the zero Number: %s, %v", text, err)
	}
}
