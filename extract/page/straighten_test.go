package page

import (
	"context"
	"fmt"
	"image"
	"math"
	"slices"
	"strings"
	"testing"
)

// paragraph is a page of small print.
func paragraph() string {
	var b strings.Builder
	for i := range 24 {
		b.WriteString(text(30, 270-10*float64(i), 7, fmt.Sprintf("%d Rated in watts at the standard test conditions of a module, row %d of twenty", 400+i, i)))
	}
	return b.String()
}

func TestSkew(t *testing.T) {
	level := shownAt(t, 200, paragraph()).(*image.RGBA)
	for _, angle := range []float64{0, 0.02, 0.3, -0.5, 1.7, -4, 5.5} {
		t.Run(fmt.Sprint(angle), func(t *testing.T) {
			want := -angle
			if math.Abs(angle) < skewLeast {
				want = 0
			}
			if got := newCanvas(turned(level, angle), 200).skew(); math.Abs(got-want) > 0.05 {
				t.Errorf("got %g, want %g", got, want)
			}
		})
	}
	for name, content := range map[string]string{
		"too few letters":    text(30, 200, 10, "Isc 13.98 A"),
		"nothing":            "",
		"a drawing, no text": "q 0.5 w 1 0 0 1 30 30 cm 0 0 m 300 20 l S 0 40 m 300 60 l S 0 80 m 300 100 l S Q",
	} {
		t.Run(name, func(t *testing.T) {
			c := newCanvas(turned(shownAt(t, 200, content).(*image.RGBA), 2), 200)
			if got := c.skew(); got != 0 {
				t.Errorf("got %g for a page that does not tell", got)
			}
		})
	}
}

// A page that lies askew says the same, at the same places, as one that does not; and is shown so.
func TestStraightened(t *testing.T) {
	needOCR(t)
	level := shownAt(t, 200, paragraph()).(*image.RGBA)
	at := func(p *image.RGBA) ([]byte, Page) {
		data := withDensity(pngOf(t, p), 200)
		pages, err := Open(context.Background(), "a.png", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		return data, pages[0]
	}
	_, want := at(level)
	data, got := at(turned(level, 1.2))
	found := 0
	for _, w := range want.Words {
		if slices.ContainsFunc(got.Words, func(g Word) bool {
			return g.Text == w.Text && math.Abs(g.Box.X0-w.Box.X0) < 1 && math.Abs(g.Box.Y1-w.Box.Y1) < 1
		}) {
			found++
		}
	}
	if n := len(want.Words); n < 300 || found < n*95/100 {
		t.Errorf("of %d words %d are at their place", n, found)
	}
	shown, err := Render(context.Background(), data, 1, 110)
	if err != nil {
		t.Fatal(err)
	}
	if angle := newCanvas(shown.(*image.RGBA), 110).skew(); math.Abs(angle) > 0.1 {
		t.Errorf("shown %g degrees askew", angle)
	}
}
