package extract

import (
	"slices"
	"strconv"
	"strings"
)

// part is one of several series on a sheet, with its own classes and, where a table prints them by series, its own facts.
type part struct {
	stem    string // the names' common part
	classes []*class
}

// partsOf splits the classes by series: names that differ in more than the watts, each series from tables of its own.
func partsOf(classes []*class) []part {
	if len(classes) == 0 {
		return []part{{}}
	}
	var out []part
	owner := map[*block]int{}
	for _, k := range classes {
		stem := stemOf(k)
		if len(stem) < 3 {
			return []part{{classes: classes}}
		}
		at := slices.IndexFunc(out, func(p part) bool { return p.stem == stem })
		if at < 0 {
			out = append(out, part{stem: stem})
			at = len(out) - 1
		}
		if o, ok := owner[k.blocks[atSTC]]; ok && o != at {
			return []part{{classes: classes}}
		}
		owner[k.blocks[atSTC]] = at
		out[at].classes = append(out[at].classes, k)
	}
	return out
}

// stemOf is a class's name without its watts.
func stemOf(k *class) string {
	w, ok := wattsIn(k.name)
	if !ok || !hasLetters(k.name) {
		return ""
	}
	return strings.Trim(strings.Replace(squeezed(k.name), strconv.FormatFloat(w, 'f', -1, 64), "", 1), "-/_. ")
}

// byPart gives a row's values to the series that head their columns; nil where none do.
func (d *document) byPart(r *row) []*row {
	if len(d.parts) < 2 {
		return nil
	}
	out := make([]*row, len(d.parts))
	found := 0
	for _, c := range r.values {
		p := d.partOver(c)
		if p < 0 {
			continue
		}
		if out[p] == nil {
			own := *r
			own.values = nil
			out[p] = &own
			found++
		}
		out[p].values = append(out[p].values, c)
	}
	if found < 2 {
		return nil
	}
	return out
}

// partOver finds the series named above a cell, in its column.
func (d *document) partOver(c *cell) int {
	for _, v := range d.views {
		if v.page.Number != c.page {
			continue
		}
		for i := c.line - 1; i >= 0 && c.base-v.lines[i].Baseline < 16*c.size; i-- {
			for k := range v.cells[i] {
				h := &v.cells[i][k]
				if min(h.box.X1, c.box.X1) <= max(h.box.X0, c.box.X0) {
					continue
				}
				name := strings.Trim(squeezed(h.text), "-/_. ")
				if p := slices.IndexFunc(d.parts, func(p part) bool { return p.stem == name }); p >= 0 {
					return p
				}
			}
		}
	}
	return -1
}
