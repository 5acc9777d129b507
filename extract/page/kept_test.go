package page

import (
	"context"
	"fmt"
	"image"
	"image/draw"
	"os"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// needOCR skips a test where Tesseract is missing; never in CI.
func needOCR(t testing.TB) *ocr {
	t.Helper()
	o, err := findOCR()
	switch {
	case err == nil:
	case os.Getenv("CI") != "":
		t.Fatal(err)
	default:
		t.Skip(err)
	}
	return o
}

// pictured is a document of one page that holds nothing but a picture of text, at so many dpi.
func pictured(t testing.TB, dpi float64, lines ...string) []byte {
	t.Helper()
	var content strings.Builder
	for i, l := range lines {
		content.WriteString(text(30, 260-24*float64(i), 11, l))
	}
	shown, err := Render(context.Background(), one(content.String()), 1, dpi)
	if err != nil {
		t.Fatal(err)
	}
	size := shown.Bounds().Size()
	grey := image.NewGray(shown.Bounds())
	draw.Draw(grey, grey.Rect, shown, image.Point{}, draw.Src)
	return doc{
		extra: []string{stream(fmt.Sprintf("/Type /XObject /Subtype /Image /Width %d /Height %d /ColorSpace /DeviceGray /BitsPerComponent 8", size.X, size.Y), string(grey.Pix))},
		pages: []leaf{{content: "400 0 0 300 0 0 cm /X1 Do", resources: fmt.Sprintf("/XObject << /X1 %d 0 R >>", firstExtra)}},
	}.bytes()
}

// What is kept gives the same pages as reading does, whatever became of the cache in between and however many ask for it.
func TestRecognisedIsKept(t *testing.T) {
	o, data := needOCR(t), pictured(t, 200, "Short circuit current 13.98 A", "Open circuit voltage 37.23 V")
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	open := func(cache bool) []Page {
		pages, err := Open(context.Background(), "a.pdf", data, Options{Cache: cache})
		if err != nil {
			t.Error(err)
		}
		for i := range pages {
			pages[i].Looked = 0
		}
		return pages
	}
	want := open(false)
	if !HasText(want) {
		t.Fatal("nothing recognised")
	}
	key := keyOf(data, "pages", DefaultMaxPages)
	path, _ := keptPath(key)
	same := func(t *testing.T) {
		t.Helper()
		if diff := cmp.Diff(want, open(true)); diff != "" {
			t.Errorf("(-read +with the cache)\n%s", diff)
		}
	}
	if fileExists(path) {
		t.Fatal("the cache is filled where it should be left alone")
	}
	same(t)
	if !fileExists(path) {
		t.Fatal("nothing was kept")
	}
	same(t)
	planted := []Page{{Number: 7}}
	saveKept(key, recognised{o.identity(), planted})
	if diff := cmp.Diff(planted, open(true)); diff != "" {
		t.Errorf("what is kept is not used:\n%s", diff)
	}
	if diff := cmp.Diff(want, open(false)); diff != "" {
		t.Errorf("what is kept is used where the cache should be left alone:\n%s", diff)
	}
	for name, spoil := range map[string]func(){
		"by another Tesseract": func() { saveKept(key, recognised{"another", planted}) },
		"cut short":            func() { spoilFile(t, path, func(b []byte) []byte { return b[:len(b)/2] }) },
		"one bit wrong":        func() { spoilFile(t, path, func(b []byte) []byte { b[len(b)-40] ^= 1; return b }) },
		"empty":                func() { spoilFile(t, path, func([]byte) []byte { return nil }) },
	} {
		t.Run(name, func(t *testing.T) {
			spoil()
			same(t)
		})
	}
	t.Run("several at once", func(t *testing.T) {
		_ = os.Remove(path)
		var wait sync.WaitGroup
		for range 3 {
			wait.Go(func() { same(t) })
		}
		wait.Wait()
	})
}

func spoilFile(t *testing.T, path string, change func([]byte) []byte) {
	data, err := os.ReadFile(path)
	if err == nil {
		err = os.WriteFile(path, change(data), 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
}

func fileExists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// A second reading that took long is kept like the first.
func TestSecondReadingIsKept(t *testing.T) {
	data := one(text(20, 200, 10, "37.23"))
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	kept := []map[string]int{{"55": 2}}
	saveKept(keyOf(data, "second"), kept)
	s, err := SecondReading(context.Background(), data, Options{Cache: true})
	if err != nil || s.Count(1, "55") != 2 {
		t.Errorf("what is kept is not used: %+v, %v", s, err)
	}
	s, err = SecondReading(context.Background(), data, Options{})
	if err != nil || s.Count(1, "37.23") != 1 {
		t.Errorf("got %+v, %v", s, err)
	}
}
