package extract

import (
	"math"
	"slices"
	"strings"

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
		lines := v.numericLines(i)
		if len(lines) == 0 {
			continue
		}
		if b := v.transposed(lines); b != nil {
			out = append(out, b)
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
func (v *view) numericLines(i int) []int {
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
		vals := v.lineValues(j)
		if len(vals) < 3 || !sameColumns(first, vals) {
			continue
		}
		pitch = min(pitch, gap)
		out = append(out, j)
	}
	return out
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

// transposed reads the headers above the numeric lines and, if they are electrical, files each line as a class.
func (v *view) transposed(lines []int) *block {
	rows := make([][]value, len(lines))
	for k, i := range lines {
		rows[k] = v.lineValues(i)
	}
	centers := columnCenters(rows)
	if len(centers) < 3 {
		return nil
	}
	heads, title := v.columnHeads(lines[0], centers)
	concepts := make([]label.Concept, len(centers))
	distinct := map[label.Concept]bool{}
	for k, h := range heads {
		f := label.Find(h)
		if c := f.Concept(); f.Share() >= labelShare*0.7 {
			concepts[k] = c
			if electrical[c] {
				distinct[c] = true
			}
		}
	}
	if len(distinct) < 3 {
		return nil
	}
	b := &block{page: v.page.Number, box: v.lines[lines[0]].Box, title: title}
	b.cond = conditionOf(title, label.Find(title))
	for k, i := range lines {
		col := newColumn()
		col.y = v.lines[i].Baseline
		b.box = b.box.Union(v.lines[i].Box)
		for _, val := range rows[k] {
			at := nearestIndex(centers, val.center())
			if at < 0 {
				continue
			}
			val.label = heads[at]
			switch c := concepts[at]; {
			case electrical[c] && unitFits(c, val.q):
				col.put(c, val)
			case c == "rear_gain" || c == "rear_ratio" || c == "" && val.q.Unit == quantity.Percent && col.gain == nil && !distinct["eff"]:
				g := val
				col.gain = &g
				if c != "" && b.cond != atGain && b.cond != atRatio {
					b.cond = condition(c)
				}
			}
		}
		for n := range v.cells[i] {
			if c := &v.cells[i][n]; !c.isValue() && c.box.X1 < centers[0] && mayName(c) {
				col.name, col.named = c.text, c
			}
		}
		b.columns = append(b.columns, col)
	}
	return b
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

// columnHeads collects, word by word, what stands over each column, up to the table's title; the title is the first line above that names a
// condition or stands apart from the columns.
func (v *view) columnHeads(first int, centers []float64) (heads []string, title string) {
	heads = make([]string, len(centers))
	y := v.lines[first].Baseline
	size := v.cells[first][0].size
	for i := first - 1; i >= 0 && first-i <= 14; i-- {
		base := v.lines[i].Baseline
		if y-base > 4*size {
			break
		}
		if len(v.lineValues(i)) >= 3 {
			break
		}
		var over bool
		for k := range slices.Backward(v.cells[i]) { // what is spread goes before what stands there already
			c := &v.cells[i][k]
			f := label.Find(c.text)
			cond := conditionOf(c.text, f)
			if c.box.X1 < centers[0]-60 && cond == unknownCondition {
				continue
			}
			if cond != unknownCondition && cond != mixedCondition && isTitle(f, cond, c.box.W() > 1.2*gapOf(centers)) {
				return heads, c.text
			}
			over = true
			v.spread(c, centers, heads)
		}
		if over {
			y = base
		}
	}
	return heads, ""
}

// isTitle tells a table's title from a column's header that names a condition ("Power at STC", "Pmax gain"): a title is wide, or speaks of no quantity.
func isTitle(f label.Found, cond condition, wide bool) bool {
	if electrical[f.Concept()] {
		return false
	}
	if cond == atGain || cond == atRatio {
		return wide
	}
	return wide || !f.Any("pmax", "vmp", "imp", "voc", "isc", "power", "current", "voltage", "eff")
}

func gapOf(centers []float64) float64 {
	if len(centers) < 2 {
		return 60
	}
	return (centers[len(centers)-1] - centers[0]) / float64(len(centers)-1)
}

// spread puts a header cell's words before what already stands over the columns.
func (v *view) spread(c *cell, centers []float64, heads []string) {
	parts := make([][]string, len(centers))
	whole := nearestIndex(centers, (c.box.X0+c.box.X1)/2)
	narrow := c.box.W() < 1.1*gapOf(centers)
	for _, w := range c.run.Words(c.off, c.off+len(c.text)) {
		at := nearestIndex(centers, (w.Box.X0+w.Box.X1)/2)
		if narrow && whole >= 0 {
			at = whole
		}
		if at >= 0 {
			parts[at] = append(parts[at], w.Text)
		}
	}
	for k, p := range parts {
		if len(p) > 0 {
			heads[k] = strings.TrimSpace(strings.Join(p, " ") + " " + heads[k])
		}
	}
}
