package page

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// Sources without geometry (HTML, plain text) are laid out as a typewriter would: every character as wide as the next, table columns
// one under the other with drawn lines between them. So the steps that follow see one kind of page.
const (
	gridChar   = 5.0  // points
	gridSize   = 10.0 // font size
	gridLine   = 14.0 // from baseline to baseline
	gridAscent = 8.0
	gridMargin = 10.0
	gridGap    = 3 // characters between columns of a table
	gridScript = 0.6
	gridRule   = 0.5
)

// Bounds of such a source; a datasheet has some hundred lines.
const (
	maxTextBytes = 8 << 20
	maxGridLines = 20_000
	maxGridCells = 50_000
	maxGridSpan  = 1_000
)

// run is a piece of a line in one style.
type run struct {
	text   string
	bold   bool
	script bool // a raised or lowered digit beside a digit: a word of its own
}

// cell is a table's cell: lines of runs, and how many columns and rows it spans.
type cell struct {
	lines      [][]run
	cols, rows int
}

// grid collects the words of one page.
type grid struct {
	by    By
	words []Word
	rules []Rule
	y     float64 // top of the next line
	right float64
	lines int
	cells int
}

var errTooLong = fmt.Errorf("more than %d lines or %d table cells", maxGridLines, maxGridCells)

// room counts lines and cells against the bounds.
func (g *grid) room(lines, cells int) error {
	if g.lines += lines; g.lines > maxGridLines {
		return errTooLong
	}
	if g.cells += cells; g.cells > maxGridCells {
		return errTooLong
	}
	return nil
}

// line adds a line of flowing text.
func (g *grid) line(runs []run) error {
	if err := g.room(1, 0); err != nil {
		return err
	}
	g.write(runs, 0, g.y)
	g.y += gridLine
	return nil
}

// write puts runs on a line whose top is y, from the column on, and gives the column after them.
func (g *grid) write(runs []run, column int, y float64) int {
	var word strings.Builder
	start, bold, script := column, false, false
	flush := func() {
		if word.Len() > 0 {
			g.words = append(g.words, g.word(word.String(), start, column, y, bold, script))
			word.Reset()
		}
		start = column
	}
	for _, r := range runs {
		if r.script != script || r.bold != bold {
			// a change of style inside a word does not part it, but for scripts
			if r.script != script {
				flush()
			}
			bold, script = r.bold, r.script
		}
		for _, c := range r.text {
			if unicode.IsSpace(c) {
				flush()
				column++
				start = column
				continue
			}
			if c = plain(c); c != dropped {
				word.WriteRune(c)
				column += columns(c)
			}
		}
	}
	flush()
	return column
}

// word is one word between two columns.
func (g *grid) word(text string, from, to int, y float64, bold, script bool) Word {
	x0, x1 := gridMargin+float64(from)*gridChar, gridMargin+float64(to)*gridChar
	w := Word{Text: text, Box: Box{x0, y, x1, y + gridSize}, Baseline: y + gridAscent, Size: gridSize, Bold: bold, By: g.by}
	if script {
		w.Size *= gridScript
		w.Box.Y1 = y + w.Size
		w.Baseline = y + gridAscent*gridScript
	}
	x := x0
	for _, c := range text {
		w.Edges = append(w.Edges, x)
		x += float64(columns(c)) * gridChar
	}
	w.Edges = append(w.Edges, x1)
	g.right = max(g.right, x1)
	return w
}

// columns is how many a character takes: two for the wide ones of East Asian scripts.
func columns(c rune) int {
	switch width.LookupRune(c).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// page gives what was collected.
func (g *grid) page(number int) Page {
	return Page{Number: number, Width: g.right + gridMargin, Height: g.y + gridMargin, Words: g.words, Rules: g.rules}
}

func runsWidth(runs []run) int {
	n := 0
	for _, r := range runs {
		for _, c := range r.text {
			n += columns(c)
		}
	}
	return n
}

// textRuns is a line in one style.
func textRuns(text string, bold bool) []run {
	if !utf8.ValidString(text) {
		text = strings.ToValidUTF8(text, string(hole))
	}
	return []run{{text: text, bold: bold}}
}
