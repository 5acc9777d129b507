package extract

import (
	"bytes"
	"context"
	"fmt"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"pvtally/extract/page"
)

// BenchmarkPictures reads sheets without text and has Tesseract read the same pages, rendered, one after another with one thread: the
// yardstick of a picture's reading. Rendering is measured by itself and counts on neither side. "ratio" is the one to the other.
//
//	go test ./extract -run '^$' -bench Pictures -benchtime 1x
func BenchmarkPictures(b *testing.B) {
	need(b, "tesseract")
	sheets := map[string][]byte{
		"kr-hc108, outlined": outlined(b, filepath.Join(sheetsFolder, "kr-hc108.pdf")),
		"ab-m120, scanned":   scanned(b, filepath.Join(sheetsFolder, "ab-m120.pdf"), 300, 0.5),
	}
	for _, file := range pictureSheets(b) {
		sheets[filepath.Base(file)] = must(os.ReadFile(file))
	}
	for name, data := range sheets {
		b.Run(name, func(b *testing.B) {
			var reading, rendering, yardstick time.Duration
			for b.Loop() {
				start := time.Now()
				if _, err := Sheets(context.Background(), Source{Name: name, Data: data}, Options{}); err != nil {
					b.Fatal(err)
				}
				reading += time.Since(start)
				start = time.Now()
				folder := rendered(b, data)
				rendering += time.Since(start)
				start = time.Now()
				pages := must(filepath.Glob(filepath.Join(folder, "*.png")))
				for _, p := range pages {
					cmd := exec.Command("tesseract", p, "stdout", "--dpi", "300", "tsv")
					cmd.Env = append(os.Environ(), "OMP_THREAD_LIMIT=1")
					if err := cmd.Run(); err != nil {
						b.Fatal(err)
					}
				}
				yardstick += time.Since(start)
			}
			n := float64(b.N)
			b.ReportMetric(reading.Seconds()/n, "s/read")
			b.ReportMetric(rendering.Seconds()/n, "s/render")
			b.ReportMetric(yardstick.Seconds()/n, "s/tesseract")
			b.ReportMetric((reading-rendering).Seconds()/yardstick.Seconds(), "ratio")
		})
	}
}

// rendered writes a document's pages as the reader has them rendered.
func rendered(b *testing.B, data []byte) string {
	folder := b.TempDir()
	pages, err := page.PDF(context.Background(), "a.pdf", data, page.Options{})
	if err != nil {
		b.Fatal(err)
	}
	for _, p := range pages {
		dpi := 300 * min(1, 14*72/max(p.Width, p.Height)) // posters are shown as large as paper
		shown, err := page.Render(context.Background(), data, p.Number, dpi)
		if err != nil {
			b.Fatal(err)
		}
		var out bytes.Buffer
		if err := (&png.Encoder{CompressionLevel: png.NoCompression}).Encode(&out, shown); err != nil {
			b.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%03d.png", p.Number)), out.Bytes(), 0o600); err != nil {
			b.Fatal(err)
		}
	}
	return folder
}

// pictureSheets are the real sheets without text, where they are at hand.
func pictureSheets(b *testing.B) (files []string) {
	all, _ := filepath.Glob("../../shared/sheets/*.pdf")
	for _, f := range all {
		data := must(os.ReadFile(f))
		if pages, err := page.PDF(context.Background(), f, data, page.Options{}); err == nil && !page.HasText(pages) {
			files = append(files, f)
		}
	}
	return files
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}
