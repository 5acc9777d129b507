package extract

import (
	"cmp"
	"math"
	"slices"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
)

// transposedBlocks builds the tables that run the other way: quantities across, classes down. Such a table is a set of lines whose numbers line up
// under headers of which at least three mean different electrical quantities.
func (v *view) transposedBlocks(used []*block) []*block {
	var out []*block
	for i := 0; i < len(v.cells); i++ {
		if insideAny(used, v.lines[i].Box) {
			continue
		}
		lines := v.numericLines(i, used)
		if len(lines) == 0 {
			continue
		}
		if b := v.transposed(lines); b != nil {
			out = append(out, b...)
			i = lines[len(lines)-1]
		}
	}
	return out
}

func insideAny(blocks []*block, box page.Box) bool {
	return slices.ContainsFunc(blocks, func(b *block) bool {
		y := (box.Y0 + box.Y1) / 2
		return len(b.columns) > 0 && y > b.box.Y0 && y < b.box.Y1 && min(box.X1, b.box.X1)-max(box.X0, b.box.X0) > 0.5*box.W()
	})
}

// lineValues are the plain numbers of a line, left to right.
func (v *view) lineValues(i int) []value {
	var out []value
	for k := range v.cells[i] {
		c := &v.cells[i][k]
		if !c.isValue() {
			continue
		}
		for _, q := range c.quantities {
			if q.Shape == quantity.Single || q.Shape == quantity.Within {
				out = append(out, value{q, c, c.boxOf(q.Start, q.End), ""})
			}
		}
	}
	return out
}

// numericLines gathers from line i on the lines whose numbers stand in the same columns; lines without numbers in between end it soon.
func (v *view) numericLines(i int, used []*block) []int {
	first := v.lineValues(i)
	if len(first) < 4 {
		return nil
	}
	out := []int{i}
	pitch := math.Inf(1)
	for j := i + 1; j < len(v.cells); j++ {
		gap := v.lines[j].Baseline - v.lines[out[len(out)-1]].Baseline
		if gap > 4.5*first[0].cell.size || gap > 2.6*pitch {
			break
		}
		if insideAny(used, v.lines[j].Box) {
			break
		}
		vals := within(v.lineValues(j), first[0].box.X0, first[len(first)-1].box.X1)
		if !sameColumns(first, vals) || len(vals) < 2 || len(vals) < 3 && !allUnder(first, vals) {
			continue
		}
		pitch = min(pitch, gap)
		out = append(out, j)
	}
	return out
}

// within leaves out what stands before the first column (a class's watts, a gain) and behind the last (another part of the page).
func within(vals []value, x0, x1 float64) []value {
	return slices.DeleteFunc(vals, func(v value) bool { return v.box.X1 < x0 || v.box.X0 > x1 })
}

// allUnder: every value stands under one of the first line's; a short line (a gain with its power alone) must not be anything else.
func allUnder(first, vals []value) bool {
	for _, a := range vals {
		if !slices.ContainsFunc(first, func(b value) bool { return min(a.box.X1, b.box.X1)-max(a.box.X0, b.box.X0) > 0.4*a.box.W() }) && a.q.Unit != quantity.Percent {
			return false
		}
	}
	return true
}

// sameColumns: most of the values stand under a value of the first line.
func sameColumns(first, vals []value) bool {
	hits := 0
	for _, a := range vals {
		for _, b := range first {
			if min(a.box.X1, b.box.X1)-max(a.box.X0, b.box.X0) > 0 {
				hits++
				break
			}
		}
	}
	return hits*4 >= len(vals)*3
}

// transposed reads the headers above the numeric lines and, if they are electrical, files each line as a class, a class's condition, or one of its gains.
// Headers that come round again part the table into panels side by side.
func (v *view) transposed(lines []int) []*block {
	rows := make([][]value, len(lines))
	for k, i := range lines {
		rows[k] = v.lineValues(i)
	}
	centers := columnCenters(fullest(rows))
	if len(centers) < 3 {
		return nil
	}
	heads, titles := v.columnHeads(lines[0], centers)
	concepts := make([]label.Concept, len(centers))
	for k, h := range heads {
		concepts[k] = headConcept(hyphened.ReplaceAllString(h, "$1"))
	}
	var out []*block
	from := 0
	ends := panels(concepts)
	for _, to := range ends {
		left, right := v.panelSides(centers, from, to)
		whole := len(ends) == 1 || len(titles) == 1 && titles[0].box.W() > 0.3*(centers[len(centers)-1]-centers[0])
		title := cmp.Or(titleOver(titles, left, right, whole), headsTitle(heads[from:to], concepts[from:to]))
		if b := v.panel(lines, rows, centers, from, to, concepts, heads, title); b != nil {
			out = append(out, b)
		}
		from = to
	}
	return out
}

// fullest leaves out the short lines: a gain with its power alone says little about the columns.
func fullest(rows [][]value) [][]value {
	most := 0
	for _, row := range rows {
		most = max(most, len(row))
	}
	return slices.DeleteFunc(slices.Clone(rows), func(row []value) bool { return len(row)*5 < most*3 })
}

// panels gives the ends of the runs of columns in which no electrical quantity comes twice.
func panels(concepts []label.Concept) []int {
	var out []int
	seen := map[label.Concept]bool{}
	for k, c := range concepts {
		if seen[c] && (electrical[c] || c == "rear_gain") {
			out = append(out, k)
			clear(seen)
		}
		seen[c] = true
	}
	return append(out, len(concepts))
}

// panelSides is the stretch of the page that a run of columns takes.
func (v *view) panelSides(centers []float64, from, to int) (left, right float64) {
	left, right = 0.0, v.page.Width
	if from > 0 {
		left = (centers[from-1] + centers[from]) / 2
	}
	if to < len(centers) {
		right = (centers[to-1] + centers[to]) / 2
	}
	return left, right
}

// panel files the lines of one run of columns.
func (v *view) panel(lines []int, rows [][]value, centers []float64, from, to int, concepts []label.Concept, heads []string, title string) *block {
	distinct := map[label.Concept]bool{}
	for _, c := range concepts[from:to] {
		if electrical[c] {
			distinct[c] = true
		}
	}
	if len(distinct) < 3 {
		return nil
	}
	left, right := v.panelSides(centers, from, to)
	b := &block{page: v.page.Number, title: title, cond: conditionOf(title, label.Find(title))}
	var class *column
	for k, i := range lines {
		col := newColumn()
		col.y = v.lines[i].Baseline
		for _, val := range rows[k] {
			at := nearestIndex(centers, val.center())
			if at < from || at >= to {
				if val.q.Unit == quantity.Percent && val.center() > left && val.center() < centers[from] {
					g := val
					col.gain = &g
				}
				continue
			}
			val.label = heads[at]
			switch c := concepts[at]; {
			case electrical[c] && unitFits(c, val.q):
				col.put(c, val)
			case c == "rear_gain" || c == "rear_ratio" || c == "" && val.q.Unit == quantity.Percent && !distinct["eff"]:
				g := val
				col.gain = &g
				if c != "" && b.cond != atGain && b.cond != atRatio {
					b.cond = condition(c)
				}
			default:
				continue
			}
			if b.box == (page.Box{}) {
				b.box = val.box
			}
			b.box = b.box.Union(val.box)
		}
		if len(col.values) == 0 {
			continue
		}
		v.lineWords(col, i, left, min(right, centers[from]))
		if col.name == "" {
			v.nameAbove(col, lines, k, left, right)
		}
		if col.gain == nil && col.cond == unknownCondition && (b.cond == atGain || b.cond == atRatio) {
			col.cond = atSTC // the line without a gain
		}
		if col.cond == atSTC {
			class = col
		}
		col.class = class
		b.columns = append(b.columns, col)
	}
	v.namesBetween(b, lines, left, min(right, centers[from]))
	return b
}

// lineWords reads what stands before a line's numbers: the class's name, the condition, a gain.
func (v *view) lineWords(col *column, line int, left, right float64) {
	for n := range v.cells[line] {
		c := &v.cells[line][n]
		if c.box.X0 < left-2 || (c.box.X0+c.box.X1)/2 > right {
			continue
		}
		if cond := c.condition(); cond != unknownCondition && cond != mixedCondition && cond != atGain && cond != atRatio {
			col.cond = cond
			continue
		}
		if len(c.quantities) == 1 && c.isValue() && c.quantities[0].Unit == quantity.Percent && col.gain == nil {
			q := c.quantities[0]
			col.gain = &value{q: q, cell: c, box: c.box, label: c.text}
			continue
		}
		if !c.isValue() && mayName(c) {
			col.name, col.named = c.text, c
		}
	}
}

// nameAbove takes a class's name from a line of its own over the class's first line.
func (v *view) nameAbove(col *column, lines []int, k int, left, right float64) {
	first := 0
	if k > 0 {
		first = lines[k-1] + 1
	} else {
		first = lines[0] - 1
	}
	for i := max(0, first); i < lines[k]; i++ {
		for n := range v.cells[i] {
			c := &v.cells[i][n]
			if c.box.X0 >= left-2 && c.box.X1 <= right+2 && !c.isValue() && mayName(c) && hasLetters(c.text) && col.y-c.base < 2.5*c.size {
				col.name, col.named = c.text, c
			}
		}
	}
}

// namesBetween gives the lines of one class the name that stands somewhere beside them, merged over several lines.
func (v *view) namesBetween(b *block, lines []int, left, right float64) {
	for at := 0; at < len(b.columns); {
		end := at + 1
		for end < len(b.columns) && b.columns[end].class != nil && b.columns[end].class == b.columns[at].class {
			end++
		}
		group := b.columns[at:end]
		at = end
		if len(group) < 2 {
			continue
		}
		var name string
		var named *cell
		for _, c := range group {
			if c.name != "" && (named == nil || hasLetters(c.name) && !hasLetters(name)) {
				name, named = c.name, c.named
			}
		}
		top, bottom := group[0].y, group[len(group)-1].y
		for i := lines[0]; i <= lines[len(lines)-1] && (named == nil || !hasLetters(name)); i++ {
			for n := range v.cells[i] {
				c := &v.cells[i][n]
				if c.base >= top-1 && c.base <= bottom+1 && c.box.X0 >= left-2 && c.box.X1 <= right && !c.isValue() && mayName(c) && hasLetters(c.text) {
					name, named = c.text, c
				}
			}
		}
		for _, c := range group {
			c.name, c.named = name, named
		}
	}
}

func nearestIndex(centers []float64, x float64) int {
	best, d := -1, math.Inf(1)
	for i, c := range centers {
		if e := math.Abs(c - x); e < d {
			best, d = i, e
		}
	}
	pitch := math.Inf(1)
	for i := 1; i < len(centers); i++ {
		pitch = min(pitch, centers[i]-centers[i-1])
	}
	if d > 0.5*pitch {
		return -1
	}
	return best
}
