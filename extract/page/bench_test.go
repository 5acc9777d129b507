package page

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// BenchmarkSheets compares, file by file and in one run, this reader with poppler's "pdftotext -layout", which gives text only. Once a
// process is running, text and second reading together should take no more than three times as long. The time for looking at the
// rendered page, which only some sheets need, is reported apart.
//
//	go test ./extract/page -run '^$' -bench Sheets
//	PVTALLY_BENCH_SHEETS='FOLDER/*.pdf' go test …
func BenchmarkSheets(b *testing.B) {
	program, err := exec.LookPath("pdftotext")
	if err != nil {
		b.Skip("pdftotext is not installed")
	}
	pattern := os.Getenv("PVTALLY_BENCH_SHEETS")
	if pattern == "" {
		pattern = "../../testdata/sheets/*.pdf"
	}
	for _, file := range sheetsFor(b, pattern) {
		data, err := os.ReadFile(file)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(filepath.Base(file), func(b *testing.B) {
			ctx := context.Background()
			if _, err := PDF(ctx, file, data, Options{}); err != nil { // start the helpers
				b.Skip(err)
			}
			_, _ = SecondReading(ctx, data, Options{})
			var theirs, text, both, looked time.Duration
			for b.Loop() {
				start := time.Now()
				if err := exec.Command(program, "-layout", file, "-").Run(); err != nil {
					b.Fatal(err)
				}
				theirs += time.Since(start)

				start = time.Now()
				pages, err := PDF(ctx, file, data, Options{})
				if err != nil {
					b.Fatal(err)
				}
				text += time.Since(start)
				for _, p := range pages {
					looked += p.Looked
				}

				start = time.Now()
				second := make(chan struct{})
				go func() {
					_, _ = SecondReading(ctx, data, Options{})
					close(second)
				}()
				pages, _ = PDF(ctx, file, data, Options{})
				<-second
				both += time.Since(start)
				for _, p := range pages {
					both -= p.Looked
				}
			}
			milliseconds := func(d time.Duration) float64 { return d.Seconds() * 1000 / float64(b.N) }
			b.ReportMetric(milliseconds(theirs), "pdftotext-ms")
			b.ReportMetric(milliseconds(text-looked), "text-ms")
			b.ReportMetric(milliseconds(both), "text+second-ms")
			b.ReportMetric(milliseconds(looked), "looked-ms")
			b.ReportMetric(float64(both)/float64(theirs), "x-pdftotext")
			b.ReportMetric(0, "ns/op")
		})
	}
}
