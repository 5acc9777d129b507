package report

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/rules"
	"pvtally/schema"
)

// demo is a sheet of two classes with a finding, partly with evidence.
func demo() *Sheet {
	n := schema.MustNumber
	record := &schema.Sheet{
		Maker: "Kestrel Ridge Solar", Series: "KR-HC108",
		Source: schema.Source{File: "kr.pdf", SHA256: strings.Repeat("ab", 32), Part: 1, Parts: 1},
		Body:   schema.Body{Length: n("1722"), Width: n("1134")},
		Models: []schema.Model{
			{Name: "KR-400", STC: schema.Electrical{Pmax: n("400"), Vmp: n("31.01"), Imp: n("12.90")}},
			{Name: "KR-405", STC: schema.Electrical{Pmax: n("405"), Vmp: n("31.21"), Imp: n("13.98")}},
		},
		Evidence: map[string]schema.Evidence{},
	}
	for i, text := range []string{"12.90 A", "13.98 A"} {
		at := "/models/" + string(rune('0'+i)) + "/stc/imp_a"
		record.Evidence[at] = schema.Evidence{Label: "电流 Imp", Printed: text, Page: 2, Box: schema.Box{300 + 40*float64(i), 400, 330 + 40*float64(i), 408}, By: "text"}
	}
	return &Sheet{File: "kr.json", Record: record, Findings: []rules.Finding{
		{Rule: "body/format", Level: rules.Note, Fields: []string{"/body/length_mm"}, Message: "an uncommon size"},
		{Rule: "stc/power-product", Level: rules.Error, Model: "KR-405",
			Fields:  []string{"/models/1/stc/pmax_w", "/models/1/stc/vmp_v", "/models/1/stc/imp_a", "/models/0/stc/imp_a", "/models/1/stc/voc_v"},
			Message: "Vmp × Imp = 31.21 V × 13.98 A = 436.3 W, printed Pmax 405 W: 7.7 % apart, rounding explains 0.2 %",
			Printed: "405", Implied: []string{"436.09", "436.54"}, DeviationPct: 7.7, RoundingPct: 0.2, Caution: "A licensed professional decides."},
	}}
}

func runOf(entries ...Entry) Run {
	return Run{Version: "v0", Limit: rules.Error, Rules: rules.All(), Entries: slices.Values(entries)}
}

func TestWriteText(t *testing.T) {
	var b strings.Builder
	clear := &Sheet{File: "clear.json", Record: &schema.Sheet{Models: make([]schema.Model, 3)}}
	run := runOf(Entry{Sheet: demo()}, Entry{Unread: &Unread{File: "x.pdf", Problem: "no"}}, Entry{Sheet: clear})
	if err := writeText(&b, run); err != nil {
		t.Fatal(err)
	}
	want := `kr.json: reject (KR-HC108, Kestrel Ridge Solar)
  error    stc/power-product  KR-405
    Vmp × Imp = 31.21 V × 13.98 A = 436.3 W, printed Pmax 405 W: 7.7 % apart, rounding explains 0.2 %
      stc.pmax_w  400  405
                       ^^^
      stc.vmp_v  31.01  31.21
                        ^^^^^
      page 2  电流 Imp  12.90 A  13.98 A
                        ^^^^^^^  ^^^^^^^
  note     body/format
    an uncommon size
      body.length_mm  1722
                      ^^^^

caution: A licensed professional decides.
2 sheets, 5 models: 1 clear, 0 query, 1 reject; 1 error, 0 warnings, 1 note; 1 unread
`
	if diff := cmp.Diff(want, b.String()); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
}

func TestWriteTextColour(t *testing.T) {
	var b strings.Builder
	run := runOf(Entry{Sheet: demo()})
	run.Colour = true
	if err := writeText(&b, run); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(b.String(), "\x1b[1;31merror  \x1b[0m") || !strings.Contains(b.String(), "\x1b[1;4m13.98 A\x1b[0m") || strings.Contains(b.String(), "^^") {
		t.Errorf("%q", b.String())
	}
}

// TestHostileText: nothing a sheet says may reach a terminal or a line break of its own, in any form.
func TestHostileText(t *testing.T) {
	s := demo()
	evil := "\x1b]0;x\x07\u009b2J\u202e\n=1+1|<script>`"
	s.File, s.Record.Maker, s.Record.Series, s.Record.Models[1].Name = evil, evil, evil, evil
	s.Record.Evidence["/models/1/stc/imp_a"] = schema.Evidence{Label: evil, Printed: evil, Page: 1}
	for i := range s.Findings {
		f := &s.Findings[i]
		f.Model, f.Message, f.Printed, f.Caution, f.Implied = evil, evil, evil, evil, []string{evil}
	}
	for _, f := range formats {
		if f.Binary {
			continue
		}
		t.Run(f.Name, func(t *testing.T) {
			var b strings.Builder
			if err := f.Write(&b, runOf(Entry{Sheet: s}, Entry{Unread: &Unread{File: evil, Problem: evil, Remedy: evil}})); err != nil {
				t.Fatal(err)
			}
			text := strings.TrimPrefix(b.String(), "\ufeff")
			for _, r := range text {
				if r != '\n' && r != '\r' && unsafe(r) {
					t.Fatalf("%q in %q", r, text)
				}
			}
			if strings.Contains(text, "\n=1+1") {
				t.Errorf("a line break of the sheet's own in %q", text)
			}
		})
	}
}
