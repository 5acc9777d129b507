package main

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/rules/diagnose/yardstick"
)

var (
	figures = regexp.MustCompile(`[0-9][0-9.]*( %)?`)
	spaces  = regexp.MustCompile(`\| +\|`)
)

// form is a page with its figures and its rows of figures taken out: what is left comes from the program.
func form(page string) string {
	var out []string
	for _, line := range strings.Split(page, "\n") {
		if row := strings.HasPrefix(line, "| ") && !strings.HasPrefix(line, "| ---") && figures.MatchString(line); row {
			continue
		}
		out = append(out, spaces.ReplaceAllString(figures.ReplaceAllString(line, "0"), "||"))
	}
	return strings.Join(out, "\n")
}

// TestPageForm: CALIBRATION.md has the form that this program writes. Its figures take a minute to make and are not made again here;
// TestYardstick holds the diagnosis to them.
func TestPageForm(t *testing.T) {
	page, err := os.ReadFile("../CALIBRATION.md")
	if err != nil {
		t.Fatal(err)
	}
	var made bytes.Buffer
	var m, two yardstick.Measure
	writePage(&made, &m, &two)
	if diff := cmp.Diff(form(made.String()), form(string(page))); diff != "" {
		t.Errorf("rules/diagnose/CALIBRATION.md is stale: run 'go run ./rules/diagnose/calibrate -page'\n%s", diff)
	}
	if rows := strings.Count(string(page), "\n| 0."); rows != 10 {
		t.Errorf("%d bins, want 10", rows)
	}
}

// TestIsotonic: the share of right ones rises with the model's, whatever the sample.
func TestIsotonic(t *testing.T) {
	var named []yardstick.Named
	for i := range 3000 {
		share := float64(i+1) / 3001
		named = append(named, yardstick.Named{Share: share, Right: (i*7919)%1000 < int(1000*share*share)})
	}
	named = append(named, yardstick.Named{Share: 0, Right: true})
	blocks := isotonic(named)
	last, n := -1.0, 0.0
	for _, b := range blocks {
		if b.n < leastBlock || b.right/b.n <= last {
			t.Errorf("%+v after %v", b, last)
		}
		last, n = b.right/b.n, n+b.n
	}
	if n != 3000 || len(blocks) < 10 {
		t.Errorf("%d blocks of %v", len(blocks), n)
	}
}
