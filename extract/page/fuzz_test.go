package page

import (
	"context"
	"errors"
	"testing"
	"time"
)

// FuzzPDF feeds damaged PDFs. They are read in this process, where the fuzzer sees what its changes reach, and where code can be
// stopped; any panic, endless loop or error without a remedy fails.
func FuzzPDF(f *testing.F) {
	f.Add(one(text(20, 200, 10, "Pmax 400 W") + "0.5 g 20 100 50 20 re f 20 20 m 90 20 l S"))
	f.Add(doc{pages: []leaf{{content: text(20, 200, 10, "1"), entries: "/Rotate 90 /CropBox [10 10 90 90]"}}, locked: true}.bytes())
	f.Add(bomb(2))
	f.Add(doc{catalog: "/OCProperties << /OCGs [5 0 R] /D << /OFF [5 0 R] >> >>", extra: []string{"<< /Type /OCG /Name (a) >>"}, pages: []leaf{{content: "/OC /L1 BDC q 0 0 9 9 re W n " + text(2, 2, 5, "1") + "Q EMC", resources: "/Properties << /L1 5 0 R >>"}}}.bytes())
	f.Fuzz(func(t *testing.T, data []byte) {
		pages, err := readPDF(context.Background(), "fuzz.pdf", data, Options{MaxPages: 5, Deadline: 5 * time.Second})
		var e *Error
		if err != nil && (!errors.As(err, &e) || e.Remedy == "") {
			t.Fatalf("an error without a remedy: %v", err)
		}
		for _, p := range pages {
			if !(p.Width > 0 && p.Height > 0) {
				t.Fatalf("page %d is %v x %v", p.Number, p.Width, p.Height)
			}
			for _, w := range p.Words {
				if w.Text == "" || len(w.Edges) != len([]rune(w.Text))+1 {
					t.Fatalf("word %q with %d edges", w.Text, len(w.Edges))
				}
			}
		}
	})
}

// FuzzSecond feeds the second reader, which may fail but must not bring its helper down other than by time and memory.
func FuzzSecond(f *testing.F) {
	f.Add(one(text(20, 200, 10, "Pmax 400 W")))
	f.Add(doc{pages: []leaf{{content: "BT /F1 9 Tf [(1) 3 (2)] TJ (3) ' 1 2 (4) \" ET"}}}.bytes())
	f.Fuzz(func(t *testing.T, data []byte) {
		_, _ = SecondReading(context.Background(), data, Options{})
	})
}

// FuzzOpen feeds text and HTML.
func FuzzOpen(f *testing.F) {
	f.Add([]byte("<table><tr><td colspan=2 rowspan=3>a<td>b</table><dl><dt>x<dd>y</dl>"))
	f.Add([]byte("| a | b |\n|---|---|\n| 1 | 2 |\n\nx\ty\n"))
	f.Add([]byte("\xff\xfea\x00\t\x00b\x00"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if Sniff(data) == KindPDF {
			return
		}
		pages, err := Open(context.Background(), "fuzz", data, Options{})
		var e *Error
		if err != nil && (!errors.As(err, &e) || e.Remedy == "") {
			t.Fatalf("an error without a remedy: %v", err)
		}
		for _, p := range pages {
			for _, w := range p.Words {
				if w.Text == "" || len(w.Edges) != len([]rune(w.Text))+1 {
					t.Fatalf("word %q with %d edges", w.Text, len(w.Edges))
				}
			}
		}
	})
}
