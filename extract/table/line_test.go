package table

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/extract/page"
)

// word makes a word whose letters are half as wide as high.
func word(text string, x, baseline, size float64) page.Word {
	w := page.Word{Text: text, Baseline: baseline, Size: size, Box: page.Box{X0: x, Y0: baseline - 0.75*size, Y1: baseline + 0.2*size}}
	for range len([]rune(text)) + 1 {
		w.Edges = append(w.Edges, x)
		x += 0.5 * size
	}
	w.Box.X1 = w.Edges[len(w.Edges)-1]
	return w
}

func texts(lines []Line) [][]string {
	var out [][]string
	for _, l := range lines {
		var line []string
		for _, r := range l.Runs {
			line = append(line, r.Text)
		}
		out = append(out, line)
	}
	return out
}

func TestLines(t *testing.T) {
	for name, c := range map[string]struct {
		words []page.Word
		rules []page.Rule
		want  [][]string
	}{
		"a space, a tab and a gap": {
			words: []page.Word{word("Open", 0, 100, 10), word("circuit", 23, 100, 10), word("Voc", 66, 100, 10), word("37.2", 200, 100, 10)},
			want:  [][]string{{"Open circuit\tVoc", "37.2"}},
		},
		"a subscript joins its letter": {
			words: []page.Word{word("V", 0, 100, 10), word("OC", 5.2, 102.5, 6), word("[V]", 15, 100, 10)},
			want:  [][]string{{"VOC [V]"}},
		},
		"a superscript joins its unit": {
			words: []page.Word{word("1000", 0, 100, 10), word("W/m", 23, 100, 10), word("2", 38.3, 96, 6)},
			want:  [][]string{{"1000 W/m2"}},
		},
		"small words under a large figure are no subscripts": {
			words: []page.Word{word("+5", 0, 100, 20), word("W", 26, 100, 20), word("only", 21, 112, 7)},
			want:  [][]string{{"+5 W"}, {"only"}},
		},
		"small lettering beside large does not part the line": {
			words: []page.Word{word("Voc", 0, 100, 8), word("85%", 200, 100, 4), word("-0.28", 100, 101.9, 8)},
			want:  [][]string{{"Voc", "-0.28", "85%"}},
		},
		"a drawn rule parts close columns": {
			words: []page.Word{word("41.1", 0, 100, 10), word("41.3", 23, 100, 10)},
			rules: []page.Rule{{Box: page.Box{X0: 21.5, X1: 21.5, Y0: 80, Y1: 120}}},
			want:  [][]string{{"41.1", "41.3"}},
		},
		"hidden words are no words": {
			words: []page.Word{word("21.0", 0, 100, 10), func() page.Word { w := word("22.0", 0, 100, 10); w.Hidden = page.Clipped; return w }()},
			want:  [][]string{{"21.0"}},
		},
	} {
		t.Run(name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, texts(Lines(page.Page{Words: c.words, Rules: c.rules}))); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestBoxOf(t *testing.T) {
	r := Lines(page.Page{Words: []page.Word{word("10.52", 0, 100, 10), word("A10.61", 27, 100, 10)}})[0].Runs[0]
	box := r.BoxOf(7, 12) // the digits behind the A
	if r.Text[7:12] != "10.61" || box.X0 != 32 || box.X1 != 57 {
		t.Errorf("%q stands at %v, want 32 to 57", r.Text[7:12], box)
	}
}

func TestSplit(t *testing.T) {
	l := Lines(page.Page{Words: []page.Word{word("IP68", 0, 100, 10), word("Connector", 23, 100, 10)}})[0]
	l.Split(0, 1)
	if diff := cmp.Diff([][]string{{"IP68", "Connector"}}, texts([]Line{l})); diff != "" {
		t.Error(diff)
	}
}
