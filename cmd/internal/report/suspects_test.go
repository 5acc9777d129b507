package report

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/rules/diagnose"
	"pvtally/schema"
)

// accused is the demo with its wrong current named, and a row of more values than are listed.
func accused() *Sheet {
	s := demo()
	n := schema.MustNumber
	row := diagnose.Suspect{Field: "/body/length_mm", Confidence: 0.065, Mistake: diagnose.Unknown, Because: "nothing better"}
	for range maxSuspectCells + 2 {
		row.Cells = append(row.Cells, diagnose.Cell{Field: "/body/length_mm", Printed: n("1722")})
	}
	s.Suspects = []diagnose.Suspect{
		{Field: "/models/1/stc/imp_a", Confidence: 0.9666, Mistake: diagnose.OneDigit, Findings: []int{1}, Because: "clears the only finding",
			Cells: []diagnose.Cell{{Field: "/models/1/stc/imp_a", Printed: n("13.98"), WouldBe: n("12.98")}}}, row,
	}
	return s
}

func TestSuspectsText(t *testing.T) {
	var b strings.Builder
	if err := writeText(&b, runOf(Entry{Sheet: accused()})); err != nil {
		t.Fatal(err)
	}
	want := `kr.json: reject (KR-HC108, Kestrel Ridge Solar)
  suspect 97 %  one digit is another
    Imp at STC, KR-405  printed 13.98, would be 12.98, page 2
    clears the only finding
  suspect  6 %  no usual slip explains it
` + strings.Repeat("    Length  printed 1722\n", maxSuspectCells) + `    and 2 values more
    nothing better
  error    stc/power-product  KR-405
`
	if got, _, _ := strings.Cut(b.String(), "    Vmp × Imp"); got != want {
		t.Error(cmp.Diff(want, got))
	}
}

// TestSuspectsJSON: the shape that design calls for; what is unknown is left out.
func TestSuspectsJSON(t *testing.T) {
	var b strings.Builder
	s := accused()
	s.Suspects = s.Suspects[:1]
	s.Suspects[0].Cells = append(s.Suspects[0].Cells, diagnose.Cell{Field: "/models/1/stc/vmp_v", Printed: schema.MustNumber("31.21")})
	if err := writeJSONLines(&b, runOf(Entry{Sheet: s})); err != nil {
		t.Fatal(err)
	}
	var doc struct{ Suspects json.RawMessage }
	if err := json.Unmarshal([]byte(b.String()), &doc); err != nil {
		t.Fatal(err)
	}
	want := `[{"field":"/models/1/stc/imp_a","confidence":0.97,"mistake":"one-digit","cells":[` +
		`{"field":"/models/1/stc/imp_a","key":"models[KR-405].stc.imp_a","label":"电流 Imp","printed":"13.98","would_be":"12.98","page":2,"box":[340.0,400.0,370.0,408.0]},` +
		`{"field":"/models/1/stc/vmp_v","key":"models[KR-405].stc.vmp_v","label":"Vmp (V)","printed":"31.21"}],"findings":[1],"because":"clears the only finding"}]`
	if diff := cmp.Diff(want, string(doc.Suspects)); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
}
