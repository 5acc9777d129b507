// Package table is geometry only: it turns the words of a page into lines, runs and aligned columns. It knows no word of photovoltaics
// and imports only the page model.
package table

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"pvtally/extract/page"
)

// Run is a stretch of words on one line that a reader takes in at once: no gap in it is wide, no drawn rule crosses it.
// A gap too wide for a space but too narrow to part two runs stands as a tab in Text: two columns that nearly touch.
type Run struct {
	Text     string
	Box      page.Box
	Baseline float64
	Size     float64 // of the main lettering
	Bold     bool
	Rotation int
	By       page.By
	words    []page.Word
	at       []int   // byte offset in Text of each word
	blank    float64 // wider than a plain space, in units of the lettering's size
}

// Line is the runs that share a baseline, left to right.
type Line struct {
	Runs     []Run
	Box      page.Box
	Baseline float64
}

// Distances, in units of the lettering's size.
const (
	sameBaseline  = 0.28 // baselines nearer than this are one line
	glued         = 0.10 // a smaller gap is no space ("W/m" + "2")
	tabGap        = 0.55 // a wider gap is no plain space
	typedGap      = 0.75 // likewise in typescript, whose spaces are as wide as its letters
	runGap        = 1.25 // a wider gap parts two runs
	scriptShift   = 0.75 // sub- and superscripts stand no farther off the baseline
	scriptGap     = 0.40 // and no farther from the word they belong to
	scriptOverlap = 0.3  // and overlap its height by this share of their own
	scriptSize    = 0.92 // and are no larger than this share of it,
	scriptTouch   = 0.12 // unless they touch it: then they may be nearly as large
)

// Lines gathers the visible upright words of a page into lines, top to bottom.
func Lines(p page.Page) []Line {
	var words []page.Word
	for _, w := range p.Words {
		if w.Hidden == page.Visible && w.Rotation == 0 && strings.TrimSpace(w.Text) != "" {
			words = append(words, w)
		}
	}
	rows, blank := attachScripts(baselines(words)), tabGap
	if fixedPitch(words) {
		blank = typedGap
	}
	var out []Line
	for _, row := range rows {
		slices.SortStableFunc(row, func(a, b page.Word) int { return cmp.Compare(a.Box.X0, b.Box.X0) })
		l := Line{Baseline: mainBaseline(row)}
		for _, words := range split(row, p.Rules) {
			l.Runs = append(l.Runs, newRun(words, blank))
		}
		l.Box = l.Runs[0].Box
		for _, r := range l.Runs[1:] {
			l.Box = l.Box.Union(r.Box)
		}
		out = append(out, l)
	}
	slices.SortStableFunc(out, func(a, b Line) int { return cmp.Compare(a.Baseline, b.Baseline) })
	return out
}

// Turned gives the runs of lettering that is turned on the page; such runs are titles of row groups, edge notes and axis labels.
func Turned(p page.Page) []Run {
	var out []Run
	for _, w := range p.Words {
		if w.Hidden == page.Visible && w.Rotation != 0 && strings.TrimSpace(w.Text) != "" {
			out = append(out, newRun([]page.Word{w}, tabGap))
		}
	}
	return out
}

// baselines groups words whose baselines agree to a fraction of their size.
func baselines(words []page.Word) [][]page.Word {
	sorted := slices.Clone(words)
	slices.SortStableFunc(sorted, func(a, b page.Word) int {
		return cmp.Or(cmp.Compare(a.Baseline, b.Baseline), cmp.Compare(a.Box.X0, b.Box.X0))
	})
	var rows [][]page.Word
	for _, w := range sorted {
		if n := len(rows); n > 0 {
			first, last := rows[n-1][0], rows[n-1][len(rows[n-1])-1]
			near := sameBaseline * min(w.Size, largest(rows[n-1]))
			if w.Baseline-last.Baseline <= near && w.Baseline-first.Baseline <= 1.5*sameBaseline*max(w.Size, first.Size) {
				rows[n-1] = append(rows[n-1], w)
				continue
			}
		}
		rows = append(rows, []page.Word{w})
	}
	return rows
}

// fixedPitch: nine words in ten are as wide as their number of letters says, as on a typewriter.
func fixedPitch(words []page.Word) bool {
	var pitches []float64
	for _, w := range words {
		if n := utf8.RuneCountInString(w.Text); n > 1 && w.Size > 0 {
			pitches = append(pitches, w.Box.W()/float64(n)/w.Size)
		}
	}
	if len(pitches) < 10 {
		return false
	}
	slices.Sort(pitches)
	middle, even := pitches[len(pitches)/2], 0
	for _, p := range pitches {
		if math.Abs(p-middle) < 0.03*middle {
			even++
		}
	}
	return even*10 >= len(pitches)*9
}

func largest(row []page.Word) float64 {
	size := 0.0
	for _, w := range row {
		size = max(size, w.Size)
	}
	return size
}

// attachScripts moves sub- and superscripts into the line of the word they touch.
func attachScripts(rows [][]page.Word) [][]page.Word {
	moved := map[[2]int]int{} // row, word -> row it goes to
	for i, row := range rows {
		for k, w := range row {
			if utf8.RuneCountInString(w.Text) > 6 {
				continue
			}
			best, bestGap := -1, math.Inf(1)
			for j := max(0, i-4); j < min(len(rows), i+5); j++ {
				if j == i {
					continue
				}
				for _, o := range rows[j] {
					shift := math.Abs(w.Baseline - o.Baseline)
					if w.Size >= o.Size || min(w.Box.Y1, o.Box.Y1)-max(w.Box.Y0, o.Box.Y0) < scriptOverlap*w.Box.H() || shift > scriptShift*o.Size || shift < 0.5*sameBaseline*w.Size {
						continue
					}
					gap := max(w.Box.X0-o.Box.X1, o.Box.X0-w.Box.X1)
					if gap < -0.3*o.Size || gap > scriptGap*o.Size || w.Size > scriptSize*o.Size && math.Abs(gap) > scriptTouch*o.Size {
						continue
					}
					if o.Box.X0 > w.Box.X0 {
						gap += 0.2 * o.Size // a script belongs rather to what stands before it
					}
					if gap < bestGap {
						best, bestGap = j, gap
					}
				}
			}
			if best >= 0 && !touches(row, k) {
				moved[[2]int{i, k}] = best
			}
		}
	}
	if len(moved) == 0 {
		return rows
	}
	out := make([][]page.Word, len(rows))
	for i, row := range rows {
		for k, w := range row {
			to := i
			if j, ok := moved[[2]int{i, k}]; ok {
				to = j
			}
			out[to] = append(out[to], w)
		}
	}
	return slices.DeleteFunc(out, func(r []page.Word) bool { return len(r) == 0 })
}

// touches reports whether word k has a close neighbour of a size no smaller on its own line: then it is no script.
func touches(row []page.Word, k int) bool {
	w := row[k]
	for i, o := range row {
		gap := max(w.Box.X0-o.Box.X1, o.Box.X0-w.Box.X1)
		if i != k && o.Size > w.Size*1.05 && gap < scriptGap*o.Size {
			return true
		}
	}
	return false
}

// mainBaseline is the baseline of the widest lettering of a line, scripts apart.
func mainBaseline(row []page.Word) float64 {
	best, size := row[0].Baseline, 0.0
	for _, w := range row {
		if w.Size > size*1.02 {
			best, size = w.Baseline, w.Size
		}
	}
	return best
}

// split cuts a line where the gap is wide or a drawn vertical rule passes.
func split(row []page.Word, rules []page.Rule) [][]page.Word {
	var out [][]page.Word
	for _, w := range row {
		n := len(out)
		if n == 0 {
			out = append(out, []page.Word{w})
			continue
		}
		last := out[n-1][len(out[n-1])-1]
		size := min(w.Size, last.Size)
		if scripted := max(w.Size, last.Size); size < scriptSize*scripted {
			size = scripted
		}
		gap := w.Box.X0 - last.Box.X1
		if gap > runGap*size || gap > 0.2*size && ruled(last, w, rules) {
			out = append(out, []page.Word{w})
			continue
		}
		out[n-1] = append(out[n-1], w)
	}
	return out
}

// ruled reports whether a vertical rule stands between two neighbouring words.
func ruled(a, b page.Word, rules []page.Rule) bool {
	mid := (max(a.Box.Y0, b.Box.Y0) + min(a.Box.Y1, b.Box.Y1)) / 2
	for _, r := range rules {
		if r.Box.X0 == r.Box.X1 && r.Box.X0 > a.Box.X1-0.5 && r.Box.X0 < b.Box.X0+0.5 && r.Box.Y0 <= mid && mid <= r.Box.Y1 {
			return true
		}
	}
	return false
}

func newRun(words []page.Word, blank float64) Run {
	r := Run{Box: words[0].Box, words: words, blank: blank, By: words[0].By, Rotation: words[0].Rotation}
	var b strings.Builder
	for i, w := range words {
		if i > 0 {
			last := words[i-1]
			gap, size := w.Box.X0-last.Box.X1, max(w.Size, last.Size)
			switch {
			case gap < -size: // the next line of a joined run
				b.WriteByte(' ')
			case gap > blank*size:
				b.WriteByte('\t')
			case gap > glued*size:
				b.WriteByte(' ')
			}
			r.Box = r.Box.Union(w.Box)
		}
		r.at = append(r.at, b.Len())
		b.WriteString(w.Text)
		if w.Size > r.Size {
			r.Size, r.Baseline, r.Bold = w.Size, w.Baseline, w.Bold
		}
	}
	r.Text = b.String()
	return r
}

// BoxOf is the place of Text[start:end] on the page.
func (r Run) BoxOf(start, end int) page.Box {
	var box page.Box
	found := false
	for i, w := range r.words {
		from, to := r.at[i], r.at[i]+len(w.Text)
		if to <= start || from >= end {
			continue
		}
		b := w.Box
		if r.Rotation == 0 && len(w.Edges) == utf8.RuneCountInString(w.Text)+1 {
			lo, hi := max(start, from)-from, min(end, to)-from
			b.X0 = w.Edges[utf8.RuneCountInString(w.Text[:lo])]
			b.X1 = w.Edges[utf8.RuneCountInString(w.Text[:hi])]
		}
		if found {
			b = b.Union(box)
		}
		box, found = b, true
	}
	return box
}

// Words are the words of Text[start:end], for splitting a run between columns.
func (r Run) Words(start, end int) []page.Word {
	var out []page.Word
	for i, w := range r.words {
		if r.at[i]+len(w.Text) > start && r.at[i] < end {
			out = append(out, w)
		}
	}
	return out
}

// Cut is the part of a run that holds Text[start:end], as a run of its own.
func (r Run) Cut(start, end int) *Run {
	out := newRun(r.Words(start, end), r.blank)
	return &out
}

// Offset is where the run's n-th word begins in Text.
func (r Run) Offset(n int) int { return r.at[n] }

// Split parts a run of the line before its n-th word.
func (l *Line) Split(run, n int) {
	words, blank := l.Runs[run].words, l.Runs[run].blank
	l.Runs[run] = newRun(words[:n], blank)
	l.Runs = slices.Insert(l.Runs, run+1, newRun(words[n:], blank))
}

// Join makes one run of several that follow each other, on one line or on lines under each other.
func Join(runs ...*Run) *Run {
	var words []page.Word
	for _, r := range runs {
		words = append(words, r.words...)
	}
	out := newRun(words, runs[0].blank)
	return &out
}
