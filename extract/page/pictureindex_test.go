package page

import (
	"image"
	"slices"
	"testing"
)

// Places of letters as a page at 300 dpi shows them: capitals 20 pixels tall, feet at 100.
func TestIndexes(t *testing.T) {
	capital := func(x int) image.Rectangle { return image.Rect(x, 80, x+16, 100) }
	small := func(x int) image.Rectangle { return image.Rect(x, 86, x+12, 100) }   // an "o"
	tailed := func(x int) image.Rectangle { return image.Rect(x, 86, x+12, 106) }  // a "y"
	lowered := func(x int) image.Rectangle { return image.Rect(x, 95, x+10, 108) } // an "o" of an index
	raised := func(x int) image.Rectangle { return image.Rect(x, 78, x+7, 88) }    // a figure
	for _, c := range []struct {
		name  string
		boxes []image.Rectangle
		want  []index
	}{
		{"a word", []image.Rectangle{capital(0), small(18), small(32)}, nil},
		{"a symbol", []image.Rectangle{capital(0), lowered(17), lowered(28)}, []index{{1, 3, 100}}},
		{"a symbol with a note's figure", []image.Rectangle{capital(0), lowered(17), lowered(28), raised(39)}, []index{{1, 3, 100}}},
		{"two symbols", []image.Rectangle{capital(0), lowered(17), lowered(28), capital(60), lowered(77), lowered(88)}, []index{{1, 3, 100}, {4, 6, 100}}},
		{"By", []image.Rectangle{capital(0), tailed(18)}, nil},
		{"Appo", []image.Rectangle{capital(0), tailed(18), tailed(32), small(46)}, nil},
	} {
		l := lettering{tall: 20, base: 100}
		for _, b := range c.boxes {
			l.blobs = append(l.blobs, blob{box: b})
		}
		if got := l.indexes(); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestHang: an index that no chain reaches finds its letter, and nothing else does.
func TestHang(t *testing.T) {
	letter := func(x int) lettering {
		b := image.Rect(x, 80, x+4, 100)
		return lettering{blobs: []blob{{box: b}}, box: b, tall: 20, base: 100}
	}
	run := func(box image.Rectangle, n int, text bool) lettering {
		return lettering{blobs: slices.Repeat([]blob{{box: box, text: text}}, n), box: box, tall: box.Dy(), base: box.Max.Y}
	}
	for _, c := range []struct {
		name  string
		lines []lettering
		want  int
	}{
		{"an index", []lettering{letter(10), run(image.Rect(17, 96, 36, 108), 2, false)}, 1},
		{"too far", []lettering{letter(10), run(image.Rect(40, 96, 60, 108), 2, false)}, 2},
		{"on the line", []lettering{letter(10), run(image.Rect(17, 86, 36, 100), 2, false)}, 2},
		{"the next line", []lettering{letter(10), run(image.Rect(17, 106, 36, 126), 2, false)}, 2},
		{"known from the text", []lettering{letter(10), run(image.Rect(17, 96, 36, 108), 2, true)}, 2},
	} {
		if got := (&canvas{}).hang(c.lines); len(got) != c.want {
			t.Errorf("%s: %d lines, want %d", c.name, len(got), c.want)
		}
	}
}
