package page

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// readOne reads a document of one page in this process.
func readOne(t *testing.T, data []byte) Page {
	t.Helper()
	pages, err := readPDF(context.Background(), "test.pdf", data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(pages) != 1 {
		t.Fatalf("got %d pages, want 1", len(pages))
	}
	return pages[0]
}

// seen joins the visible words.
func seen(p Page) string {
	var all []string
	for _, w := range p.Words {
		if w.Hidden == Visible {
			all = append(all, w.Text)
		}
	}
	return strings.Join(all, " ")
}

func TestWords(t *testing.T) {
	tests := []struct {
		name, content, want string
	}{
		{"a space parts", text(20, 200, 10, "Maximum power 400 W"), "Maximum power 400 W"},
		{"two objects set tight are one word", text(20, 200, 10, "13") + text(20+11.12, 200, 10, ".55"), "13.55"},
		{"two objects far apart are two", text(20, 200, 10, "13.55") + text(60, 200, 10, "13.62"), "13.55 13.62"},
		{"a gap of a quarter em parts", "BT /F1 10 Tf 20 200 Td [(10.52) -250 (A)] TJ ET", "10.52 A"},
		{"kerning does not part", "BT /F1 10 Tf 20 200 Td [(V) 80 (o) -60 (c)] TJ ET", "Voc"},
		{"letters set wide are one word", "BT /F1 10 Tf 2.5 Tc 20 200 Td (Temperature) Tj ET", "Temperature"},
		{"letters set wide, with a space", "BT /F1 10 Tf 2 Tc 20 200 Td (Cell Type) Tj ET", "Cell Type"},
		{"letters set very wide, where PDFium sees spaces", "BT /F1 10 Tf 4 Tc 20 200 Td (SOLAR) Tj ET", "SOLAR"},
		{"short words without space characters", text(20, 200, 10, "0") + text(28, 200, 10, "~") + text(36.3, 200, 10, "+5") + text(50, 200, 10, "W"), "0 ~ +5 W"},
		{"digits set tight", "BT /F1 10 Tf -0.9 Tc 20 200 Td (49.30 15.92) Tj ET", "49.30 15.92"},
		{"a decimal sign set apart", text(20, 200, 10, "13") + text(20+11.12+1.5, 200, 10, ".") + text(20+11.12+2.78+2.5, 200, 10, "55"), "13.55"},
		{"a comma between two numbers", text(20, 200, 10, "50,") + text(20+13.9+2.5, 200, 10, "60"), "50, 60"},
		{"a line in the wrong order", text(60, 200, 10, "right") + text(20, 200, 10, "left"), "left right"},
		{"a raised digit is no part of the number", text(20, 200, 10, "405") + text(20+16.68, 204, 6, "1"), "405 1"},
		{"pieces in another order", text(20, 200, 10, "89") + text(100, 200, 10, "%") + text(20+11.12, 200, 10, ".4"), "89.4 %"},
		{"a unit that touches the next number stays apart when drawn apart", text(20, 200, 10, "A") + text(60, 100, 10, "x") + text(20+6.67, 200, 10, "10.61"), "A x 10.61"},
		{"a no-break space parts", "BT /F1 10 Tf 20 200 Td (25\\240A) Tj ET", "25 A"},
		{"a soft hyphen that is printed is a minus", "BT /F1 10 Tf 20 200 Td (\\2550.27) Tj ET", "-0.27"},
		{"a hyphen at the end of a line stays", text(20, 200, 10, "-0.29 polycrys-") + text(20, 188, 10, "talline"), "-0.29 polycrys- talline"},
		{"slanted text", "BT /F1 10 Tf 0.866 0.5 -0.5 0.866 20 100 Tm (twenty five years) Tj ET", "twenty five years"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, seen(readOne(t, one(tt.content)))); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// The widths of Helvetica's digits (556), point (278), V (667) and space (278) are those of the Adobe font metrics for the standard
// fonts that ISO 32000-1, 9.6.2.2 refers to.
func TestWordGeometry(t *testing.T) {
	p := readOne(t, one("BT /F2 12 Tf 1 0 0 rg 50 200 Td (37.2 V) Tj ET"))
	if len(p.Words) != 2 {
		t.Fatalf("got %q, want two words", seen(p))
	}
	w := p.Words[0]
	if w.Size != 12 || !about(w.Baseline, 100) || !w.Bold || w.Colour != 0xFF0000 || w.By != ByText || w.Rotation != 0 {
		t.Errorf("got size %v baseline %v bold %v colour %06x by %q rotation %v; want 12, 100, bold, ff0000, text, 0", w.Size, w.Baseline, w.Bold, w.Colour, w.By, w.Rotation)
	}
	want := []float64{50, 50 + 12*0.556, 50 + 12*1.112, 50 + 12*1.390, 50 + 12*1.946}
	for i := range want {
		if !about(w.Edges[i], want[i]) {
			t.Errorf("edges: got %.2f, want %.2f", w.Edges, want)
			break
		}
	}
	if !about(w.Box.X0, 50) || !about(w.Box.X1, want[4]) || w.Box.Y0 >= w.Baseline || w.Box.Y1 <= w.Baseline {
		t.Errorf("box %.2f does not span 50 to %.2f around the baseline", w.Box, want[4])
	}
}

func about(a, b float64) bool { return math.Abs(a-b) < 0.05 }

// A word's place on the page as shown, for turned pages and crop boxes. "KR" stands at (60, 40) from the bottom left of user space.
func TestPlaces(t *testing.T) {
	tests := []struct {
		name, entries string
		width, height float64
		along, across float64 // start in reading direction, baseline
		rotation      int
	}{
		{"upright", "", 400, 300, 60, 260, 0},
		{"turned right", "/Rotate 90", 300, 400, 60, 40, 90},
		{"turned over", "/Rotate 180", 400, 300, -340, 40, 180},
		{"turned left", "/Rotate 270", 300, 400, -340, 260, 270},
		{"turned left, negative", "/Rotate -90", 300, 400, -340, 260, 270},
		{"cropped", "/CropBox [50 30 250 130]", 200, 100, 10, 90, 0},
		{"cropped and turned", "/CropBox [50 30 250 130] /Rotate 90", 100, 200, 10, 10, 90},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := readOne(t, doc{pages: []leaf{{content: text(60, 40, 10, "KR"), entries: tt.entries}}}.bytes())
			if p.Width != tt.width || p.Height != tt.height || len(p.Words) != 1 {
				t.Fatalf("got %v x %v with %d words, want %v x %v with one", p.Width, p.Height, len(p.Words), tt.width, tt.height)
			}
			w := p.Words[0]
			across := w.Baseline
			if tt.rotation%180 != 0 {
				across = 0
				if !(w.Box.X0 <= tt.across && tt.across <= w.Box.X1) {
					t.Errorf("box %.1f does not hold the baseline x = %.1f", w.Box, tt.across)
				}
			} else if !about(across, tt.across) {
				t.Errorf("baseline: got %.2f, want %.2f", across, tt.across)
			}
			if w.Rotation != tt.rotation || !about(w.Edges[0], tt.along) {
				t.Errorf("got rotation %d from %.2f, want %d from %.2f", w.Rotation, w.Edges[0], tt.rotation, tt.along)
			}
		})
	}
}

// Text turned on an upright page: a label that reads upwards along a table's edge.
func TestTurnedText(t *testing.T) {
	p := readOne(t, one("BT /F1 10 Tf 0 1 -1 0 60 40 Tm (Minimum) Tj ET"))
	if len(p.Words) != 1 || p.Words[0].Rotation != 270 || p.Words[0].Text != "Minimum" {
		t.Fatalf("got %+v, want one word that reads upwards", p.Words)
	}
	if w := p.Words[0]; !about(w.Box.Y1, 260) || w.Box.H() < w.Box.W() {
		t.Errorf("box %.1f does not stand upright on y = 260", w.Box)
	}
}

func TestPlain(t *testing.T) {
	tests := []struct {
		name     string
		in, want rune
	}{
		{"letter", 'a', 'a'},
		{"no-break space", ' ', ' '},
		{"thin space", ' ', ' '},
		{"fullwidth form stays", '（', '（'},
		{"zero width space", '\u200b', dropped},
		{"private use is a hole", '\ue123', hole},
		{"unknown is a hole", hole, hole},
		{"degree of the Symbol font", '\uf0b0', '°'},
		{"plus-minus of the Symbol font", '\uf0b1', '±'},
		{"hyphen at a line's end", 2, '-'},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := plain(tt.in); got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

// A font without a map to Unicode: what cannot be read stays a hole.
func TestHole(t *testing.T) {
	font := "<< /Type /Font /Subtype /Type0 /BaseFont /Unknown /Encoding /Identity-H /DescendantFonts [<< /Type /Font /Subtype /CIDFontType2 /BaseFont /Unknown /DW 500 /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> >>] >>"
	d := doc{extra: []string{font}, pages: []leaf{{content: "BT /F1 10 Tf 20 200 Td (25) Tj /F9 10 Tf <00410042> Tj ET", resources: ""}}}
	d.pages[0].content = "BT /F9 10 Tf 20 200 Td <00030004> Tj ET"
	d.pages[0].resources = ""
	data := strings.Replace(string(d.bytes()), "/F2 4 0 R", fmt.Sprintf("/F9 %d 0 R", firstExtra), 1)
	p := readOne(t, []byte(data))
	for _, w := range p.Words {
		if strings.Trim(w.Text, string(hole)) != "" {
			t.Errorf("got %q, want nothing or holes", w.Text)
		}
	}
}

// A glyph that stands for several letters gives them all, each with its share of the box.
func TestLigature(t *testing.T) {
	d := doc{
		extra: []string{
			stream("", "/CIDInit /ProcSet findresource begin begincmap 1 begincodespacerange <00> <FF> endcodespacerange 1 beginbfchar <41> <006600660069> endbfchar endcmap end"),
			"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding /ToUnicode 5 0 R >>",
		},
		pages: []leaf{{content: "BT /F1 10 Tf 20 200 Td (coe) Tj /F9 10 Tf (A) Tj /F1 10 Tf (cient) Tj ET", resources: ""}},
	}
	data := strings.Replace(string(d.bytes()), "/F2 4 0 R", "/F9 6 0 R", 1)
	p := readOne(t, []byte(data))
	if len(p.Words) != 1 || p.Words[0].Text != "coefficient" {
		t.Fatalf("got %q, want one word", seen(p))
	}
	edges := p.Words[0].Edges
	for i := 1; i < len(edges); i++ {
		if edges[i] <= edges[i-1] {
			t.Errorf("edges do not ascend: %.2f", edges)
		}
	}
	// "A" of Helvetica is 0.667 wide
	if third := edges[4] - edges[3]; !about(third, 6.67/3) {
		t.Errorf("the ligature's first letter is %.2f wide, want a third of 6.67", third)
	}
}
