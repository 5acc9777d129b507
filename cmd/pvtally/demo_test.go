package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"pvtally/cmd/internal/cli"
)

// TestDemoSheet: the README's first command names every mistake planted in the demo sheet, on its page.
func TestDemoSheet(t *testing.T) {
	sheets := filepath.Join("..", "..", "testdata", "sheets")
	text, err := os.ReadFile(filepath.Join(sheets, "kr-hc144-demo.expected.json"))
	if err != nil {
		t.Fatal(err)
	}
	var made struct {
		Planted []struct{ Field, Kind string } `json:"_planted"`
	}
	if err := json.Unmarshal(text, &made); err != nil {
		t.Fatal(err)
	}
	if len(made.Planted) == 0 {
		t.Fatal("no planted mistakes listed")
	}
	var out, errs bytes.Buffer
	c := cli.Command{Stdin: nil, Stdout: &out, Stderr: &errs}
	if code := c.Main([]string{"check", "--output", "json", filepath.Join(sheets, "kr-hc144-demo.pdf")}); code != cli.Found {
		t.Fatalf("exit code %d, want %d\n%s", code, cli.Found, errs.Bytes())
	}
	var report struct {
		Sheets []struct{ Findings []struct{ Fields []string } }
	}
	if err := json.Unmarshal(out.Bytes(), &report); err != nil {
		t.Fatal(err)
	}
	var named []string
	for _, f := range report.Sheets[0].Findings {
		named = append(named, f.Fields...)
	}
	for _, p := range made.Planted {
		if !slices.Contains(named, p.Field) {
			t.Errorf("%s (%s) is in no finding", p.Field, p.Kind)
		}
	}
}
