package extract

import (
	"slices"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/table"
)

// Sheets print label-value pairs two to a line, and sometimes the first value touches the second label: "IP68, three bypass diodes Connector | MC". Such
// labels betray themselves by standing flush under each other. splitTouching cuts the runs there.
func splitTouching(lines []table.Line) {
	type place struct {
		line, run, word int
		x               float64
	}
	var places []place
	for i := range lines {
		for k := range lines[i].Runs {
			r := &lines[i].Runs[k]
			words := r.Words(0, len(r.Text))
			for n := 1; n < len(words); n++ {
				at := r.Offset(n)
				if !strings.ContainsAny(r.Text[:at], "0123456789") && k == 0 {
					continue // words alone: the label itself goes on
				}
				if tail := label.Find(r.Text[at:]); len(tail.Matches) > 0 && tail.Matches[0].Start == 0 && isOpener(tail) {
					places = append(places, place{i, k, n, words[n].Box.X0})
				}
			}
		}
	}
	cut := map[int][]place{}
	for _, p := range places {
		flush := map[int]bool{}
		for _, o := range places {
			if abs(o.x-p.x) < 1 {
				flush[o.line] = true
			}
		}
		if len(flush) >= 3 {
			cut[p.line] = append(cut[p.line], p)
		}
	}
	for line, ps := range cut {
		slices.SortFunc(ps, func(a, b place) int { return b.run*1000 + b.word - a.run*1000 - a.word })
		for _, p := range ps {
			lines[line].Split(p.run, p.word)
		}
	}
}

// isOpener: the words mean something that has a row of its own on sheets.
func isOpener(f label.Found) bool {
	c := conceptOf(f)
	return facts[c] != nil && !electrical[c]
}
