package report

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/cmd/internal/draw"
	"pvtally/rules"
	"pvtally/rules/diagnose"
	"pvtally/schema"
)

func TestSpoken(t *testing.T) {
	s := demo().Record
	s.Models[1].RearGain = []schema.RearGain{{Gain: schema.MustNumber("10")}}
	s.Models[0].Name, s.Models[0].STC.Pmax = "", schema.MustNumber("400")
	for _, test := range []struct{ pointer, want string }{
		{"/models/1/stc/imp_a", "Imp at STC, KR-405"},
		{"/models/1/nmot/pmax_w", "Pmax at NMOT, KR-405"},
		{"/models/1/rear_gain/0/pmax_w", "Pmax with 10 % rear gain, KR-405"},
		{"/models/1/thermal/beta_voc_pct_per_k", "β (Voc), KR-405"},
		{"/models/0/stc/imp_a", "Imp at STC, 400 W"},
		{"/models/7/stc/imp_a", "Imp"},
		{"/body/length_mm", "Length"},
		{"/limits/system_voltage_v/0", "System voltage"},
		{"/no/such", "/no/such"},
	} {
		if got := spoken(s, test.pointer); got != test.want {
			t.Errorf("%s: %q, want %q", test.pointer, got, test.want)
		}
	}
}

// TestMarks: suspects say which values are wrong; a finding that none of them explains says it by the value it judges.
func TestMarks(t *testing.T) {
	s := demo()
	alone := s.marks()
	if m := alone["/models/1/stc/pmax_w"]; m == nil || !m.wrong() || m.suspect != 0 {
		t.Errorf("the judged value without a suspect: %+v", m)
	}
	if m := alone["/models/1/stc/imp_a"]; m == nil || m.wrong() {
		t.Errorf("a value that took part: %+v", m)
	}
	s.Suspects = []diagnose.Suspect{{Field: "/models/1/stc/imp_a", Confidence: 0.97, Cells: []diagnose.Cell{{Field: "/models/1/stc/imp_a"}}, Findings: []int{1}}}
	named := s.marks()
	if m := named["/models/1/stc/imp_a"]; !m.wrong() || m.suspect != 1 {
		t.Errorf("the suspect: %+v", m)
	}
	s.Suspects[0].Confidence = 0.07
	if m := s.marks()["/models/1/stc/imp_a"]; m.suspect != 1 || !m.guess {
		t.Errorf("a suspect that is hardly one: %+v", m)
	}
	if m := named["/models/1/stc/pmax_w"]; m.wrong() {
		t.Errorf("a value that the suspect explains: %+v", m)
	}
	if m := named["/body/length_mm"]; m == nil || m.wrong() || !m.judged {
		t.Errorf("a note's value: %+v", m)
	}
	if named["/body/width_mm"] != nil {
		t.Error("a value that nothing speaks of")
	}
}

func TestCommonBeginning(t *testing.T) {
	for _, test := range []struct{ names, want string }{
		{"KR-HC108-400 KR-HC108-405", "KR-HC108-"},
		{"KR-HC108-400 KR-HC108-405M", "KR-HC108-"},
		{"KR400 KR405", ""},
		{"KR-400", ""},
		{"KR-HC- KR-HC-405", ""},
		{"A-1 A-2", ""},
	} {
		s := &schema.Sheet{}
		for _, name := range strings.Fields(test.names) {
			s.Models = append(s.Models, schema.Model{Name: name})
		}
		if got := commonBeginning(s); got != test.want {
			t.Errorf("%s: %q, want %q", test.names, got, test.want)
		}
	}
}

// TestMiddleLine: up to a third of the points may lie anywhere.
func TestMiddleLine(t *testing.T) {
	line := func(ys ...float64) (list []linePoint) {
		for i, y := range ys {
			list = append(list, linePoint{at: draw.Point{X: 400 + 5*float64(i), Y: y}})
		}
		return list
	}
	for _, test := range []struct {
		name   string
		points []linePoint
		slope  float64
		ok     bool
	}{
		{"on a line", line(31, 31.2, 31.4, 31.6), 0.04, true},
		{"one far off", line(31, 31.2, 99, 31.6, 31.8), 0.04, true},
		{"two points", line(31, 31.2), 0, false},
		{"one power", []linePoint{{at: draw.Point{X: 1, Y: 1}}, {at: draw.Point{X: 1, Y: 2}}, {at: draw.Point{X: 1, Y: 3}}}, 0, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			slope, height, ok := middleLine(test.points)
			if ok != test.ok || ok && (math.Abs(slope-test.slope) > 1e-9 || math.Abs(height+400*slope-31) > 1e-9) {
				t.Errorf("slope %g, at 400 W %g, %v; want %g, 31, %v", slope, height+400*slope, ok, test.slope, test.ok)
			}
		})
	}
}

// TestDetailed: a large run shows what is wrong whole, and everything in the table.
func TestDetailed(t *testing.T) {
	var entries []Entry
	for i := range maxDetailed + 40 {
		s := &Sheet{File: fmt.Sprintf("%03d.json", i), Record: &schema.Sheet{Series: fmt.Sprintf("S%03d", i)}}
		if i%10 == 9 {
			s.Findings = []rules.Finding{{Rule: "body/sides", Level: rules.Error, Message: "x"}}
		}
		entries = append(entries, Entry{Sheet: s})
	}
	var b bytes.Buffer
	if err := writeHTML(&b, runOf(entries...)); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	if n := strings.Count(text, `<article id="`); n != maxDetailed {
		t.Errorf("%d sheets are shown whole, want %d", n, maxDetailed)
	}
	for i := range entries {
		if file := fmt.Sprintf("%03d.json", i); !strings.Contains(text, file) {
			t.Errorf("%s is not in the table", file)
		} else if whole := strings.Contains(text, fmt.Sprintf(`<article id="s%d"`, i+1)); i%10 == 9 && !whole {
			t.Errorf("%s has an error and is not shown whole", file)
		}
	}
	if !strings.Contains(text, "40 stand only in this table") {
		t.Error("the reader is not told what is left out")
	}
}

// TestFacsimile: words stand where they are printed, values read are marked, wrong ones framed and linked; what lies beyond the limits is
// left out.
func TestFacsimile(t *testing.T) {
	s := demo()
	s.Suspects = []diagnose.Suspect{{Field: "/models/1/stc/imp_a", Confidence: 0.97, Cells: []diagnose.Cell{{Field: "/models/1/stc/imp_a"}}, Findings: []int{1}}}
	s.Record.Evidence["/body/width_mm"] = schema.Evidence{Printed: "1134", Page: 2, Box: schema.Box{100, 500, 130, 508}}
	words := slices.Repeat([]Word{{Text: "13.98", X0: 340, Y0: 400, X1: 370, Y1: 408, Baseline: 407, Size: 8}}, maxDrawn+5)
	s.Pages = []Page{{Number: 2, Width: 595, Height: 842, Words: append([]Word{{Text: "up", X0: 10, Y0: 100, X1: 18, Y1: 140, Size: 8, Rotation: 270}}, words...), Bands: []Band{{10, 10, 100, 20, 0.9}, {0, 0, 595, 842, 0.9}, {5, 5, 6, 6, 0}}, Lines: []Line{{10, 30, 100, 30, 1}}}}
	pages := newHTMLSheet(1, s).Pages
	if len(pages) != 1 || pages[0].Note != "" {
		t.Fatalf("%d pages, note %q", len(pages), pages[0].Note)
	}
	got := string(pages[0].SVG)
	for name, want := range map[string]int{
		`<text x="340" y="407" font-size="8" textLength="30" lengthAdjust="spacingAndGlyphs">13.98</text>`: maxDrawn - 1,
		`rotate(270 16.2 140)`: 1,
		`class="read"`:         1,
		`class="part"`:         1,
		`class="wrong"`:        1,
		`<a href="#s1-suspect-1" id="s1-2-2" class="flag" aria-label="suspect 1: Imp at STC, KR-405: 13.98 A">`: 1,
		`class="band dark"`: 1, // the page's own ground and white are no bands
		`class="rule"`:      1,
	} {
		if n := strings.Count(got, name); n != want {
			t.Errorf("%d × %s, want %d", n, name, want)
		}
	}
	s.Pages = nil
	if pages := newHTMLSheet(1, s).Pages; len(pages) != 1 || pages[0].Note == "" || strings.Count(string(pages[0].SVG), "<text") < 2 {
		t.Errorf("without the datasheet: %+v", pages)
	}
}

// TestCurves: the figures of the model through the printed values of De Soto's fit as the pvlib library tests it
// (tests/ivtools/sdm/test_desoto.py), moved to -10 °C: Isc 9.2324 A, Voc 43.0943 V, Pmax 309.413 W (calculated with an independent solver).
func TestCurves(t *testing.T) {
	n := schema.MustNumber
	record := &schema.Sheet{Cell: schema.Cell{Technology: "multi", Count: n("60")},
		Thermal: schema.Thermal{NOCT: n("45"), AlphaIscAbs: n("0.005658"), BetaVocAbs: n("-0.13788"), GammaPmax: n("-0.427")},
		Models:  []schema.Model{{Name: "KR-270", STC: schema.Electrical{Pmax: n("270"), Vmp: n("31.0"), Imp: n("8.71"), Voc: n("38.3"), Isc: n("9.43")}}}}
	c := newHTMLSheet(1, &Sheet{Record: record}).Curves
	if c == nil || c.Missing != "" {
		t.Fatalf("%+v", c)
	}
	want := []curveRow{
		{"stc", "STC", "1000 W/m², cell 25 °C", "9.43", "38.30", "8.71", "31.00", "270.0", []string{"9.43", "38.3", "8.71", "31.0", "270"}},
		{"nmot", "NOCT", "800 W/m², cell 45 °C", "7.64", "35.16", "7.02", "28.28", "198.4", nil},
		{"cold", "Cold morning", "1000 W/m², cell −10 °C", "9.23", "43.09", "8.60", "35.99", "309.4", nil},
	}
	if diff := cmp.Diff(want, c.Rows); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
	record.Cell.Count = schema.Number{}
	if c := newHTMLSheet(1, &Sheet{Record: record}).Curves; c == nil || !strings.Contains(c.Missing, "count of cells") {
		t.Errorf("without a count of cells: %+v", c)
	}
}
