package page

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// Every kind of bad input is an *Error that names the file and what to do.
func TestBadInput(t *testing.T) {
	good := one(text(20, 200, 10, "Pmax 400 W"))
	manyPages := doc{pages: make([]leaf, 2000)}.bytes()
	tests := []struct {
		name    string
		data    []byte
		opt     Options
		problem string // part of it
		page    int
	}{
		{"empty", nil, Options{}, "empty", 0},
		{"not a PDF", []byte("GIF89a....."), Options{}, "not a PDF", 0},
		{"only a header", []byte("%PDF-1.7\n"), Options{}, "damaged", 0},
		{"cut in the middle", good[:len(good)/4], Options{}, "", 0},
		{"no pages", doc{}.bytes(), Options{}, "no pages", 0},
		{"a manual of 2,000 pages", manyPages, Options{}, "2000 pages are more than the limit of 100", 0},
		{"more pages than asked for", doc{pages: make([]leaf, 3)}.bytes(), Options{MaxPages: 2}, "3 pages are more than the limit of 2", 0},
		{"a password", doc{pages: make([]leaf, 1), locked: true, password: "secret"}.bytes(), Options{}, "password", 0},
		{"no time", good, Options{Deadline: time.Nanosecond}, "not done within", 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			pages, err := PDF(context.Background(), "sheets/kr-400.pdf", tt.data, tt.opt)
			var e *Error
			if !errors.As(err, &e) {
				t.Fatalf("got %d pages and %v, want an *Error", len(pages), err)
			}
			if e.File != "sheets/kr-400.pdf" || e.Remedy == "" || e.Page != tt.page || !strings.Contains(e.Problem, tt.problem) {
				t.Errorf("got %#v, want the file, page %d, a remedy, and a problem with %q", e, tt.page, tt.problem)
			}
			for _, part := range []string{e.File, e.Problem, e.Remedy} {
				if !strings.Contains(err.Error(), part) {
					t.Errorf("%q does not say %q", err, part)
				}
			}
		})
	}
}

// What PDFium can mend is read.
func TestMended(t *testing.T) {
	good := one(text(20, 200, 10, "Pmax 400 W"))
	tests := []struct {
		name string
		data []byte
	}{
		{"encrypted without a password", doc{pages: []leaf{{content: text(20, 200, 10, "Pmax 400 W")}}, locked: true}.bytes()},
		{"without its end", good[:len(good)-20]},
		{"with bytes before its header", append([]byte("\r\n\x1b-12345X"), good...)},
		{"with bytes behind its end", append(append([]byte{}, good...), strings.Repeat("\x00", 2000)...)},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			pages, err := PDF(context.Background(), "test.pdf", tt.data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			if got := seen(pages[0]); got != "Pmax 400 W" {
				t.Errorf("got %q", got)
			}
		})
	}
}

func TestNoText(t *testing.T) {
	tests := []struct {
		name, content string
		want          bool
	}{
		{"only a drawing", "20 20 m 100 100 l S", false},
		{"only hidden text", "3 Tr " + text(20, 200, 10, "1000V"), false},
		{"text", text(20, 200, 10, "1000V"), true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := HasText([]Page{readOne(t, one(tt.content))}); got != tt.want {
				t.Errorf("got %v, want %v", got, tt.want)
			}
		})
	}
}

// A page without area falls back to PDFium's letter size, or is refused; it never gives words in no place.
func TestZeroSize(t *testing.T) {
	pages, err := PDF(context.Background(), "test.pdf", doc{pages: []leaf{{content: text(20, 200, 10, "1000V"), box: "0 0 0 0"}}}.bytes(), Options{})
	if err == nil && !(pages[0].Width > 0 && pages[0].Height > 0) {
		t.Errorf("got a page of %v x %v", pages[0].Width, pages[0].Height)
	}
}

// bomb is a page whose forms call each other: ten times ten times … times.
func bomb(depth int) []byte {
	d := doc{}
	for i := range depth {
		content, resources := text(20, 200, 10, "1"), "/Font << /F1 3 0 R >>"
		if i > 0 {
			content, resources = strings.Repeat("/X1 Do ", 10), fmt.Sprintf("/XObject << /X1 %d 0 R >>", firstExtra+i-1)
		}
		d.extra = append(d.extra, stream("/Type /XObject /Subtype /Form /BBox [0 0 400 300] /Resources << "+resources+" >>", content))
	}
	d.pages = []leaf{{content: "/X1 Do", resources: fmt.Sprintf("/XObject << /X1 %d 0 R >>", firstExtra+depth-1)}}
	return d.bytes()
}

// A file that would take hours is stopped, and the next one is read. In a helper it is killed; in this process its code is told.
func TestDeadline(t *testing.T) {
	const limit = 300 * time.Millisecond
	ways := map[string]func(context.Context, string, []byte, Options) ([]Page, error){"helper": PDF, "here": readPDF}
	for name, read := range ways {
		t.Run(name, func(t *testing.T) {
			_, err := read(context.Background(), "bomb.pdf", bomb(9), Options{Deadline: limit})
			var e *Error
			if !errors.As(err, &e) || e.Remedy == "" {
				t.Errorf("got %v, want an *Error", err)
			}
			pages, err := read(context.Background(), "good.pdf", one(text(20, 200, 10, "Pmax 400 W")), Options{})
			if err != nil || seen(pages[0]) != "Pmax 400 W" {
				t.Errorf("the next file: got %v", err)
			}
		})
	}
}

// The caller's own end is no fault of the file.
func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := PDF(ctx, "test.pdf", one(text(20, 200, 10, "1")), Options{})
	var e *Error
	if !errors.Is(err, context.Canceled) || errors.As(err, &e) {
		t.Errorf("got %v, want the context's error", err)
	}
}

// Reading twice, and in a helper or here, gives the same.
func TestSamePages(t *testing.T) {
	data := one("0.9 g 10 190 200 20 re f 0 g " + text(20, 200, 10, "Pmax 400 W") + "20 180 m 200 180 l S")
	here := []Page{readOne(t, data)}
	for range 2 {
		there, err := PDF(context.Background(), "test.pdf", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(here, there); diff != "" {
			t.Errorf("(-here +helper)\n%s", diff)
		}
	}
}

// Open goes by what a file holds.
func TestOpen(t *testing.T) {
	tests := []struct {
		name, data, want string
	}{
		{"a.txt", string(one(text(20, 200, 10, "Pmax 400 W"))), "Pmax 400 W"},
		{"a.pdf", "<table><tr><td>Pmax<td>400 W</table>", "Pmax 400 W"},
		{"a.bin", "Pmax 400 W", "Pmax 400 W"},
		{"empty", "", "error: the file is empty"},
		{"photo", "\x89PNG\r\n\x1a\n", "error: the picture is damaged"},
		{"archive", "PK\x03\x04", "error: this is no datasheet"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			pages, err := Open(context.Background(), tt.name, []byte(tt.data), Options{})
			got := ""
			var e *Error
			if errors.As(err, &e) {
				got = "error: " + e.Problem
			} else if err == nil {
				got = seen(pages[0])
			}
			if !strings.HasPrefix(got, tt.want) {
				t.Errorf("got %q (%v), want %q", got, err, tt.want)
			}
		})
	}
}

// sheetsFor gives the files of a folder, and skips the test where there are none.
func sheetsFor(t testing.TB, pattern string) []string {
	files, err := filepath.Glob(pattern)
	if err != nil || len(files) == 0 {
		t.Skipf("no files at %s", pattern)
	}
	return files
}

// Real sheets, where they are at hand: each is read without a fault, words lie on their pages, edges ascend.
func TestRealSheets(t *testing.T) {
	for _, file := range sheetsFor(t, "../../../shared/sheets/*.pdf") {
		t.Run(filepath.Base(file), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			pages, err := PDF(context.Background(), file, data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range pages {
				for _, w := range p.Words {
					if len(w.Edges) != len([]rune(w.Text))+1 {
						t.Fatalf("page %d: %q has %d edges", p.Number, w.Text, len(w.Edges))
					}
					x, y := w.Box.centre()
					if w.Hidden == Visible && !(x >= -5 && x <= p.Width+5 && y >= -5 && y <= p.Height+5) {
						t.Errorf("page %d: visible word %q at %.0f, %.0f", p.Number, w.Text, x, y)
					}
				}
			}
		})
	}
}
