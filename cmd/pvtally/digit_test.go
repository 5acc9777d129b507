package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pvtally/cmd/internal/cli"
)

// sarifResult is the part of a result that a code host shows.
type sarifResult struct {
	RuleID    string `json:"ruleId"`
	Locations []struct {
		PhysicalLocation struct {
			ArtifactLocation struct{ URI string }
			Region           struct{ StartLine, StartColumn, EndColumn int }
		}
	}
	RelatedLocations []struct {
		PhysicalLocation struct{ ArtifactLocation struct{ URI string } }
		Message          struct{ Text string }
	}
	PartialFingerprints map[string]string
	Properties          struct{ Key, Printed string }
}

// TestOneDigit changes one digit in one record of a catalogue: one new result comes up, at the file and line of the digit, with its findings
// as related locations. A waiver with a reason silences it, and is reported as unused once the digit is mended.
func TestOneDigit(t *testing.T) {
	root := t.TempDir()
	records, err := filepath.Glob(filepath.Join("..", "..", "testdata", "sheets", "*.expected.json"))
	if err != nil || len(records) < 10 {
		t.Fatalf("%d records, %v", len(records), err)
	}
	for _, from := range records {
		if strings.HasPrefix(filepath.Base(from), "store-") {
			continue // the same modules as in other records: a changed digit parts the two, which is a second finding
		}
		text, err := os.ReadFile(from)
		if err != nil {
			t.Fatal(err)
		}
		write(t, filepath.Join(root, "records", strings.Replace(filepath.Base(from), ".expected", "", 1)), text)
	}
	before := results(t, root)
	for _, test := range []struct{ name, record, field, right, wrong string }{
		{"a current", "kr-hc108.json", "imp_a", "13.04", "13.54"},
		{"a voltage", "ov-108.json", "voc_v", "39.16", "33.16"},
		{"a coefficient", "ls-144.json", "gamma_pmax_pct_per_k", "-0.330", "-0.830"},
		{"an efficiency", "ov-108.json", "efficiency_pct", "21.77", "24.77"},
	} {
		t.Run(test.name, func(t *testing.T) {
			file := filepath.Join(root, "records", test.record)
			sound, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			old, edited := fmt.Sprintf("%q: %s", test.field, test.right), fmt.Sprintf("%q: %s", test.field, test.wrong)
			at := bytes.Index(sound, []byte(old))
			if at < 0 {
				t.Fatalf("%s is not in the record", old)
			}
			write(t, file, slices.Concat(sound[:at], []byte(edited), sound[at+len(old):]))
			defer write(t, file, sound)

			after := results(t, root)
			fresh := slices.DeleteFunc(slices.Sorted(maps.Keys(after)), func(print string) bool { _, known := before[print]; return known })
			if len(fresh) != 1 {
				for _, print := range fresh {
					t.Errorf("%+v", after[print])
				}
				t.Fatalf("%d new results, want 1", len(fresh))
			}
			got := after[fresh[0]]
			place := got.Locations[0].PhysicalLocation
			line := 1 + bytes.Count(sound[:at], []byte("\n"))
			column := at + len(old) - len(test.right) - bytes.LastIndexByte(sound[:at], '\n')
			if place.ArtifactLocation.URI != "records/"+test.record || place.Region.StartLine != line || place.Region.StartColumn != column || place.Region.EndColumn != column+len(test.wrong) {
				t.Errorf("%+v, want %s, line %d, column %d", place, test.record, line, column)
			}
			if got.Properties.Printed != test.wrong || !strings.HasSuffix(got.Properties.Key, test.field) {
				t.Errorf("%+v, want %s printed %s", got.Properties, test.field, test.wrong)
			}
			if len(got.RelatedLocations) == 0 || !strings.HasPrefix(got.RelatedLocations[0].Message.Text, got.RuleID+": ") {
				t.Errorf("related locations %+v, want the findings of %s first", got.RelatedLocations, got.RuleID)
			}

			policy, err := json.Marshal(map[string]any{"format": "pvtally.policy/1", "waivers": []map[string]string{{"rule": got.RuleID, "record": "records/" + test.record,
				"field": got.Properties.Key, "printed": got.Properties.Printed, "reason": "misprint, the maker has been asked"}}})
			if err != nil {
				t.Fatal(err)
			}
			write(t, filepath.Join(root, "pvtally.json"), policy)
			defer os.Remove(filepath.Join(root, "pvtally.json"))
			for print, r := range results(t, root) {
				if _, known := before[print]; !known {
					t.Errorf("waived, and still there: %+v", r)
				}
			}
			write(t, file, sound)
			var errs bytes.Buffer
			t.Chdir(root)
			cli.Command{Stdout: io.Discard, Stderr: &errs}.Main([]string{"check", "--fail-on", "never", "records"})
			if want := "a waiver silences nothing: " + got.RuleID + " records/" + test.record; !strings.Contains(errs.String(), want) {
				t.Errorf("mended: %q, want %q", errs.String(), want)
			}
		})
	}
}

// results are those of the catalogue by their fingerprint and file.
func results(t *testing.T, root string) map[string]sarifResult {
	t.Helper()
	t.Chdir(root)
	var out, errs bytes.Buffer
	c := cli.Command{Stdout: &out, Stderr: &errs}
	if code := c.Main([]string{"check", "--fail-on", "never", "--output", "sarif", "records"}); code != cli.Done {
		t.Fatalf("exit code %d\n%s", code, errs.Bytes())
	}
	var log struct {
		Runs []struct{ Results []sarifResult }
	}
	if err := json.Unmarshal(out.Bytes(), &log); err != nil {
		t.Fatal(err)
	}
	all := map[string]sarifResult{}
	for _, r := range log.Runs[0].Results {
		all[r.Locations[0].PhysicalLocation.ArtifactLocation.URI+" "+r.PartialFingerprints["pvtally/1"]] = r
	}
	return all
}

func write(t *testing.T, path string, text []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, text, 0o644); err != nil {
		t.Fatal(err)
	}
}
