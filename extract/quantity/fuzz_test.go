package quantity

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
)

var fuzzSeeds = []string{
	"Voc 37,23 V", "1.318 mm", "- 0.29 %/℃", "18. 3kg", "0 .27", "≥ 17.1", "0 ~ +5 W", "within +3-0% tolerance", "(-0.28±0.028)%/℃",
	"1762±2mm×1134±2mm×30±1mm", "2278 (L) x 1134 (W) x 35 (H) mm", `35.1" + 47.2" (0.9 + 1.2 m)`, "109 ± 5.4 °F (43 ± 3 °C)",
	"-40 °C to +85 °C", "+400, -200 mm / ±1400 mm", "10.52 A10.61 A10.69 A", "（６×１６）", "-0.35%/", "KR-HC108-405 IEC 61215-1:2021",
	"Tel +00-511-5550-1234", "4.5 × 10^-4 /K", "1 722 × 1 134 mm", "\xff1\xfe5 V", "1000,1500 V", "25-year", "AWG 12", "1,234,567.8",
}

// FuzzScan holds what is true of every text: no panic, places that lie in the text and in order, literals that are JSON numbers.
func FuzzScan(f *testing.F) {
	for _, s := range fuzzSeeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		end := 0
		for _, q := range Scan(text) {
			if q.Start < end || q.End <= q.Start || q.End > len(text) {
				t.Fatalf("%q: quantity at %d..%d after %d", text, q.Start, q.End, end)
			}
			end = q.End
			if len(q.Terms) == 0 || len(q.Terms) > maxRow {
				t.Fatalf("%q: %d terms", text, len(q.Terms))
			}
			for _, term := range q.In(V).Terms {
				if term.Start < q.Start || term.End > q.End || term.End <= term.Start {
					t.Fatalf("%q: term at %d..%d outside %d..%d", text, term.Start, term.End, q.Start, q.End)
				}
			}
			for _, term := range q.Terms {
				checkLiteral(t, text, term)
			}
		}
	})
}

func checkLiteral(t *testing.T, text string, term Term) {
	var v float64
	if err := json.Unmarshal([]byte(term.Literal), &v); err != nil || v != term.Value || math.IsInf(v, 0) {
		t.Fatalf("%q: literal %q with value %v: %v", text, term.Literal, term.Value, err)
	}
	if term.Ambiguous != (term.Other != "") || term.Ambiguous && json.Unmarshal([]byte(term.Other), &v) != nil {
		t.Fatalf("%q: other reading %q of %q", text, term.Other, term.Literal)
	}
	for unit := range measures {
		if value, half, literal, ok := Convert(term, term.Unit, unit); ok && !(math.Abs(value-float64(mustFloat(t, literal))) <= half*(1+1e-9)) {
			t.Fatalf("%s %s = %s ± %v %s, exactly %v", term.Literal, term.Unit, literal, half, unit, value)
		}
	}
}

func mustFloat(t *testing.T, literal string) float64 {
	var v float64
	if err := json.Unmarshal([]byte(literal), &v); err != nil {
		t.Fatalf("converted literal %q: %v", literal, err)
	}
	return v
}

// TestScanLongTexts holds that awkward texts of a quarter of a megabyte end: the work is linear in the length, up to maxTerms.
func TestScanLongTexts(t *testing.T) {
	for _, unit := range []string{"1", "1 ", "1,", "1.5 ", "(", "- ", "1-", "a1", "1 x ", "±", " ", "%/", "1000,", "+1 ", "1a", "Tel ", "IEC 1", "1 ± ", "m m ", "1 (", "1/"} {
		Scan(strings.Repeat(unit, 1<<18/len(unit)))
	}
}

func BenchmarkScan(b *testing.B) {
	for _, c := range []struct{ name, text string }{
		{"cell", "37.23 V"},
		{"size", "1722 x 1134 x 30 mm (67.8 × 44.65 × 1.18 in)"},
		{"row", "Maximum Power (Pmax) 405 W 410 W 415 W 420 W 425 W"},
		{"footnote", "STC: irradiance 1000 W/m², cell temperature 25 °C, AM 1.5; tolerance ±3 % according to IEC 60904-3"},
		{"64 kB", strings.Repeat("KR-HC108-405 37.23 V -0.27 %/°C 1722 × 1134 × 30 mm ", 1200)},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.SetBytes(int64(len(c.text)))
			b.ReportAllocs()
			for b.Loop() {
				Scan(c.text)
			}
		})
	}
}
