package extract

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"pvtally/extract/page"
)

// The yardstick of the reader's speed is `pdftotext -layout` (poppler-utils) on the same sheets in the same run.
func BenchmarkPdftotext(b *testing.B) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		b.Skip("pdftotext is not installed: apt install poppler-utils")
	}
	files := benchSheets(b)
	for b.Loop() {
		for _, f := range files {
			if err := exec.Command("pdftotext", "-layout", f, os.DevNull).Run(); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkSheets(b *testing.B) {
	files := benchSheets(b)
	for b.Loop() {
		for _, f := range files {
			data, err := os.ReadFile(f)
			if err != nil {
				b.Fatal(err)
			}
			if _, err := Sheets(context.Background(), Source{Name: f, Data: data}, Options{}); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func benchSheets(b *testing.B) []string {
	files, err := filepath.Glob(filepath.Join(sheetsFolder, "*.pdf"))
	if err != nil || len(files) < 20 {
		b.Fatalf("want the invented sheets, found %d (%v)", len(files), err)
	}
	return files
}

// BenchmarkAssign is the reader's own share: from words to records, one sheet after the other.
func BenchmarkAssign(b *testing.B) {
	var all [][]page.Page
	for _, f := range benchSheets(b) {
		data, err := os.ReadFile(f)
		if err != nil {
			b.Fatal(err)
		}
		pages, err := page.PDF(context.Background(), f, data, page.Options{})
		if err != nil {
			b.Fatal(err)
		}
		all = append(all, pages)
	}
	for b.Loop() {
		for _, pages := range all {
			read(pages).records()
		}
	}
}
