package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"pvtally/cmd/internal/cli"
)

// TestDemoSuspects: every mistake planted in the demo sheet is named as a suspect, with the value it would be; nothing else is.
func TestDemoSuspects(t *testing.T) {
	sheets := filepath.Join("..", "..", "testdata", "sheets")
	text, err := os.ReadFile(filepath.Join(sheets, "kr-hc144-demo.expected.json"))
	if err != nil {
		t.Fatal(err)
	}
	var made struct {
		Planted []struct {
			Field, Kind string
			Honest      json.Number
			Printed     json.Number
		} `json:"_planted"`
	}
	if err := json.Unmarshal(text, &made); err != nil {
		t.Fatal(err)
	}
	var out, errs bytes.Buffer
	c := cli.Command{Stdout: &out, Stderr: &errs}
	if code := c.Main([]string{"check", "--output", "json", filepath.Join(sheets, "kr-hc144-demo.pdf")}); code != cli.Found {
		t.Fatalf("exit code %d, want %d\n%s", code, cli.Found, errs.Bytes())
	}
	var report struct {
		Sheets []struct {
			Suspects []struct {
				Confidence float64
				Cells      []struct {
					Field   string
					WouldBe json.Number `json:"would_be"`
				}
			}
		}
	}
	if err := json.Unmarshal(out.Bytes(), &report); err != nil {
		t.Fatal(err)
	}
	wouldBe := map[string]json.Number{}
	for _, s := range report.Sheets[0].Suspects {
		for _, cell := range s.Cells {
			wouldBe[cell.Field] = cell.WouldBe
		}
		if s.Confidence < 0.9 {
			t.Errorf("%v: confidence %v, want at least 0.9", s.Cells, s.Confidence)
		}
	}
	for _, p := range made.Planted {
		want, _ := p.Honest.Float64()
		got, err := wouldBe[p.Field].Float64()
		if err != nil || got != want {
			t.Errorf("%s (%s): would be %q, want %s", p.Field, p.Kind, wouldBe[p.Field], p.Honest)
		}
		delete(wouldBe, p.Field)
	}
	if len(made.Planted) == 0 || len(wouldBe) > 0 {
		t.Errorf("%d planted, named beside them: %v", len(made.Planted), wouldBe)
	}
}
