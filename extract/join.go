package extract

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/table"
)

// joinLines mends what stands on several lines: labels that run on, values off their label's baseline, values of several lines.
func (v *view) joinLines() {
	v.joinLabels()
	v.adoptValues()
	for _, r := range v.rows {
		if !electrical[r.concept] {
			v.joinStacked(r)
		}
	}
}

// joinStacked makes one text of a value that runs over several lines of a narrow column: "2384 × 1303 × 33" | "mm", "43 °C ±" | "2 °C".
func (v *view) joinStacked(r *row) {
	for i := 0; i < len(r.values); i++ {
		if r.values[i] == r.label[0] {
			continue
		}
		stack := []*cell{r.values[i]}
		var rest []*cell
		for _, c := range r.values[i+1:] {
			if min(c.box.X1, r.values[i].box.X1) > max(c.box.X0, r.values[i].box.X0) && c != r.label[0] && abs(c.size-r.values[i].size) < 0.1*c.size {
				stack = append(stack, c)
			} else {
				rest = append(rest, c)
			}
		}
		slices.SortStableFunc(stack, func(a, b *cell) int { return cmp.Compare(a.base, b.base) })
		if len(stack) < 2 || !tight(stack) {
			continue
		}
		runs := make([]*table.Run, len(stack))
		for k, c := range stack {
			runs[k] = c.run.Cut(c.off, c.off+len(c.text))
		}
		joined := table.Join(runs...)
		c := newCell(joined, 0, strings.ReplaceAll(joined.Text, "\t", " "), stack[0].page, stack[0].line)
		r.values = append(append(slices.Clone(r.values[:i]), &c), rest...)
	}
}

// tight: the lines of a stack follow each other without a gap.
func tight(stack []*cell) bool {
	for i := 1; i < len(stack); i++ {
		if d := stack[i].base - stack[i-1].base; d <= 0 || d > 1.6*stack[i].size {
			return false
		}
	}
	return true
}

const (
	labelPitch  = 1.45 // lines of one label stand no farther apart, in sizes of the lettering
	valueReach  = 1.9  // a value without a label on its line belongs to a label no farther above it
	offBaseline = 0.75 // a value this near a row's baseline is on its line, only set a little off
	aboveReach  = 0.95 // nor farther below it: the upper of two lines centred on their label
)

// joinLabels puts a label's second line to its first where one of the two has no value of its own and both together mean more.
func (v *view) joinLabels() {
	for i := 0; i < len(v.rows); i++ {
		a := v.rows[i]
		for j := i + 1; j < len(v.rows); j++ {
			b := v.rows[j]
			size := a.label[0].size
			if b.base-lastBase(a) > labelPitch*size {
				break
			}
			if b.base <= a.base || !overlapX(a, b) || len(a.values) > 0 && len(b.values) > 0 && !(weak(a.concept) || a.concept == "") || v.ruledBetween(lastBase(a), b.base, a.box.X0, a.box.X1) {
				continue
			}
			both := label.Find(a.text() + " " + b.text())
			concept := both.Concept()
			if both.Share() < labelShare || !mendsLabel(a, b, concept) || len(a.values) == 0 && len(b.values) == 0 && !v.looseBetween(a, b) {
				continue
			}
			a.label = append(a.label, b.label...)
			a.values = append(a.values, b.values...)
			a.read()
			a.found, a.concept = both, concept
			v.rows = slices.Delete(v.rows, j, j+1)
			j--
		}
	}
}

// mendsLabel: joined, the two lines mean something that neither means alone, or the second is only the first's bracket.
func mendsLabel(a, b *row, both label.Concept) bool {
	if both == "" || len(a.values) > 0 && len(b.values) > 0 && (both == b.concept && b.found.Share() > 0.9 || !hasQuantity(b.values) && !hasQuantity(a.values)) {
		return false
	}
	if len(a.values) == 0 && len(b.values) == 0 && a.concept == b.concept || weak(a.concept) && both == b.concept {
		return true
	}
	if a.concept != "" && b.concept != "" && a.concept != b.concept {
		return both != a.concept && both != b.concept
	}
	return both != a.concept || b.concept == "" && b.found.Known > 0
}

// weak: the word says what kind of quantity it is, not which.
func weak(c label.Concept) bool {
	return c == "voltage" || c == "current" || c == "power" || c == "model"
}

// looseBetween reports whether a value without a label stands right of two label lines, at a height between theirs: it is centred on both.
func (v *view) looseBetween(a, b *row) bool {
	return slices.ContainsFunc(v.loose, func(c *cell) bool {
		return c.base > a.base && c.base < b.base && c.box.X0 > max(a.box.X1, b.box.X1)
	})
}

func lastBase(r *row) float64 { return r.label[len(r.label)-1].base }

func overlapX(a, b *row) bool {
	lo, hi := max(a.box.X0, b.box.X0), min(a.box.X1, b.box.X1)
	return math.Abs(a.box.X0-b.box.X0) <= 2.5 || hi-lo > 0.5*min(a.box.W(), b.box.W())
}

// ruledBetween reports whether a horizontal rule parts two baselines over the given stretch.
func (v *view) ruledBetween(y0, y1, x0, x1 float64) bool {
	for _, r := range v.ruleYs {
		if r.Box.Y0 > y0 && r.Box.Y0 < y1 && r.Box.X0 < x1 && r.Box.X1 > x0 {
			return true
		}
	}
	return false
}

// adoptValues gives every cell without a label on its line to the nearest label on its left that could own it: in the label's value column,
// within reach, no rule between. A label without a value of its own goes before one that has some.
func (v *view) adoptValues() {
	var left []*cell
	for _, c := range v.loose {
		if r := v.owner(c); r != nil {
			r.values = append(r.values, c)
			continue
		}
		left = append(left, c)
	}
	v.loose = left
	// Worded second lines of a value open rows of their own on their line; they come home the same way.
	for i := 0; i < len(v.rows); i++ {
		r := v.rows[i]
		if r.concept != "" && isQuantityLabel(r.label[0]) || len(r.label) > 1 || v.onEdge(r.label[0]) {
			continue
		}
		if o := v.owner(r.label[0]); o != nil && o != r {
			o.values = append(o.values, r.label[0])
			for _, c := range r.values {
				if c != r.label[0] {
					o.values = append(o.values, c)
				}
			}
			v.rows = slices.Delete(v.rows, i, i+1)
			i--
		}
	}
}

// tableRow is how many values beside an unknown label make it a table's.
const tableRow = 3

// beside counts the values on the label's own line.
func (r *row) beside() int {
	n := 0
	for _, c := range r.values {
		if abs(c.base-r.base) < 0.5*c.size {
			n++
		}
	}
	return n
}

func (v *view) owner(c *cell) *row {
	if r := v.cardOf(c); r != nil {
		return r
	}
	var best *row
	bestCost := math.Inf(1)
	for _, r := range v.rows {
		if r.label[0] == c || r.box.X1 > c.box.X0+1 || r.concept == "" && !v.onEdge(r.label[0]) {
			continue
		}
		d := nearestBase(r, c.base)
		if c.base == r.base || d > valueReach*max(c.size, r.label[0].size) || d < -aboveReach*min(c.size, r.label[0].size) {
			continue
		}
		if r.concept == "" && r.beside() >= tableRow {
			continue // a row of a table, or its head
		}
		if len(r.values) > 0 && !inValueColumn(r, c) && math.Abs(d) > offBaseline*c.size {
			continue
		}
		if v.between(r, c) || v.cardValue(r.label[0]) && c.base > r.base || math.Abs(d) > 0.5*c.size && v.ruledBetween(min(r.base, c.base), max(r.base, c.base), r.box.X0, c.box.X1) {
			continue
		}
		cost := math.Abs(d) / c.size
		if len(r.values) > 0 && d < 0 {
			cost += 0.8 // a second line stands below the first, not above it
		}
		if len(r.values) == 0 {
			cost -= 0.5
		}
		if cost < bestCost {
			best, bestCost = r, cost
		}
	}
	return best
}

// nearestBase is the signed distance from the row's nearest baseline (label or value) down to y; next to nothing between the lines of its label.
func nearestBase(r *row, y float64) float64 {
	best := y - r.base
	if y > r.base && y < lastBase(r) {
		return math.SmallestNonzeroFloat64
	}
	for _, c := range r.label {
		if d := y - c.base; math.Abs(d) < math.Abs(best) {
			best = d
		}
	}
	for _, c := range r.values {
		if d := y - c.base; math.Abs(d) < math.Abs(best) {
			best = d
		}
	}
	return best
}

// inValueColumn: the cell overlaps what the row already holds, or lines up with it.
func inValueColumn(r *row, c *cell) bool {
	for _, o := range r.values {
		if o == r.label[0] {
			continue
		}
		if min(o.box.X1, c.box.X1)-max(o.box.X0, c.box.X0) > 0 || math.Abs(o.box.X0-c.box.X0) < 3 || math.Abs(o.box.X1-c.box.X1) < 3 {
			return true
		}
	}
	return false
}

// between reports whether another label stands between the row's label and the cell, near enough to claim it.
func (v *view) between(r *row, c *cell) bool {
	for _, o := range v.rows {
		if o == r || o.concept == "" && !v.onEdge(o.label[0]) || o.label[0] == c {
			continue
		}
		if o.box.X0 > r.box.X1 && o.box.X1 < c.box.X0 && math.Abs(o.base-c.base) < 1.5*c.size {
			return true
		}
	}
	return false
}
