package extract

import (
	"math"
	"slices"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
	"pvtally/extract/table"
)

// row is one label with what stands beside it.
type row struct {
	page    int
	label   []*cell // one, or several where symbol and unit stand apart or the label runs over two lines
	values  []*cell // left to right, then further lines
	tail    string  // text of the label's own cell behind its head, where the value stands in the label's cell
	found   label.Found
	concept label.Concept
	base    float64 // of the label
	weight  float64 // how much like a table's row it looks, 1 at best
	box     page.Box
}

// view is one page ready for reading: its lines cut into cells, its labelled rows, and the cells that no label claimed.
type view struct {
	page   *page.Page
	lines  []table.Line
	cells  [][]cell // by line
	rows   []*row   // top to bottom
	loose  []*cell  // cells of no row
	edges  []edge
	ruleYs []page.Rule // horizontal rules
}

func newView(p *page.Page) *view {
	v := &view{page: p, lines: table.Lines(*p)}
	splitTouching(v.lines)
	for i := range v.lines {
		v.cells = append(v.cells, cells(&v.lines[i], p.Number, i))
	}
	for _, r := range p.Rules {
		if r.Box.Y0 == r.Box.Y1 && r.Box.W() > 15 {
			v.ruleYs = append(v.ruleYs, r)
		}
	}
	v.edges = labelEdges(v.cells)
	for i := range v.cells {
		v.rowsOfLine(v.cells[i])
	}
	v.joinLines()
	v.splitPaired()
	for _, r := range v.rows {
		r.readByUnit()
		r.readBySymbol()
		r.readByUnitSign()
		r.readNear()
	}
	v.atPower()
	v.partEmblems()
	v.dropRivals()
	for _, r := range v.rows {
		r.weight = v.weigh(r)
	}
	return v
}

// partEmblems frees sentences from the lettering of an emblem beside them: an outlined label has a short value.
func (v *view) partEmblems() {
	for _, r := range v.rows {
		if r.label[0].by == page.ByPicture {
			r.values = slices.DeleteFunc(r.values, func(c *cell) bool { return c.by != page.ByPicture && len([]rune(c.text)) > 40 })
		}
	}
}

// edge is a left edge at which labels stand under each other.
type edge struct {
	x     float64
	count int
}

// labelEdges finds where labels line up. An edge whose cells mostly follow a label at once is a column of worded values, no label column.
func labelEdges(lines [][]cell) []edge {
	type tally struct {
		x             float64
		labels, value int
		lines         map[int]bool
	}
	var all []*tally
	at := func(x float64) *tally {
		for _, t := range all {
			if math.Abs(t.x-x) <= 2 {
				return t
			}
		}
		t := &tally{x: x, lines: map[int]bool{}}
		all = append(all, t)
		return t
	}
	for i, line := range lines {
		for k := range line {
			c := &line[k]
			if c.isValue() {
				continue
			}
			t := at(c.box.X0)
			if k > 0 && line[k-1].isLabel() && !line[k-1].isValue() && len(line[k-1].quantities) == 0 && !c.isUnit() {
				t.value++
			} else if c.isLabel() {
				t.labels++
				t.lines[i] = true
			}
		}
	}
	var out []edge
	for _, t := range all {
		if len(t.lines) >= 3 && t.labels > t.value {
			out = append(out, edge{t.x, t.labels})
		}
	}
	slices.SortFunc(out, func(a, b edge) int { return int(math.Copysign(1, a.x-b.x)) })
	return out
}

func (v *view) onEdge(c *cell) bool {
	return slices.ContainsFunc(v.edges, func(e edge) bool { return math.Abs(e.x-c.box.X0) <= 2.5 })
}

// rowsOfLine walks one line: labels open rows, quantities and worded values fall to the row that is open.
func (v *view) rowsOfLine(line []cell) {
	var open *row
	begin := func(c *cell) {
		open = &row{page: c.page, label: []*cell{c}, base: c.base, box: c.box, found: c.head, concept: c.concept}
		if len(c.quantities) > 0 {
			open.tail = c.text[c.quantities[0].Start:]
			open.values = append(open.values, c)
		}
		v.rows = append(v.rows, open)
	}
	for k := range line {
		c := &line[k]
		if r := v.cardOf(c); r != nil && (!c.isLabel() || len(c.quantities) == 0 && !isQuantityLabel(r.label[0])) {
			r.values = append(r.values, c)
			open = nil
			continue
		}
		switch {
		case open != nil && v.othersValue(open, c):
			v.loose = append(v.loose, c)
		case c.isValue():
			if open == nil {
				v.loose = append(v.loose, c)
				continue
			}
			open.values = append(open.values, c)
		case open == nil:
			begin(c)
		case len(open.values) == 0 && (symbolFor(open, c) || sameThing(open, c)) && !symbolLikeValue(open, c), completes(open, c):
			open.label = append(open.label, c)
			open.read()
		case open.concept == "bifaciality" && electrical[c.concept]: // told apart for Voc, Isc and Pmax
			open.values = append(open.values, c)
		case v.onEdge(c), c.isLabel() && v.cardValue(c):
			begin(c)
		case c.isLabel() && (hasQuantity(open.values) || isQuantityLabel(c)):
			begin(c)
		default:
			open.values = append(open.values, c)
		}
	}
}

// weigh tells a table's row from words in a drawing and from running text: a row's label stands flush with others and is no sentence.
func (v *view) weigh(r *row) float64 {
	w := 1.0
	if !v.onEdge(r.label[0]) {
		w *= 0.87
	}
	if c := r.label[0]; len(c.quantities) > 0 && (c.letters > 30 || strings.HasSuffix(strings.TrimSpace(c.head.Text), "(")) {
		w *= 0.5
	}
	return w
}

// othersValue: between the open row's label and the cell runs another column of labels, one of which stands a part of a line off: the cell is the upper or
// lower line of that label's value.
func (v *view) othersValue(r *row, c *cell) bool {
	if electrical[r.concept] && c.isValue() {
		return false
	}
	if v.edgeLabelled(r, c) {
		return false
	}
	for i := range v.cells {
		if d := abs(v.lines[i].Baseline - c.base); d < 0.2*c.size || d > 1.25*c.size {
			continue
		}
		for k := range v.cells[i] {
			o := &v.cells[i][k]
			if o.isLabel() && v.onEdge(o) && o.box.X0 > r.box.X1 && o.box.X1 < c.box.X0 && len(o.quantities) == 0 {
				return true
			}
		}
	}
	return false
}

// edgeLabelled: on the cell's own line a label stands between the row's and the cell.
func (v *view) edgeLabelled(r *row, c *cell) bool {
	for k := range v.cells[c.line] {
		if o := &v.cells[c.line][k]; o.isLabel() && v.onEdge(o) && o.box.X0 > r.box.X1 && o.box.X1 < c.box.X0 {
			return true
		}
	}
	return false
}

// symbolFor: a unit or symbol beside the words of a label; a short word with a meaning of its own ("NOCT" beside another column's title) is none.
func symbolFor(r *row, c *cell) bool {
	return c.isUnit() && c.text != r.label[len(r.label)-1].text && (c.concept == "" || electrical[c.concept] && (r.concept == "" || r.concept == c.concept))
}

// symbolLikeValue: a short word that answers the label ("II" for the safety class, "C" for fire) is its value, no unit.
func symbolLikeValue(r *row, c *cell) bool {
	switch r.concept {
	case "safety", "fire", "appclass", "junction_box", "connector", "frame", "cell_type", "cells":
		return !strings.HasPrefix(c.text, "[") && !strings.HasPrefix(c.text, "(")
	}
	return false
}

// isQuantityLabel: a label of a quantity opens a row wherever it stands; a label that is itself a word of description need not.
func isQuantityLabel(c *cell) bool {
	switch c.concept {
	case "frame", "glass", "front_cover", "rear_cover", "connector", "cable", "diodes", "junction_box", "cells", "cell_type", "encapsulant", "model",
		"current", "voltage", "power", "load", "condition", "certificate", "fire", "packing", "annual_loss", "depth", "length", "width":
		return false
	}
	return true
}

// sameThing: the symbol beside the words ("Open-circuit voltage" | "Voc (V)").
func sameThing(r *row, c *cell) bool {
	return c.concept != "" && c.concept == r.concept && len(c.quantities) == 0 && electrical[c.concept] && c.text != r.label[0].text
}

// completes: the cell goes on with the label ("Temp.coe" | "cient of" | "Pmax"): it begins in the middle of a word or sentence, or both together mean
// what neither means alone.
func completes(r *row, c *cell) bool {
	last := r.label[len(r.label)-1]
	if len(r.values) > 0 || len(c.quantities) > 0 || c.box.X0-last.box.X1 > 6*c.size {
		return false
	}
	if last.run == c.run && startsLower(c.text) {
		return true
	}
	both := label.Find(r.text() + " " + c.text)
	return r.concept == "tempcoef" && both.Share() >= labelShare && both.Concept() != "tempcoef"
}

func hasQuantity(cells []*cell) bool {
	return slices.ContainsFunc(cells, func(c *cell) bool { return len(c.quantities) > 0 })
}

// text is the label's text over all its cells.
func (r *row) text() string {
	var parts []string
	for i, c := range r.label {
		if i == 0 && len(c.quantities) > 0 {
			parts = append(parts, strings.TrimSpace(c.head.Text))
			continue
		}
		parts = append(parts, c.text)
	}
	return strings.Join(parts, " ")
}

// readByUnit takes a label that names a quantity for its temperature coefficient where its nearest value has the unit of one
// ("Coefficient of Voc | -0.25 %/°C", "VOLTAGE | -0.33 %/K").
func (r *row) readByUnit() {
	if !(r.concept == "" || electrical[r.concept] || r.concept == "current" || r.concept == "voltage" || r.concept == "power") || countLetters(r.text()) > maxCoefficientLabel {
		return
	}
	at := slices.IndexFunc(r.values, func(c *cell) bool { return len(c.quantities) > 0 })
	if at < 0 || slices.ContainsFunc(r.values[at].quantities, func(q quantity.Quantity) bool { return !q.Unit.Coefficient() }) {
		return
	}
	if c := r.found.With("tempcoef").Concept(); c != "tempcoef" {
		r.concept = c
	}
}

// maxCoefficientLabel is how many letters such a label has at most; more is a sentence.
const maxCoefficientLabel = 45

// read looks at the label again after it has grown.
func (r *row) read() {
	r.found = label.Find(r.text())
	r.box = r.label[0].box
	for _, c := range r.label[1:] {
		r.box = r.box.Union(c.box)
	}
	if c := conceptOf(r.found); c != "" {
		r.concept = c
	}
}
