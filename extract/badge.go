package extract

import (
	"cmp"
	"slices"
	"strings"

	"pvtally/extract/table"
)

// badges are large figures with their words under or beside them, as front pages print claims: "25" over "years product warranty", "0.35 %" over
// "yearly degradation". Each becomes a flow of its own that begins with the figure.
func (v *view) badges() []*flow {
	var out []*flow
	for i := range v.lines {
		for k := range v.cells[i] {
			c := &v.cells[i][k]
			if len([]rune(c.text)) > 8 || !strings.ContainsAny(c.text, "0123456789") {
				continue
			}
			r := c.run.Cut(c.off, c.off+len(c.text))
			words := v.under(i, r)
			if len(words) == 0 {
				words = v.beside(r)
			}
			if len(words) == 0 {
				continue
			}
			f := &flow{page: v.page.Number, box: r.Box}
			for _, w := range append([]*table.Run{r}, words...) {
				if f.text != "" {
					f.text += " "
				}
				f.at = append(f.at, len(f.text))
				f.text += strings.ReplaceAll(w.Text, "\t", " ")
				f.runs = append(f.runs, w)
				f.box = f.box.Union(w.Box)
			}
			out = append(out, f)
		}
	}
	return out
}

// besideReach is how far from a figure its words may stand beside it, in sizes of the figure.
const besideReach = 2.6

// under gathers the lines of words that stand centred or flush under a figure.
func (v *view) under(line int, r *table.Run) []*table.Run {
	var out []*table.Run
	last := r
	for i := line + 1; i < len(v.lines) && len(out) < 4; i++ {
		if v.lines[i].Baseline-last.Baseline > 2.2*max(v.lines[i].Runs[0].Size, 0.6*last.Size) {
			break
		}
		for k := range v.lines[i].Runs {
			w := &v.lines[i].Runs[k]
			centred := abs((w.Box.X0+w.Box.X1)/2-(r.Box.X0+r.Box.X1)/2) < 0.5*r.Size+3
			if w.Size < r.Size*0.98 && (centred || abs(w.Box.X0-r.Box.X0) < 2) {
				out = append(out, w)
				last = w
				break
			}
		}
	}
	return out
}

// beside gathers the words to the right of a figure, within its height.
func (v *view) beside(r *table.Run) []*table.Run {
	var out []*table.Run
	for i := range v.lines {
		for k := range v.lines[i].Runs {
			w := &v.lines[i].Runs[k]
			gap := w.Box.X0 - r.Box.X1
			mid := (w.Box.Y0 + w.Box.Y1) / 2
			reach := besideReach
			if abs(w.Baseline-r.Baseline) < 0.3*w.Size {
				reach *= 2 // on the same line
			}
			if w.Size < r.Size*0.8 && gap >= 0 && gap < reach*r.Size && mid > r.Box.Y0-0.3*r.Size && mid < r.Box.Y1+0.3*r.Size {
				out = append(out, w)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b *table.Run) int { return cmp.Compare(a.Baseline, b.Baseline) })
	if len(out) > 5 {
		return nil
	}
	return out
}
