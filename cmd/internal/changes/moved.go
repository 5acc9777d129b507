package changes

import (
	"cmp"
	"slices"
	"strings"

	"github.com/sergi/go-diff/diffmatchpatch"

	"pvtally/cmd/internal/report"
)

// Moved is text that one edition has and the other has not, or has otherwise. Page is that of the new edition, of the old one where the
// text is gone.
type Moved struct {
	Page int    `json:"page"`
	Old  string `json:"old,omitempty"`
	New  string `json:"new,omitempty"`
}

// Limits of the comparison of texts: a datasheet has some 400 lines, and nobody reads more than a few hundred changes.
const (
	maxLines = 6_000
	maxMoved = 300
	maxRunes = 400 // of one text
)

// line is a printed line with its page.
type line struct {
	page int
	text string
}

// moved compares the texts of two datasheets line by line. left is how many changes are not listed.
func moved(old, new []report.Page) (list []Moved, left int) {
	a, b := linesOf(old), linesOf(new)
	runes := map[string]rune{}
	x, y := asRunes(runes, a), asRunes(runes, b)
	d := diffmatchpatch.New()
	d.DiffTimeout = 0 // never by the clock: two runs must say the same
	i, k := 0, 0
	add := func(gone, come []line) {
		if len(gone)+len(come) == 0 {
			return
		}
		m := Moved{Old: joined(gone), New: joined(come)}
		if len(come) > 0 {
			m.Page = come[0].page
		} else {
			m.Page = gone[0].page
		}
		if len(list) < maxMoved {
			list = append(list, m)
		} else {
			left++
		}
	}
	var gone, come []line
	for _, part := range d.DiffMainRunes(x, y, false) {
		n := len([]rune(part.Text))
		switch part.Type {
		case diffmatchpatch.DiffDelete:
			gone = append(gone, a[i:i+n]...)
			i += n
		case diffmatchpatch.DiffInsert:
			come = append(come, b[k:k+n]...)
			k += n
		default:
			pairLines(gone, come, add)
			gone, come = nil, nil
			i, k = i+n, k+n
		}
	}
	pairLines(gone, come, add)
	return list, left
}

// pairLines lays the lines of one change side by side where there are as many on both sides, so that each stands by itself.
func pairLines(gone, come []line, add func(gone, come []line)) {
	if len(gone) != len(come) {
		add(gone, come)
		return
	}
	for i := range gone {
		add(gone[i:i+1], come[i:i+1])
	}
}

// asRunes makes one rune of each line, so that lines can be compared like letters.
func asRunes(known map[string]rune, lines []line) []rune {
	out := make([]rune, len(lines))
	for i, l := range lines {
		r, ok := known[l.text]
		if !ok {
			r = rune(0x10000 + len(known)) // beyond what UTF-16 and surrogates could spoil; at most 2 × maxLines of them
			known[l.text] = r
		}
		out[i] = r
	}
	return out
}

// linesOf puts the words of upright text back into lines, page by page, from top to bottom.
func linesOf(pages []report.Page) (list []line) {
	for _, p := range pages {
		words := slices.DeleteFunc(slices.Clone(p.Words), func(w report.Word) bool { return w.Rotation != 0 || strings.TrimSpace(w.Text) == "" })
		slices.SortStableFunc(words, func(a, b report.Word) int { return cmp.Compare(a.Baseline, b.Baseline) })
		for len(words) > 0 && len(list) < maxLines {
			n := 1
			for n < len(words) && words[n].Baseline-words[0].Baseline < 0.4*words[0].Size {
				n++
			}
			row := words[:n]
			words = words[n:]
			slices.SortStableFunc(row, func(a, b report.Word) int { return cmp.Compare(a.X0, b.X0) })
			texts := make([]string, n)
			for i, w := range row {
				texts[i] = w.Text
			}
			list = append(list, line{p.Number, report.Plain(strings.Join(texts, " "))})
		}
	}
	return list
}

func joined(lines []line) string {
	texts := make([]string, len(lines))
	for i, l := range lines {
		texts[i] = l.text
	}
	text := strings.Join(texts, " / ")
	if r := []rune(text); len(r) > maxRunes {
		return string(r[:maxRunes-1]) + "…"
	}
	return text
}
