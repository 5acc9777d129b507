package page

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestProbe(t *testing.T) {
	files, _ := filepath.Glob("../../../shared/sheets/*.pdf")
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		start := time.Now()
		pages, err := PDF(context.Background(), filepath.Base(f), data, Options{})
		words, hidden, rules, bands := 0, 0, 0, 0
		for _, p := range pages {
			words += len(p.Words)
			rules += len(p.Rules)
			bands += len(p.Bands)
			for _, w := range p.Words {
				if w.Hidden != "" {
					hidden++
				}
			}
		}
		t.Log(filepath.Base(f), err, len(pages), "words", words, "hidden", hidden, "rules", rules, "bands", bands, time.Since(start))
	}
}
