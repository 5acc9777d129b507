package page

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
	"math"
	"strings"
	"testing"

	"golang.org/x/image/tiff"
)

// shownAt is a picture of 400 by 300 points at so many dpi.
func shownAt(t testing.TB, dpi float64, content string) image.Image {
	t.Helper()
	shown, err := Render(context.Background(), one(content), 1, dpi)
	if err != nil {
		t.Fatal(err)
	}
	return shown
}

func grey(p image.Image) *image.Gray {
	out := image.NewGray(image.Rect(0, 0, p.Bounds().Dx(), p.Bounds().Dy()))
	draw.Draw(out, out.Rect, p, p.Bounds().Min, draw.Src)
	return out
}

func pngOf(t testing.TB, p image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// withDensity puts the chunk pHYs behind a PNG's header.
func withDensity(data []byte, dpi float64) []byte {
	chunk := binary.BigEndian.AppendUint32(nil, 9)
	chunk = append(chunk, "pHYs"...)
	perMetre := uint32(math.Round(dpi / inch))
	chunk = binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(chunk, perMetre), perMetre)
	chunk = append(chunk, 1)
	chunk = binary.BigEndian.AppendUint32(chunk, crc(chunk[4:]))
	const header = 8 + 25
	return append(bytes.Clone(data[:header]), append(chunk, data[header:]...)...)
}

// tiffOf is a grey TIFF of several pages, uncompressed, with its resolution (TIFF 6.0, section 4).
func tiffOf(dpi int, pages ...*image.Gray) []byte {
	b := []byte("MM\x00*\x00\x00\x00\x00")
	link := 4
	order := binary.BigEndian
	for _, p := range pages {
		pixels := len(b)
		b = append(b, p.Pix...)
		ratio := len(b)
		b = order.AppendUint32(order.AppendUint32(b, uint32(dpi)), 1)
		order.PutUint32(b[link:], uint32(len(b)))
		w, h := p.Rect.Dx(), p.Rect.Dy()
		entries := [][3]int{{256, ifdLong, w}, {257, ifdLong, h}, {258, ifdLong, 8}, {259, ifdLong, 1}, {262, ifdLong, 1}, {273, ifdLong, pixels}, {277, ifdLong, 1}, {278, ifdLong, h}, {279, ifdLong, w * h}, {tagXResolution, ifdRatio, ratio}, {tagUnit, ifdLong, 2}}
		b = order.AppendUint16(b, uint16(len(entries)))
		for _, e := range entries {
			b = order.AppendUint16(order.AppendUint16(b, uint16(e[0])), uint16(e[1]))
			b = order.AppendUint32(order.AppendUint32(b, 1), uint32(e[2]))
		}
		link = len(b)
		b = order.AppendUint32(b, 0)
	}
	return b
}

// withOrientation puts an EXIF block with this orientation behind a JPEG's start.
func withOrientation(data []byte, orientation int) []byte {
	block := []byte("MM\x00*\x00\x00\x00\x08\x00\x01")
	block = binary.BigEndian.AppendUint16(block, tagOrientation)
	block = append(block, 0, ifdShort, 0, 0, 0, 1, 0, byte(orientation), 0, 0, 0, 0, 0, 0)
	body := append([]byte("Exif\x00\x00"), block...)
	segment := binary.BigEndian.AppendUint16([]byte{0xFF, markEXIF}, uint16(len(body)+2))
	return append(append(bytes.Clone(data[:2]), append(segment, body...)...), data[2:]...)
}

func jpegOf(t testing.TB, p image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, p, &jpeg.Options{Quality: 90}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

const twoLines = "BT /F1 11 Tf 1 0 0 1 30 250 Tm (Short circuit current 13.98 A) Tj 0 -24 Td (Open circuit voltage 37.23 V) Tj ET\n"

// said is a page's words in reading order.
func said(p Page) string {
	var all []string
	for _, w := range p.Words {
		all = append(all, w.Text)
	}
	return strings.Join(all, " ")
}

// Pictures of every kind give the words that stand on them, in points of the page.
func TestScans(t *testing.T) {
	needOCR(t)
	shown := shownAt(t, 200, twoLines)
	const want = "Short circuit current 13.98 A Open circuit voltage 37.23 V"
	var compressed bytes.Buffer
	if err := tiff.Encode(&compressed, shown, &tiff.Options{Compression: tiff.Deflate}); err != nil {
		t.Fatal(err)
	}
	clear := image.NewNRGBA(shown.Bounds()) // black letters on nothing
	for y := range clear.Rect.Dy() {
		for x := range clear.Rect.Dx() {
			r, _, _, _ := shown.At(x, y).RGBA()
			clear.SetNRGBA(x, y, color.NRGBA{A: 255 - uint8(r>>8)})
		}
	}
	tests := []struct {
		name  string
		data  []byte
		width float64 // points
		pages int
	}{
		{"a PNG with its resolution", withDensity(pngOf(t, shown), 200), 400, 1},
		{"a PNG without is A4", pngOf(t, grey(shown)), paperLonger * pointsPerInch, 1},
		{"a PNG with a resolution that cannot be", withDensity(pngOf(t, shown), 1200), paperLonger * pointsPerInch, 1},
		{"a transparent PNG", withDensity(pngOf(t, clear), 200), 400, 1},
		{"a JPEG", jpegOf(t, shown), paperLonger * pointsPerInch, 1},
		{"a JPEG that lies on its side", withOrientation(jpegOf(t, upright(shown.(*image.RGBA), 8)), 6), paperLonger * pointsPerInch, 1},
		{"a compressed TIFF", compressed.Bytes(), paperLonger * pointsPerInch, 1},
		{"a TIFF of two pages", tiffOf(200, grey(shown), grey(shown)), 400, 2},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			pages, err := Open(context.Background(), "a.bin", tt.data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			if len(pages) != tt.pages {
				t.Fatalf("got %d pages, want %d", len(pages), tt.pages)
			}
			for i, p := range pages {
				if p.Number != i+1 || math.Abs(p.Width-tt.width) > 1 {
					t.Errorf("page %d is page %d and %g points wide, want %g", i+1, p.Number, p.Width, tt.width)
				}
				if said(p) != want {
					t.Errorf("page %d says %q, want %q", p.Number, said(p), want)
				}
				scale := tt.width / 400
				if b := p.Words[0].Box; math.Abs(b.X0-30*scale) > 2*scale || math.Abs(b.Y1-50*scale) > 4*scale {
					t.Errorf("page %d: the first word stands at %v, want its foot at %g, %g", p.Number, b, 30*scale, 50*scale)
				}
			}
			shown, err := Render(context.Background(), tt.data, tt.pages, 72)
			if err != nil || math.Abs(float64(shown.Bounds().Dx())-tt.width) > 2 {
				t.Errorf("not rendered %g pixels wide at 72 dpi: %v", tt.width, err)
			}
		})
	}
}

// What cannot be read is refused by name, page and remedy, before much is done for it.
func TestScanRefused(t *testing.T) {
	small := pngOf(t, image.NewGray(image.Rect(0, 0, 40, 40)))
	huge := bytes.Clone(small)
	binary.BigEndian.PutUint32(huge[16:], 29_000)
	binary.BigEndian.PutUint32(huge[20:], 29_000)
	binary.BigEndian.PutUint32(huge[29:], crc(huge[12:29]))
	loop := tiffOf(200, image.NewGray(image.Rect(0, 0, 40, 40)))
	binary.BigEndian.PutUint32(loop[len(loop)-4:], binary.BigEndian.Uint32(loop[4:]))
	many := make([]*image.Gray, 12)
	for i := range many {
		many[i] = image.NewGray(image.Rect(0, 0, 40, 40))
	}
	tests := []struct {
		name    string
		data    []byte
		problem string
		page    int
	}{
		{"more pixels than there is room for", huge, "larger than can be read", 1},
		{"cut short", pngOf(t, shownAt(t, 100, twoLines))[:900], "damaged", 1},
		{"a header alone", []byte(pngStart), "damaged", 1},
		{"another kind", []byte("GIF89a\x01\x00\x01\x00\x00\x00\x00;"), "of this kind", 0},
		{"a TIFF without pages", []byte("II*\x00\x00\x00\x00\x00"), "no pages", 0},
		{"a TIFF that points beyond its end", []byte("II*\x00\xff\xff\x00\x00"), "no pages", 0},
		{"too many pages", tiffOf(200, many...), "more pages", 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Open(context.Background(), "a.bin", tt.data, Options{MaxPages: 10})
			var e *Error
			if !errors.As(err, &e) || !strings.Contains(e.Problem, tt.problem) || e.File != "a.bin" || e.Page != tt.page || e.Remedy == "" {
				t.Errorf("got %+v, want a problem with %q on page %d and a remedy", err, tt.problem, tt.page)
			}
		})
	}
	if pages, err := readScans("a.tif", loop, Options{}); err != nil || len(pages) != 1 {
		t.Errorf("a TIFF that runs in a circle: %d pages, %v", len(pages), err)
	}
}

func crc(b []byte) uint32 { return crc32.ChecksumIEEE(b) }
