package extract

import (
	"bytes"
	"compress/zlib"
	"context"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	xdraw "golang.org/x/image/draw"
	"golang.org/x/image/math/f64"

	"pvtally/schema"
)

var pictures = flag.String("pictures", "", "read these sheets as pictures, by name, or all")

// need finds a program that a test works with; in CI it may not be missing.
func need(t testing.TB, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	switch {
	case err == nil:
	case os.Getenv("CI") != "":
		t.Fatal(err)
	default:
		t.Skip(err)
	}
	return path
}

// outlined gives a sheet with every letter turned into an outline.
func outlined(t testing.TB, sheet string) []byte {
	t.Helper()
	out, err := exec.Command(need(t, "gs"), "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", "-sDEVICE=pdfwrite", "-dNoOutputFonts", "-sOutputFile=-", sheet).Output()
	if err != nil {
		t.Fatalf("gs: %v", err)
	}
	return out
}

// scanned gives a sheet as a scanner does: each page a picture, laid askew by so many degrees.
func scanned(t testing.TB, sheet string, dpi int, skew float64) []byte {
	t.Helper()
	folder := t.TempDir()
	if out, err := exec.Command(need(t, "pdftoppm"), "-png", "-r", fmt.Sprint(dpi), sheet, filepath.Join(folder, "p")).CombinedOutput(); err != nil {
		t.Fatalf("pdftoppm: %v: %s", err, out)
	}
	names, err := filepath.Glob(filepath.Join(folder, "p*.png"))
	if err != nil || len(names) == 0 {
		t.Fatalf("pdftoppm gave no pages (%v)", err)
	}
	slices.Sort(names)
	var pages []image.Image
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		page, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, askew(page, skew))
	}
	return pdfOf(pages, dpi)
}

// askew turns a picture about its middle, on white.
func askew(p image.Image, degrees float64) image.Image {
	out := image.NewRGBA(p.Bounds())
	draw.Draw(out, out.Rect, image.NewUniform(color.White), image.Point{}, draw.Src)
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	x, y := float64(out.Rect.Dx())/2, float64(out.Rect.Dy())/2
	xdraw.BiLinear.Transform(out, f64.Aff3{cos, -sin, x - cos*x + sin*y, sin, cos, y - sin*x - cos*y}, p, p.Bounds(), xdraw.Src, nil)
	return out
}

// pdfOf is a PDF whose pages are nothing but pictures.
func pdfOf(pages []image.Image, dpi int) []byte {
	var b bytes.Buffer
	var at []int
	object := func(format string, args ...any) {
		at = append(at, b.Len())
		fmt.Fprintf(&b, "%d 0 obj\n"+format+"\nendobj\n", append([]any{len(at)}, args...)...)
	}
	b.WriteString("%PDF-1.4\n")
	object("<< /Type /Catalog /Pages 2 0 R >>")
	var kids strings.Builder
	for i := range pages {
		fmt.Fprintf(&kids, "%d 0 R ", 3+3*i)
	}
	object("<< /Type /Pages /Kids [%s] /Count %d >>", kids.String(), len(pages))
	for i, p := range pages {
		size, n := p.Bounds().Size(), 3+3*i
		w, h := float64(size.X)*72/float64(dpi), float64(size.Y)*72/float64(dpi)
		object("<< /Type /Page /Parent 2 0 R /MediaBox [0 0 %g %g] /Contents %d 0 R /Resources << /XObject << /I %d 0 R >> >> >>", w, h, n+1, n+2)
		content := fmt.Sprintf("%g 0 0 %g 0 0 cm /I Do", w, h)
		object("<< /Length %d >>\nstream\n%s\nendstream", len(content), content)
		var pixels bytes.Buffer
		z := zlib.NewWriter(&pixels)
		for y := range size.Y {
			for x := range size.X {
				r, g, bl, _ := p.At(x, y).RGBA()
				_, _ = z.Write([]byte{byte(r >> 8), byte(g >> 8), byte(bl >> 8)})
			}
		}
		_ = z.Close()
		object("<< /Type /XObject /Subtype /Image /Width %d /Height %d /ColorSpace /DeviceRGB /BitsPerComponent 8 /Filter /FlateDecode /Length %d >>\nstream\n%s\nendstream", size.X, size.Y, pixels.Len(), pixels.String())
	}
	start := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(at)+1)
	for _, offset := range at {
		fmt.Fprintf(&b, "%010d 00000 n \n", offset)
	}
	fmt.Fprintf(&b, "trailer\n<< /Size %d /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF\n", len(at)+1, start)
	return b.Bytes()
}

// asPictures are the ways in which a sheet comes without text.
var asPictures = []struct {
	name string
	make func(t testing.TB, sheet string) []byte
}{
	{"outlined", outlined},
	{"scanned at 200 dpi", func(t testing.TB, sheet string) []byte { return scanned(t, sheet, 200, 0.5) }},
	{"scanned at 300 dpi", func(t testing.TB, sheet string) []byte { return scanned(t, sheet, 300, -0.5) }},
}

// tally compares a record read from pictures with that read from text.
type tally struct {
	all, open            int
	wrong, silent, extra []string
}

func tallyOf(want, got []*schema.Sheet) (t tally) {
	for i, w := range want {
		printed, read, open := byGain(values(w)), map[string]string{}, map[string]bool{}
		if i < len(got) {
			read = byGain(values(got[i]))
			for _, u := range got[i].Unresolved {
				open[u.Field] = true
			}
		}
		t.all += len(printed)
		for at, literal := range printed {
			switch text, found := read[at]; {
			case found && text == literal:
			case found:
				t.wrong = append(t.wrong, fmt.Sprintf("%s: %q is read as %q", at, literal, text))
			case open[at]:
				t.open++
			default:
				t.silent = append(t.silent, fmt.Sprintf("%s: %q", at, literal))
			}
		}
		for at, text := range read {
			if _, found := printed[at]; !found {
				t.extra = append(t.extra, fmt.Sprintf("%s: %q", at, text))
			}
		}
	}
	slices.Sort(t.wrong)
	slices.Sort(t.silent)
	slices.Sort(t.extra)
	return t
}

// byGain names the entries of a gain table by their gain, not by their place.
func byGain(all map[string]string) map[string]string {
	out := map[string]string{}
	for at, literal := range all {
		if head, rest, ok := strings.Cut(at, "/rear_gain/"); ok {
			i, field, _ := strings.Cut(rest, "/")
			at = head + "/rear_gain/" + all[head+"/rear_gain/"+i+"/gain_pct"] + "%/" + field
		}
		out[at] = literal
	}
	return out
}

func (t tally) String() string {
	return fmt.Sprintf("%d values, %d unresolved, %d wrong, %d missing in silence, %d that are not there", t.all, t.open, len(t.wrong), len(t.silent), len(t.extra))
}

func readSheets(t testing.TB, name string, data []byte) []*schema.Sheet {
	sheets, err := Sheets(context.Background(), Source{Name: name, Data: data}, Options{})
	if err != nil {
		t.Error(err)
	}
	return sheets
}

// readAsPictures are invented sheets of several languages, producers and layouts that are read as pictures in every test run: two series
// on one sheet, models down and across, pages stored turned, inches and pounds, decimal commas, planted mistakes, drawn warranty curves.
// What is measured on the others (-pictures all): no other values than are printed on most, and some that are missing in silence where
// Tesseract's English model does not know the letters of the language; Chinese and Japanese need models of their own.
var readAsPictures = []string{"ab-m120", "kr-duo", "kr-hc108", "kr-hc144-demo", "pm-60", "td-108"}

// openMost is the share of a sheet's values that may be unresolved: refusing all is not reading.
const openMost = 0.1

// TestPictures reads sheets turned into outlines and into scans that lie askew. Each gives the record that its text gives, but for
// what it lists as unresolved. -pictures all measures the other sheets the same way.
func TestPictures(t *testing.T) {
	need(t, "tesseract")
	for _, name := range sheetsAsked(t) {
		file := filepath.Join(sheetsFolder, name+".pdf")
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		want := readSheets(t, name, data)
		for _, as := range asPictures {
			t.Run(name+"/"+as.name, func(t *testing.T) {
				got := tallyOf(want, readSheets(t, name, as.make(t, file)))
				t.Log(got)
				if len(got.wrong)+len(got.silent)+len(got.extra) > 0 || float64(got.open) > openMost*float64(got.all) {
					t.Errorf("%s\nwrong: %q\nmissing: %q\nnot there: %q", got, got.wrong, got.silent, got.extra)
				}
			})
		}
	}
}

// sheetsAsked are the sheets of every test run, or those that -pictures names.
func sheetsAsked(t *testing.T) []string {
	switch *pictures {
	case "":
		return readAsPictures
	case "all":
		files, err := filepath.Glob(filepath.Join(sheetsFolder, "*.pdf"))
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range files {
			files[i] = strings.TrimSuffix(filepath.Base(f), ".pdf")
		}
		return files
	}
	return strings.Split(*pictures, ",")
}
