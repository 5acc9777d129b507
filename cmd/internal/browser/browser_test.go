package browser

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestSeesFaults holds the driver to a page that does everything a page of ours must not.
func TestSeesFaults(t *testing.T) {
	file := filepath.Join(t.TempDir(), "bad.html")
	page := `<!doctype html><html><head><title>bad</title><style>p{color:#aaa;background:#fff}</style></head><body>
		<h1>Bad</h1><img src="http://leak.invalid/pixel.png"><p>faint</p>
		<svg viewBox="0 0 100 20" width="400"><rect x="0" y="0" width="100" height="20" fill="#777"/><text x="50" y="14" text-anchor="middle" fill="#888">inked</text></svg>
		<script>console.error("spoke"); throw new Error("threw")</script></body></html>`
	if err := os.WriteFile(file, []byte(page), 0o644); err != nil {
		t.Fatal(err)
	}
	p := Open(t, "file://"+filepath.ToSlash(file))
	seen := p.Seen()
	if !slices.Contains(seen.Requests, "http://leak.invalid/pixel.png") {
		t.Errorf("the request was not seen: %q", seen.Requests)
	}
	for _, want := range []string{"spoke", "threw"} {
		if !strings.Contains(strings.Join(seen.Console, "\n"), want) {
			t.Errorf("%q was not heard: %q", want, seen.Console)
		}
	}
	faults := strings.Join(p.Audit(t), "\n")
	for _, want := range []string{"color-contrast", "image-alt", "html-has-lang"} {
		if !strings.Contains(faults, want) {
			t.Errorf("the audit does not find %s in\n%s", want, faults)
		}
	}
	if least, text := p.Contrast(t); least > 1.5 || !strings.HasPrefix(text, "inked") {
		t.Errorf("least contrast %.2f of %q, want that of the text in the drawing", least, text)
	}
}
