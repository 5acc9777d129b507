package report

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xeipuuv/gojsonschema"
	"github.com/xuri/excelize/v2"

	"pvtally/rules"
	"pvtally/rules/diagnose"
	"pvtally/schema"
)

var update = flag.Bool("update", false, "write the goldens of testdata/report anew")

var goldens = filepath.Join("..", "..", "..", "testdata", "report")

// mixed is a run with everything in it: a record with lines, a sheet with pages, one without findings, one that could not be read.
func mixed() Run {
	withLines := demo()
	withLines.Locate = func(pointer string) (Region, bool) {
		line, known := map[string]int{"/models/1/stc/pmax_w": 12, "/models/1/stc/imp_a": 14}[pointer]
		return Region{File: "kr.json", Line: line, Column: 17, End: 20}, known
	}
	withPages := demo()
	withPages.File = "sheets/kr hc108.pdf"
	suspected := demo()
	suspected.File, suspected.Locate = "kr.json", withLines.Locate
	suspected.Suspects = []diagnose.Suspect{{Field: "/models/1/stc/imp_a", Confidence: 0.974, Mistake: diagnose.OneDigit, Findings: []int{1}, Because: "clears the only error",
		Cells: []diagnose.Cell{{Field: "/models/1/stc/imp_a", Printed: schema.MustNumber("13.98"), WouldBe: schema.MustNumber("12.98")}}}}
	clear := &Sheet{File: "clear.json", Record: demo().Record}
	run := runOf(Entry{Sheet: withLines}, Entry{Unread: &Unread{File: "scan.pdf", Page: 2, Problem: "no text", Remedy: "install tesseract-ocr"}},
		Entry{Sheet: clear}, Entry{Sheet: withPages}, Entry{Sheet: suspected})
	run.Rules = []*rules.Rule{{ID: "stc/power-product", Title: "Pmax is Vmp times Imp", Why: "One point of the curve.", Formula: "Pmax = Vmp × Imp",
		Sources: []rules.Source{{Name: "Arithmetic", Tag: "calculated"}}, Levels: []rules.Threshold{{Level: rules.Error, When: "above 1 %"}}, Needs: []string{"models[].stc.pmax_w"}}}
	run.Silenced = func() Silenced {
		return Silenced{Policy: "pvtally.json", Waived: 2, Stale: []Stale{{State: "unused", Rule: "body/sides", Record: "kr.json"}}}
	}
	return run
}

// TestGoldens holds every textual form to its golden: what a change does to a reader must be seen in its diff.
func TestGoldens(t *testing.T) {
	for _, f := range formats {
		if f.Binary {
			continue
		}
		t.Run(f.Name, func(t *testing.T) {
			var b bytes.Buffer
			if err := f.Write(&b, mixed()); err != nil {
				t.Fatal(err)
			}
			path := filepath.Join(goldens, "mixed."+f.Name)
			if *update {
				if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatalf("%v (go test ./cmd/internal/report -update writes it)", err)
			}
			if diff := cmp.Diff(string(want), b.String()); diff != "" {
				t.Errorf("-golden +got (go test ./cmd/internal/report -update writes it anew)\n%s", diff)
			}
		})
	}
}

var zeros = regexp.MustCompile(`"(startLine|startColumn|endColumn|page|rank|\w+Offset)": 0\b`)

// TestSARIFSchema holds the report to the published JSON Schema of SARIF 2.1.0 (sarif-2.1.0-rtm.5.json, see testdata/report/README.md)
// and to what the schema cannot say: rule indexes that point at the rule, no zeros for what is unknown.
func TestSARIFSchema(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(goldens, "sarif-2.1.0-rtm.5.json"))
	if err != nil {
		t.Fatal(err)
	}
	schema, err := gojsonschema.NewSchema(gojsonschema.NewBytesLoader(text))
	if err != nil {
		t.Fatal(err)
	}
	everyRule := mixed()
	everyRule.Rules = rules.All()
	for name, run := range map[string]Run{"mixed": mixed(), "every rule": everyRule, "nothing": runOf()} {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			if err := writeSARIF(&b, run); err != nil {
				t.Fatal(err)
			}
			result, err := schema.Validate(gojsonschema.NewBytesLoader(b.Bytes()))
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range result.Errors() {
				t.Error(e)
			}
			var log sarifLog
			if err := json.Unmarshal(b.Bytes(), &log); err != nil {
				t.Fatal(err)
			}
			for _, r := range log.Runs[0].Results {
				if r.RuleIndex != nil && log.Runs[0].Tool.Driver.Rules[*r.RuleIndex].ID != r.RuleID {
					t.Errorf("index %d is not rule %s", *r.RuleIndex, r.RuleID)
				}
			}
			if zero := zeros.FindString(b.String()); zero != "" {
				t.Errorf("a zero for what is unknown: %s", zero)
			}
		})
	}
}

// TestJUnitXSD holds the report to the XSD of the Jenkins xUnit plugin (junit-10.xsd), which build servers commonly follow.
func TestJUnitXSD(t *testing.T) {
	xmllint, err := exec.LookPath("xmllint")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal(err)
		}
		t.Skip("xmllint is not installed (Debian package libxml2-utils)")
	}
	for name, run := range map[string]Run{"mixed": mixed(), "nothing": runOf()} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "report.xml")
			var b bytes.Buffer
			if err := writeJUnit(&b, run); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			if out, err := exec.Command(xmllint, "--noout", "--nonet", "--schema", filepath.Join(goldens, "junit-10.xsd"), path).CombinedOutput(); err != nil {
				t.Errorf("%v\n%s\n%s", err, out, b.Bytes())
			}
		})
	}
}

func TestXLSX(t *testing.T) {
	var first, second bytes.Buffer
	for _, b := range []*bytes.Buffer{&first, &second} {
		if err := writeXLSX(b, mixed()); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("two runs give different bytes")
	}
	book, err := excelize.OpenReader(&first)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := book.GetRows("findings")
	if err != nil {
		t.Fatal(err)
	}
	if want := 1 + 2 + 1 + 1 + 2 + 2; len(rows) != want {
		t.Errorf("%d rows, want %d", len(rows), want)
	}
	if diff := cmp.Diff(findingColumns, rows[0]); diff != "" {
		t.Errorf("head: -want +got\n%s", diff)
	}
}

func TestXLSXCells(t *testing.T) {
	tests := []struct {
		name, shown string
		cell        Cell
		kind        excelize.CellType
	}{
		{"a literal keeps its decimals", "13.10", Cell{"13.10", true}, excelize.CellTypeUnset},
		{"a whole number", "1500", Cell{"1500", true}, excelize.CellTypeUnset},
		{"a negative number", "-0.350", Cell{"-0.350", true}, excelize.CellTypeUnset},
		{"a formula is a text", "=1+1", Cell{Text: "=1+1"}, excelize.CellTypeInlineString},
		{"a control character", `a\x1bb`, Cell{Text: "a\x1bb"}, excelize.CellTypeInlineString},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			var b bytes.Buffer
			if err := WriteXLSX(&b, "classes", slices.Values([][]Cell{texts("head"), {test.cell}})); err != nil {
				t.Fatal(err)
			}
			book, err := excelize.OpenReader(&b)
			if err != nil {
				t.Fatal(err)
			}
			shown, err := book.GetCellValue("classes", "A2")
			if err != nil {
				t.Fatal(err)
			}
			formula, _ := book.GetCellFormula("classes", "A2")
			kind, _ := book.GetCellType("classes", "A2")
			if shown != test.shown || formula != "" || kind != test.kind {
				t.Errorf("shown as %q, formula %q, type %v; want %q, none, %v", shown, formula, kind, test.shown, test.kind)
			}
		})
	}
}
