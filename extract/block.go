package extract

import (
	"cmp"
	"math"
	"slices"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
)

// electrical are the concepts whose rows make an electrical table.
var electrical = map[label.Concept]bool{"pmax": true, "vmp": true, "imp": true, "voc": true, "isc": true, "eff": true, "ff": true}

// value is one printed quantity at its place, with the label it stands by.
type value struct {
	q     quantity.Quantity
	cell  *cell
	box   page.Box
	label string
}

func (v value) center() float64 { return (v.box.X0 + v.box.X1) / 2 }

// term is the quantity's first number: for "47.5 V ± 5 %" the centre.
func (v value) term() quantity.Term { return v.q.Terms[0] }

// block is one electrical table, whichever way it lies on the page.
type block struct {
	page    int
	box     page.Box
	cond    condition // of the whole, where no column says otherwise
	title   string
	titled  *cell
	first   *row   // of an upright table
	left    bool   // its values stand left of their labels
	beside  *value // the gain that a cell beside the rows' labels names for all of them
	columns []*column
}

// column is one class under one condition: a column of an upright table, a line of a transposed one.
type column struct {
	x      float64 // centre, for upright tables
	y      float64 // baseline, for transposed ones
	cond   condition
	name   string // header text: the class's own name or its watts
	named  *cell
	gain   *value  // rear gain or ratio in per cent
	class  *column // of a transposed table's line: the class's STC line it belongs to
	values map[label.Concept]value
	doubt  map[label.Concept][]value // seen and not decided
}

func newColumn() *column {
	return &column{values: map[label.Concept]value{}, doubt: map[label.Concept][]value{}}
}

// rowBlocks builds the upright tables of a page: labels down the side, classes across.
func (v *view) rowBlocks() []*block {
	var out []*block
	for _, group := range v.electricalGroups() {
		if b := v.rowBlock(group); b != nil {
			out = append(out, b)
		}
		if left := v.leftOf(group); len(left) >= 3 {
			if b := v.rowBlock(left); b != nil {
				b.left = true
				out = append(out, b)
			}
		}
	}
	return out
}

// leftOf gives the rows of a table whose labels stand in the middle with the values that stand left of them.
func (v *view) leftOf(group []*row) []*row {
	var out []*row
	for _, r := range group {
		own := *r
		own.values = nil
		for _, c := range v.loose {
			if abs(c.base-r.base) < 0.3*c.size && c.box.X1 < r.box.X0 {
				own.values = append(own.values, c)
			}
		}
		if len(fitting(&own, r.concept)) > 0 {
			out = append(out, &own)
		}
	}
	return out
}

// fitting gives the quantities of a row that its concept can mean, by unit.
func fitting(r *row, concept label.Concept) []value {
	var out []value
	for _, c := range r.values {
		for _, q := range c.quantities {
			if !unitFits(concept, q) {
				continue
			}
			out = append(out, value{q, c, c.boxOf(q.Start, q.End), r.text()})
		}
	}
	slices.SortStableFunc(out, func(a, b value) int { return cmp.Compare(a.box.X0, b.box.X0) })
	return out
}

func unitFits(concept label.Concept, q quantity.Quantity) bool {
	if q.Shape != quantity.Single && q.Shape != quantity.Within {
		return false
	}
	u := q.Unit
	if u == quantity.None {
		return true
	}
	switch concept {
	case "pmax":
		return u == quantity.W
	case "vmp", "voc":
		return u == quantity.V
	case "imp", "isc":
		return u == quantity.A
	case "eff", "ff":
		return u == quantity.Percent
	}
	return false
}

// electricalGroups gathers the electrical rows that stand under each other into tables: the same label column, no concept twice.
func (v *view) electricalGroups() [][]*row {
	var rows []*row
	for _, r := range v.rows {
		if electrical[r.concept] && (len(fitting(r, r.concept)) > 0 || len(v.leftOf([]*row{r})) > 0) {
			rows = append(rows, r)
		}
	}
	var out [][]*row
	taken := map[*row]bool{}
	for i, first := range rows {
		if taken[first] {
			continue
		}
		group := []*row{first}
		taken[first] = true
		for _, r := range rows[i+1:] {
			if taken[r] || !overlapX(first, r) {
				continue
			}
			last := group[len(group)-1]
			if v.parted(last, r) || slices.ContainsFunc(group, func(g *row) bool { return g.concept == r.concept }) || v.titleBetween(last, r) {
				break
			}
			group = append(group, r)
			taken[r] = true
		}
		out = append(out, group)
	}
	return out
}

// parted tells whether two rows stand too far from each other for one table: the rows of other quantities between them bridge the gap.
func (v *view) parted(a, b *row) bool {
	at := a.base
	for _, r := range v.rows {
		if r.base > at && r.base < b.base && len(r.values) > 0 && abs(r.box.X0-a.box.X0) < 2.5 && r.base-at < tableGap*a.label[0].size {
			at = r.base
		}
	}
	return b.base-at > tableGap*b.label[0].size
}

// tableGap is the gap, in sizes of the lettering, between two rows of one table at most.
const tableGap = 6.5

// titleBetween reports whether a line that names a condition parts two rows.
func (v *view) titleBetween(a, b *row) bool {
	for i := range v.cells {
		for k := range v.cells[i] {
			c := &v.cells[i][k]
			if c.base <= a.base+0.3*c.size || c.base >= b.base-0.3*c.size || c.box.X0 > a.box.X1 || c.box.X1 < a.box.X0 {
				continue
			}
			if cond := c.condition(); cond != unknownCondition && !electrical[c.concept] {
				return true
			}
		}
	}
	return false
}

// rowBlock finds the columns of a group of rows and files every value under its column.
func (v *view) rowBlock(group []*row) *block {
	group = slices.DeleteFunc(slices.Clone(group), func(r *row) bool { return len(fitting(r, r.concept)) == 0 })
	if len(group) == 0 {
		return nil
	}
	values := make([][]value, len(group))
	for i, r := range group {
		values[i] = fitting(r, r.concept)
	}
	if oneEach(values) {
		return v.listBlock(group, values)
	}
	if len(group) == 1 && len(values[0]) < 2 {
		return nil // a word with a figure beside it is no table
	}
	centers := columnCenters(values)
	if len(centers) == 0 {
		return nil
	}
	b := &block{page: v.page.Number, box: group[0].box, first: group[0]}
	for _, x := range centers {
		c := newColumn()
		c.x = x
		b.columns = append(b.columns, c)
	}
	for i, r := range group {
		b.box = b.box.Union(r.box)
		for _, val := range values[i] {
			b.box = b.box.Union(val.box)
		}
		b.file(r.concept, values[i])
	}
	return b
}

// oneEach: nearly every row has just one value: a list of one class, whose values need not stand in one column.
func oneEach(rows [][]value) bool {
	ones := 0
	for _, row := range rows {
		if len(row) == 1 {
			ones++
		}
	}
	return len(rows) >= 2 && ones*4 >= len(rows)*3
}

// listBlock builds the table of a one-class list: of each row the value next to its label.
func (v *view) listBlock(group []*row, values [][]value) *block {
	b := &block{page: v.page.Number, box: group[0].box, first: group[0]}
	c := newColumn()
	for i, r := range group {
		val := values[i][0]
		b.box = b.box.Union(r.box).Union(val.box)
		c.x += val.center() / float64(len(group))
		c.put(r.concept, val)
	}
	b.columns = []*column{c}
	return b
}

// columnCenters finds the columns from the alignment of all rows' values: stretches that overlap are one column, and a column that fewer than
// half the fullest rows share is none (a stray number beside the table).
func columnCenters(rows [][]value) []float64 {
	type stretch struct {
		x0, x1 float64
		rows   map[int]bool
		sum    float64
		n      int
	}
	var all []*stretch
	for i, row := range rows {
		for _, val := range row {
			var hit *stretch
			for _, s := range all {
				if min(s.x1, val.box.X1)-max(s.x0, val.box.X0) > 0.25*min(s.x1-s.x0, val.box.W()) {
					hit = s
					break
				}
			}
			if hit == nil {
				hit = &stretch{x0: val.box.X0, x1: val.box.X1, rows: map[int]bool{}}
				all = append(all, hit)
			}
			hit.x0, hit.x1 = min(hit.x0, val.box.X0), max(hit.x1, val.box.X1)
			hit.rows[i] = true
			hit.sum += val.center()
			hit.n++
		}
	}
	most := 0
	for _, s := range all {
		most = max(most, len(s.rows))
	}
	var out []float64
	for _, s := range all {
		if len(s.rows)*2 > most || most == 1 {
			out = append(out, s.sum/float64(s.n))
		}
	}
	slices.Sort(out)
	return out
}

// file puts a row's values into the columns: each to the nearest; fewer values than columns, evenly placed, are merged cells that each cover
// several columns.
func (b *block) file(concept label.Concept, values []value) {
	n := len(b.columns)
	if k := len(values); k > 0 && k < n && n%k == 0 && b.spans(values, n/k) {
		for i, val := range values {
			for j := range n / k {
				b.columns[i*(n/k)+j].put(concept, val)
			}
		}
		return
	}
	for _, val := range values {
		c, d := b.nearest(val.center())
		if d > 0.5*b.pitch()+1 {
			continue
		}
		c.put(concept, val)
	}
}

func (c *column) put(concept label.Concept, val value) {
	if old, ok := c.values[concept]; ok {
		if old.term().Literal != val.term().Literal {
			c.doubt[concept] = append(c.doubt[concept], old, val)
		}
		return
	}
	c.values[concept] = val
}

// spans reports whether each value is centred over its own m columns and stands under none of them.
func (b *block) spans(values []value, m int) bool {
	for i, val := range values {
		mid := (b.columns[i*m].x + b.columns[i*m+m-1].x) / 2
		if math.Abs(val.center()-mid) > 0.3*b.pitch() {
			return false
		}
	}
	return true
}

func (b *block) nearest(x float64) (*column, float64) {
	var best *column
	d := math.Inf(1)
	for _, c := range b.columns {
		if e := math.Abs(c.x - x); e < d {
			best, d = c, e
		}
	}
	return best, d
}

// pitch is the least distance of two columns.
func (b *block) pitch() float64 {
	d := math.Inf(1)
	for i := 1; i < len(b.columns); i++ {
		d = min(d, b.columns[i].x-b.columns[i-1].x)
	}
	if math.IsInf(d, 1) {
		return 60
	}
	return d
}

// mergeLists joins one-class lists that stand side by side and share no quantity: the halves of one table.
func mergeLists(blocks []*block) []*block {
	var out []*block
	for _, b := range blocks {
		into := slices.IndexFunc(out, func(o *block) bool {
			if len(o.columns) != 1 || len(b.columns) != 1 || !alongside(b, o) || o.box.X1 > b.box.X0 && b.box.X1 > o.box.X0 {
				return false
			}
			for c := range b.columns[0].values {
				if _, both := o.columns[0].values[c]; both {
					return false
				}
			}
			return true
		})
		if into < 0 {
			out = append(out, b)
			continue
		}
		for _, c := range electricalOrder {
			if v, ok := b.columns[0].values[c]; ok {
				out[into].columns[0].put(c, v)
			}
		}
	}
	return out
}
