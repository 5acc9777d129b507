package main

import (
	"bytes"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"pvtally/cmd/internal/browser"
	"pvtally/cmd/internal/cli"
)

// TestHTML opens the page of a check in headless Chromium: as a phone and as a desk shows it, light and dark. PVTALLY_SCREENSHOTS names a
// folder for pictures to look at.
func TestHTML(t *testing.T) {
	hostile := filepath.Join(t.TempDir(), "hostile.json")
	if err := os.WriteFile(hostile, []byte(hostileRecord), 0o644); err != nil {
		t.Fatal(err)
	}
	sheets := filepath.Join("..", "..", "testdata", "sheets")
	for name, args := range map[string][]string{
		"demo":    {filepath.Join(sheets, "kr-hc144-demo.pdf")},
		"several": {filepath.Join(sheets, "kr-hc144-demo.pdf"), filepath.Join(sheets, "kr-duo.pdf"), filepath.Join(sheets, "store-kr-hc108.html"), "missing.pdf"},
		"hostile": {hostile},
		"nothing": {"missing.pdf"},
	} {
		t.Run(name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), name+".html")
			var errs bytes.Buffer
			cli.Command{Stdout: &errs, Stderr: &errs}.Main(append([]string{"check", "--output", "html", "--out", file}, args...))
			if _, err := os.Stat(file); err != nil {
				t.Fatalf("%v\n%s", err, errs.Bytes())
			}
			lookAt(t, name, file)
		})
	}
}

// TestChangesHTML opens the page of two editions.
func TestChangesHTML(t *testing.T) {
	editions := filepath.Join("..", "..", "testdata", "changes")
	file := filepath.Join(t.TempDir(), "changes.html")
	var errs bytes.Buffer
	c := cli.Command{Stdout: &errs, Stderr: &errs}
	if code := c.Main([]string{"changes", "--output", "html", "--out", file, filepath.Join(editions, "kr-hc108-old.html"), filepath.Join(editions, "kr-hc108-new.html")}); code != cli.Done {
		t.Fatalf("exit code %d\n%s", code, errs.Bytes())
	}
	lookAt(t, "changes", file)
}

// lookAt demands of a page: silence, no request but for itself, contrast and accessibility, nothing that sticks out sideways, a first
// step of the keyboard that leads past the head, every address within it.
func lookAt(t *testing.T, name, file string) {
	t.Helper()
	address := (&url.URL{Scheme: "file", Path: filepath.ToSlash(file)}).String()
	p := browser.Open(t, address)
	for _, view := range []struct {
		name   string
		width  int
		phone  bool
		scheme string
	}{{"phone", 360, true, "light"}, {"desk", 1280, false, "dark"}} {
		p.Media(t, "", view.scheme)
		p.Size(t, view.width, 800, view.phone)
		var width int
		if p.Eval(t, "document.documentElement.scrollWidth", &width); width > view.width {
			t.Errorf("%s: %d wide on %d", view.name, width, view.width)
		}
		for _, fault := range p.Audit(t) {
			t.Errorf("%s: %s", view.name, fault)
		}
		if least, text := p.Contrast(t); least < 4.5 {
			t.Errorf("%s: contrast %.2f of %q", view.name, least, text)
		}
		if folder := os.Getenv("PVTALLY_SCREENSHOTS"); folder != "" {
			p.Screenshot(t, filepath.Join(folder, name+"-"+view.name+".png"))
		}
	}
	p.Press(t, "Tab", 9)
	var focus string
	if p.Eval(t, "document.activeElement.className", &focus); focus != "skip" {
		t.Errorf("the first step of the keyboard leads to %q", focus)
	}
	var lost []string
	p.Eval(t, `[...document.querySelectorAll("[href]")].map(e => e.getAttribute("href")).filter(h => !h.startsWith("data:") && !(h.startsWith("#") && document.getElementById(h.slice(1))))`, &lost)
	if len(lost) > 0 {
		t.Errorf("links that lead nowhere: %q", lost)
	}
	var twice []string
	p.Eval(t, `[...document.querySelectorAll("[id]")].map(e => e.id).filter((id, i, all) => all.indexOf(id) !== i)`, &twice)
	if len(twice) > 0 {
		t.Errorf("addresses given twice: %q", twice)
	}
	seen := p.Seen()
	if len(seen.Console) > 0 {
		t.Errorf("console: %s", seen.Console)
	}
	if others := slices.DeleteFunc(seen.Requests, func(at string) bool { return at == address }); len(others) > 0 {
		t.Errorf("asked of the network: %q", others)
	}
}

// hostileRecord tries to be more than text, and to burst every drawing.
const hostileRecord = `{"format": "pvtally.sheet/1", "maker": "<script>fetch('http://leak.invalid')</script>", "series": "\"><img src=http://leak.invalid/x onerror=alert(1)>",
 "cell": {"technology": "mono-perc", "count": 108}, "body": {"length_mm": 1e300, "width_mm": 1e-300},
 "models": [
  {"name": "</title></svg><style>*{background:url(http://leak.invalid/y)}</style>", "stc": {"pmax_w": 400, "vmp_v": 31.01, "imp_a": 12.9, "voc_v": 1e300, "isc_a": 1e-300}},
  {"name": "javascript:alert(1)", "stc": {"pmax_w": 405, "vmp_v": -31.21, "imp_a": 0, "voc_v": 37.23, "isc_a": 13.87}},
  {"name": "{{.}} ${x} --> ]]>", "stc": {"pmax_w": 410, "vmp_v": 99999999999999999999, "imp_a": 13.05, "voc_v": 37.39, "isc_a": 13.95, "efficiency_pct": 210}}],
 "evidence": {"/models/2/stc/efficiency_pct": {"label": "<b onclick=alert(1)>x</b>", "printed": "<a href='http://leak.invalid'>210</a>", "page": 1, "box": [-500, -500, 900000, 900000]},
  "/models/0/stc/pmax_w": {"label": "x", "printed": "&lt;", "page": 999999, "box": [1, 1, 1, 1]}}}`
