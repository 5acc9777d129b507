package page

import (
	"bytes"
	"compress/zlib"
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func deflated(s string) string {
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	_, _ = w.Write([]byte(s))
	_ = w.Close()
	return b.String()
}

// drawnOf writes rules and bands in tenths of a point.
func drawnOf(p Page) []string {
	var all []string
	r := func(v float64) float64 { return math.Round(v*10) / 10 }
	for _, x := range p.Rules {
		all = append(all, fmt.Sprintf("rule %g %g %g %g wide %g %06x", r(x.Box.X0), r(x.Box.Y0), r(x.Box.X1), r(x.Box.Y1), r(x.Width), x.Colour))
	}
	for _, x := range p.Bands {
		all = append(all, fmt.Sprintf("band %g %g %g %g %06x", r(x.Box.X0), r(x.Box.Y0), r(x.Box.X1), r(x.Box.Y1), x.Colour))
	}
	return all
}

func TestRulesAndBands(t *testing.T) {
	form := func(matrix, content string) doc {
		return doc{
			extra: []string{stream("/Type /XObject /Subtype /Form /BBox [0 0 400 300] /Matrix ["+matrix+"]", content)},
			pages: []leaf{{content: "q 1 0 0 1 10 20 cm /X1 Do Q", resources: fmt.Sprintf("/XObject << /X1 %d 0 R >>", firstExtra)}},
		}
	}
	plain := func(content string) doc { return doc{pages: []leaf{{content: content}}} }
	tests := []struct {
		name string
		doc  doc
		want []string
	}{
		{"a stroke across", plain("0.5 w 1 0 0 RG 20 200 m 120 200 l S"), []string{"rule 20 100 120 100 wide 0.5 ff0000"}},
		{"a stroke down, scaled", plain("2 0 0 2 0 0 cm 1 w 20 50 m 20 100 l S"), []string{"rule 40 100 40 200 wide 2 000000"}},
		{"a thin filled box is a rule", plain("20 200 100 0.5 re f"), []string{"rule 20 99.8 120 99.8 wide 0.5 000000"}},
		{"a filled box is a band", plain("0.5 g 20 200 100 20 re f"), []string{"band 20 80 120 100 808080"}},
		{"a stroked box is four rules", plain("1 w 20 200 100 20 re S"), []string{"rule 20 100 120 100 wide 1 000000", "rule 120 80 120 100 wide 1 000000", "rule 20 80 120 80 wide 1 000000", "rule 20 80 20 100 wide 1 000000"}},
		{"a grid in one path", plain("20 200 m 120 200 l 20 180 m 120 180 l S"), []string{"rule 20 100 120 100 wide 1 000000", "rule 20 120 120 120 wide 1 000000"}},
		{"slanting lines and curves are drawings", plain("20 200 m 120 240 l S 20 100 m 50 150 80 150 120 100 c S 20 100 m 50 150 80 150 120 100 c f"), nil},
		{"short dashes", plain("20 200 m 21 200 l S"), nil},
		{"what is clipped away", plain("q 0 0 100 100 re W n 20 200 m 120 200 l S 20 50 m 120 50 l S Q"), []string{"rule 20 250 100 250 wide 1 000000"}},
		{"beyond the page", plain("500 200 m 900 200 l S 500 200 50 50 re f"), nil},
		{"neither filled nor stroked", plain("20 200 100 20 re n"), nil},
		{"inside a form", form("1 0 0 1 0 -100", "20 200 100 20 re f"), []string{"band 30 160 130 180 000000"}},
		{"inside a turned form", form("0 1 -1 0 200 0", "20 50 100 20 re f"), []string{"band 140 160 160 260 000000"}},
		{"on a turned page", doc{pages: []leaf{{content: "20 200 m 120 200 l S", entries: "/Rotate 90"}}}, []string{"rule 200 20 200 120 wide 1 000000"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := drawnOf(readOne(t, tt.doc.bytes()))
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// The fast way to a path's points reads PDFium's memory; it must be in use, and say what PDFium says.
func TestSegments(t *testing.T) {
	data := one("20 200 m 120 200 l 120 180 l h 5 5 m 6 7 l S 1 2 30 40 re f")
	err := withGuest(context.Background(), func(g *guest) error {
		handle := g.ptr("FPDF_LoadPage", must(g.openPDF("test.pdf", data)), 0)
		for i := range g.count("FPDFPage_CountObjects", handle) {
			path := g.ptr("FPDFPage_GetObject", handle, uint64(i))
			n := g.count("FPDFPath_CountSegments", path)
			fast := append([]segment(nil), g.segments(path, n)...)
			if g.layout != layoutHolds {
				t.Errorf("the layout of points in memory differs from segmentSize: only the slow way is left")
			}
			if diff := cmp.Diff(g.segmentsByCall(path, n), fast, cmp.AllowUnexported(segment{})); diff != "" {
				t.Errorf("path %d (-by call +from memory)\n%s", i, diff)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// A drawing with more strokes than any table keeps the page within its bounds.
func TestRuleLimit(t *testing.T) {
	p := readOne(t, one(strings.Repeat("20 200 m 120 200 l S 20 100 9 9 re f ", maxRules+500)))
	if len(p.Rules) != maxRules || len(p.Bands) != maxBands {
		t.Errorf("got %d rules and %d bands, want the limits %d and %d", len(p.Rules), len(p.Bands), maxRules, maxBands)
	}
}
