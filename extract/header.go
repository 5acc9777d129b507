package extract

import (
	"cmp"
	"math"
	"slices"

	"pvtally/extract/page"
)

// headerReach is how far above its first row a table's header and title may begin, in sizes of the lettering; lines in between keep it going.
const headerReach = 4.5

// readHeader looks above an upright table for what its columns are called and which condition it holds at.
func (v *view) readHeader(b *block, first *row) {
	top, size := first.base, first.label[0].size
	x0, x1 := first.box.X0-3, b.columns[len(b.columns)-1].x+0.6*b.pitch()
	if b.left {
		x0, x1 = b.columns[0].x-0.6*b.pitch(), first.box.X0-3
	}
	var lines [][]*cell // nearest first
	y := top
	for i := len(v.cells) - 1; i >= 0 && len(lines) < 9; i-- {
		base := v.lines[i].Baseline
		if base >= top-0.3*size {
			continue
		}
		if y-base > headerReach*size {
			break
		}
		var line []*cell
		stop := false
		for k := range v.cells[i] {
			c := &v.cells[i][k]
			if c.box.X0 > x1 || c.box.X1 < x0 || b.holds(c) {
				continue
			}
			line = append(line, c)
			if electrical[c.concept] && c.base < top-size && v.holdsValues(c) {
				stop = true
			}
		}
		if stop {
			break
		}
		if len(line) > 0 {
			lines = append(lines, line)
			y = base
		}
	}
	b.columnConditions(lines)
	b.columnNames(lines)
	b.gainColumns(lines)
	b.ownTitle(lines)
	if b.cond == atGain || b.cond == atRatio {
		for _, line := range lines {
			for _, c := range line {
				b.title += " " + c.text // its class is named somewhere above it
			}
		}
	}
}

// holds reports whether a cell is one of the table's own values.
func (b *block) holds(c *cell) bool {
	for _, col := range b.columns {
		for _, v := range col.values {
			if v.cell == c {
				return true
			}
		}
	}
	return false
}

// holdsValues reports whether a label cell has electrical values of its own: it then belongs to the table above.
func (v *view) holdsValues(c *cell) bool {
	for _, r := range v.rows {
		if slices.Contains(r.label, c) {
			return len(fitting(r, r.concept)) > 0
		}
	}
	return false
}

// columnConditions reads a header line that names a condition for the columns: "STC | NMOT | STC | NMOT", or one title over each half.
func (b *block) columnConditions(lines [][]*cell) {
	for _, line := range lines {
		var named []*cell
		conds := map[*cell]condition{}
		seen := map[condition]bool{}
		for _, c := range line {
			cond := c.condition()
			if cond == unknownCondition || cond == mixedCondition {
				continue
			}
			named = append(named, c)
			conds[c] = cond
			seen[cond] = true
		}
		if len(named) < 2 || len(seen) < 2 || len(b.columns) < 2 {
			continue
		}
		for _, col := range b.columns {
			c := nearestCell(named, col.x)
			col.cond = conds[c]
		}
		return
	}
}

func nearestCell(cells []*cell, x float64) *cell {
	return slices.MinFunc(cells, func(a, b *cell) int {
		return cmp.Compare(distance(a.box, x), distance(b.box, x))
	})
}

// distance of x from the middle of a box, less where x lies under the box.
func distance(b page.Box, x float64) float64 {
	d := math.Abs((b.X0+b.X1)/2 - x)
	if x >= b.X0 && x <= b.X1 {
		return d / 4
	}
	return d
}

// classes are the columns in groups of one class each: single columns, or the pair STC and NMOT of one class.
func (b *block) classes() [][]*column {
	columns := slices.DeleteFunc(slices.Clone(b.columns), func(c *column) bool { return c.gain != nil && c.class != nil })
	if len(columns) == 0 {
		return nil
	}
	first := columns[0].cond
	if first == unknownCondition {
		return single(columns)
	}
	per := map[condition]int{}
	for _, c := range columns {
		per[c.cond]++
	}
	if len(per) == 1 {
		return single(columns)
	}
	n := per[first]
	for _, k := range per {
		if k != n {
			return single(columns)
		}
	}
	out := make([][]*column, n)
	at := map[condition]int{}
	for _, c := range columns {
		out[at[c.cond]] = append(out[at[c.cond]], c)
		at[c.cond]++
	}
	return out
}

func single(columns []*column) [][]*column {
	out := make([][]*column, len(columns))
	for i, c := range columns {
		out[i] = []*column{c}
	}
	return out
}

func (b *block) classPitch(classes [][]*column) float64 {
	d := math.Inf(1)
	mid := func(k int) float64 { return (classes[k][0].x + classes[k][len(classes[k])-1].x) / 2 }
	for k := 1; k < len(classes); k++ {
		d = min(d, math.Abs(mid(k)-mid(k-1)))
	}
	if math.IsInf(d, 1) {
		return 90
	}
	return d
}

// gainColumns reads a header of per cents over the columns of a gain or ratio table.
func (b *block) gainColumns(lines [][]*cell) {
	if b.cond == unknownCondition {
		for _, line := range lines {
			for _, c := range line {
				if cond := c.condition(); cond == atGain || cond == atRatio {
					b.cond = cond
				}
			}
		}
	}
	if b.cond != atGain && b.cond != atRatio {
		return
	}
	for _, line := range lines {
		var gains []value
		for _, c := range line {
			for _, q := range c.quantities {
				if q.Unit == "%" && len(q.Terms) == 1 {
					gains = append(gains, value{q, c, c.boxOf(q.Start, q.End), c.text})
				}
			}
		}
		if len(gains) < 2 {
			continue
		}
		for i := range gains {
			col, d := b.nearest(gains[i].center())
			if d < 0.5*b.pitch() {
				col.gain = &gains[i]
			}
		}
		return
	}
}
