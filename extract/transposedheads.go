package extract

import (
	"regexp"
	"slices"
	"strings"

	"pvtally/extract/label"
)

// headConcept is what a column's header names; where its first words are unknown ("Corr. c.-circ. Icc [A]"), its last ones.
func headConcept(head string) label.Concept {
	for rest := head; rest != ""; {
		if f := label.Find(rest); f.Share() >= labelShare*0.7 && (rest == head || electrical[f.Concept()]) {
			return f.Concept()
		}
		_, rest, _ = strings.Cut(rest, " ")
	}
	return ""
}

// hyphened is a word divided at the end of a header's line.
var hyphened = regexp.MustCompile(`-\s+(\pL)`)

// columnHeads collects, word by word, what stands over each column, up to the table's title; the title is the first line above that names a
// condition or stands apart from the columns.
func (v *view) columnHeads(first int, centers []float64) (heads []string, titles []*cell) {
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
		ofColumns := conditionsOfColumns(v.cells[i], gapOf(centers))
		for k := range slices.Backward(v.cells[i]) { // what is spread goes before what stands there already
			c := &v.cells[i][k]
			f := c.whole()
			cond := conditionOf(c.text, f)
			if c.box.X0 > centers[len(centers)-1]+gapOf(centers) {
				continue // another column of the page
			}
			if c.box.X1 < centers[0]-60 && cond == unknownCondition {
				continue
			}
			if cond == mixedCondition && c.box.W() > 3*gapOf(centers) {
				return heads, nil // the title of both halves
			}
			if cond != unknownCondition && cond != mixedCondition && !ofColumns && isTitle(f, cond, c.box.W() > 1.2*gapOf(centers)) {
				titles = append(titles, c)
				continue
			}
			over = true
			v.spread(c, centers, heads)
		}
		if titles != nil {
			return heads, titles
		}
		if over {
			y = base
		}
	}
	return heads, nil
}

// conditionsOfColumns tells whether a header's line names one condition again and again, over each of its columns.
func conditionsOfColumns(line []cell, gap float64) bool {
	n := map[condition]int{}
	for k := range line {
		if c := &line[k]; c.box.W() < 1.2*gap {
			if cond := c.condition(); cond != unknownCondition && cond != mixedCondition && cond != atGain && cond != atRatio {
				n[cond]++
			}
		}
	}
	for _, k := range n {
		if k >= 3 {
			return true
		}
	}
	return false
}

// headsTitle is the condition that all electrical columns' own headers name.
func headsTitle(heads []string, concepts []label.Concept) string {
	all := unknownCondition
	for k, h := range heads {
		if !electrical[concepts[k]] {
			continue
		}
		cond := conditionOf(h, label.Find(h))
		if cond == unknownCondition || cond == mixedCondition || all != unknownCondition && cond != all {
			return ""
		}
		all = cond
	}
	return strings.ToUpper(string(all))
}

// titleOver is the title that stands over the columns from left to right; a single title is the whole table's where it does not clearly stand over a part.
func titleOver(titles []*cell, left, right float64, whole bool) string {
	for _, c := range titles {
		if mid := (c.box.X0 + c.box.X1) / 2; whole || mid > left && mid < right {
			return c.text
		}
	}
	return ""
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
