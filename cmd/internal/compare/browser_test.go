package compare

import (
	"os"
	"path/filepath"
	"testing"

	"pvtally/cmd/internal/browser"
)

// TestPageInBrowser: in a browser the page is silent, asks for nothing but itself, and needs no sideways scrolling on a phone.
func TestPageInBrowser(t *testing.T) {
	path := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(path, write(t, "html", build(t, roofInput(t))), 0o644); err != nil {
		t.Fatal(err)
	}
	p := browser.Open(t, "file://"+path)
	p.Size(t, 390, 844, true)
	var width struct{ Page, Window float64 }
	p.Eval(t, `({Page: document.documentElement.scrollWidth, Window: innerWidth})`, &width)
	if width.Page > width.Window {
		t.Errorf("the page is %v wide on a screen of %v", width.Page, width.Window)
	}
	if seen := p.Seen(); len(seen.Console) > 0 || len(seen.Requests) != 1 {
		t.Errorf("console %q, requests %q", seen.Console, seen.Requests)
	}
}
