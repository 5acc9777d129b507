package extract

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
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

// columnNames finds the nearest header line with a cell for every class; a line close above it with as many cells is the name's first half.
func (b *block) columnNames(lines [][]*cell) {
	classes := b.classes()
	if len(classes) == 1 {
		if c := b.ownName(lines, classes[0]); c != nil {
			for _, col := range classes[0] {
				col.name, col.named = c.text, c
				for _, t := range token.FindAllString(c.text, -1) {
					if w, ok := wattsIn(t); ok && hasNumber(t, w) && hasLetters(t) && hasNumber(c.text, w) {
						col.name = t
					}
				}
			}
			return
		}
	}
	var names []string
	var cells []*cell
	at := 0 // the line that holds the names
	for i, line := range lines {
		got, text := b.perClass(line, classes)
		if got == nil {
			if names != nil && cells[0].base-line[0].base > 1.7*line[0].size {
				break
			}
			continue
		}
		if names == nil {
			names, cells, at = text, got, i
			continue
		}
		if cells[0].base-got[0].base > 2.2*got[0].size || !splitName(text, names) {
			break
		}
		for k := range names {
			names[k] = text[k] + names[k]
		}
	}
	b.namePrefix(lines, names, cells)
	for i := at - 1; i >= 0 && names != nil; i-- {
		if b.nameEnds(lines[i], names, cells) {
			break
		}
	}
	for k := range names {
		for _, c := range classes[k] {
			c.name, c.named = names[k], cells[k]
		}
	}
}

// namePrefix puts the beginning of a name that stands once, in the label column, before the classes' own ends ("Type AB-54-" | "405" | "410").
func (b *block) namePrefix(lines [][]*cell, names []string, cells []*cell) {
	if len(names) == 0 || hasLetters(names[0]) {
		return
	}
	for _, line := range lines {
		for _, c := range line {
			if abs(c.base-cells[0].base) > 0.5*c.size || c.box.X1 > cells[0].box.X0 {
				continue
			}
			if prefix := lastWords(c.text, 1); len(prefix) > 3 && strings.HasSuffix(prefix, "-") && prefix == strings.ToUpper(prefix) {
				for k := range names {
					names[k] = prefix + names[k]
				}
				return
			}
		}
	}
}

// nameEnds adds the lower half of names that a line below goes on with ("KRM…/" over "Wfhm").
func (b *block) nameEnds(line []*cell, names []string, cells []*cell) bool {
	ends := make([]string, len(names))
	for _, c := range line {
		for k := range cells {
			if min(c.box.X1, cells[k].box.X1) > max(c.box.X0, cells[k].box.X0) && abs(c.base-cells[k].base) < 1.7*c.size {
				ends[k] = c.text
			}
		}
	}
	if !splitName(names, ends) {
		return false
	}
	for k := range names {
		names[k] += ends[k]
	}
	return true
}

// splitName: the upper halves end where a name goes on ("KRM-" over "540/QX"), and neither half is a whole name with its watts.
func splitName(upper, lower []string) bool {
	for k := range upper {
		if upper[k] == "" || lower[k] == "" {
			return false
		}
		last := upper[k][len(upper[k])-1]
		if last != '-' && last != '/' && last != '_' && last != '.' {
			return false
		}
	}
	return true
}

// perClass files a header line's cells under the classes; nil unless every class has one that may be a name.
func (b *block) perClass(line []*cell, classes [][]*column) ([]*cell, []string) {
	cells := make([]*cell, len(classes))
	names := make([]string, len(classes))
	for _, c := range inWords(line, len(classes)) {
		if !mayName(c) {
			continue
		}
		mid := (c.box.X0 + c.box.X1) / 2
		best, bestD := -1, math.Inf(1)
		for k, cols := range classes {
			lo, hi := cols[0].x, cols[len(cols)-1].x
			if d := math.Abs((lo+hi)/2 - mid); d < bestD {
				best, bestD = k, d
			}
		}
		reach := 0.5*b.classPitch(classes) + 1
		if bestD > reach {
			continue
		}
		if cells[best] != nil {
			names[best] += " " + c.text
			continue
		}
		cells[best], names[best] = c, c.text
	}
	for _, c := range cells {
		if c == nil {
			return nil, nil
		}
	}
	return cells, names
}

// inWords parts a line that is one cell of as many words as there are classes: names in narrow columns run together.
func inWords(line []*cell, classes int) []*cell {
	if len(line) != 1 || classes < 3 || len(strings.Fields(line[0].text)) != classes {
		return line
	}
	var out []*cell
	c, at := line[0], 0
	for _, word := range strings.Fields(c.text) {
		from := at + strings.Index(c.text[at:], word)
		at = from + len(word)
		part := *c
		part.text, part.box, part.quantities = word, c.boxOf(from, at), quantity.Scan(word)
		out = append(out, &part)
	}
	return out
}

// ownName is the header cell over a single class that holds its watts; it may stand anywhere above the table, over the labels too.
func (b *block) ownName(lines [][]*cell, columns []*column) *cell {
	for _, col := range columns {
		p, ok := col.values["pmax"]
		if !ok || col.cond == atNMOT || col.cond == atNOCT {
			continue
		}
		watts, err := strconv.ParseFloat(p.term().Literal, 64)
		if err != nil {
			continue
		}
		for _, line := range lines {
			for _, c := range line {
				if mayName(c) && hasNumber(c.text, watts) && hasLetters(c.text) {
					return c
				}
			}
		}
	}
	return nil
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

// mayName: a header cell that holds a digit, is short, and is no condition, unit or tolerance.
func mayName(c *cell) bool {
	if len([]rune(c.text)) > 40 || !strings.ContainsAny(c.text, "0123456789") {
		return false
	}
	if c.condition() != unknownCondition {
		return false
	}
	for _, q := range c.quantities {
		if q.Unit != "" && q.Unit != "W" || q.Shape != "single" || len(q.Terms) != 1 {
			return false
		}
	}
	return true
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

// noteBelow adds what stands right under a gain table: its footnote may name the class.
func (v *view) noteBelow(b *block) {
	if b.cond == atLow && byIrradiance(b.title) != atLow {
		v.irradianceBelow(b)
	}
	if b.cond != atGain && b.cond != atRatio {
		return
	}
	for i := range v.lines {
		if d := v.lines[i].Baseline - b.box.Y1; d < 0 || d > 22 {
			continue
		}
		for _, r := range v.lines[i].Runs {
			if r.Box.X0 < b.box.X1 && r.Box.X1 > b.box.X0-20 {
				b.title += " " + r.Text
			}
		}
	}
}

// irradianceBelow takes the note under a low-light table for its title where only the note tells how low.
func (v *view) irradianceBelow(b *block) {
	for i := range v.cells {
		for k := range v.cells[i] {
			c := &v.cells[i][k]
			if d := c.base - b.box.Y1; d > 0 && d < 22 && c.box.X0 < b.box.X1 && c.box.X1 > b.box.X0-20 && byIrradiance(c.text) == atLow {
				b.title, b.titled = c.text, c
				return
			}
		}
	}
}

// ownTitle takes the nearest title that names one condition.
func (b *block) ownTitle(lines [][]*cell) {
	for _, line := range lines {
		for _, c := range line {
			cond := c.condition()
			if cond == unknownCondition || cond == mixedCondition {
				continue
			}
			if b.titled == nil {
				b.title, b.titled = c.text, c
				if b.cond == unknownCondition {
					b.cond = cond
				}
			}
			if b.cond != atGain && b.cond != atRatio {
				return
			}
		}
	}
}

// shareTitles gives a table without a title that of the table on its left where both are one table in two halves: the same labels on the
// same lines.
func shareTitles(blocks []*block) {
	for _, b := range blocks {
		if b.cond != unknownCondition || b.titled != nil {
			continue
		}
		for _, o := range blocks {
			if o != b && o.titled != nil && o.box.X1 <= b.box.X0+1 && abs(o.first.base-b.first.base) < 0.3*b.first.label[0].size && o.first.concept == b.first.concept && o.depth() == b.depth() {
				b.title, b.titled, b.cond = o.title, o.titled, o.cond
			}
		}
	}
}

// conditionBeside finds the condition that stands beside a table without a title: upright in a merged cell, or turned.
func (v *view) conditionBeside(b *block) {
	if b.cond != unknownCondition || b.titled != nil {
		return
	}
	found := unknownCondition
	note := func(text string, box page.Box) {
		y := (box.Y0 + box.Y1) / 2
		if box.X1 > b.box.X0+1 || y < b.box.Y0 || y > b.box.Y1 {
			return
		}
		switch cond := conditionOf(text, label.Find(text)); {
		case cond == unknownCondition:
		case found == unknownCondition:
			found = cond
		case found != cond:
			found = mixedCondition
		}
	}
	for _, w := range v.page.Words {
		if w.Rotation != 0 && w.Hidden == page.Visible {
			note(w.Text, w.Box)
		}
	}
	for i := range v.cells {
		for k := range v.cells[i] {
			if c := &v.cells[i][k]; len([]rune(c.text)) <= maxBeside {
				note(c.text, c.box)
			}
		}
	}
	if found != mixedCondition {
		b.cond = found
	}
}

// maxBeside is how long the name of a condition beside a table may be; longer ones are sentences.
const maxBeside = 30

// gainBeside finds the per cent that stands beside a group of rows ("10 %" over "Power output" and "Module efficiency"); the groups under a gain table's first
// one need no title of their own.
func (v *view) gainBeside(b *block, before []*block) {
	if b.cond != unknownCondition && b.cond != atGain && b.cond != atRatio {
		return
	}
	for i := range v.cells {
		for k := range v.cells[i] {
			c := &v.cells[i][k]
			if c.box.X1 > b.first.box.X0 || c.base < b.box.Y0 || c.base > b.box.Y1+0.5*c.size || len(c.quantities) != 1 || !c.isValue() || c.quantities[0].Unit != "%" {
				continue
			}
			b.beside = &value{q: c.quantities[0], cell: c, box: c.box, label: c.text}
		}
	}
	if b.beside == nil || b.cond != unknownCondition {
		return
	}
	for _, o := range slices.Backward(before) {
		if o.beside != nil && len(o.columns) == len(b.columns) {
			b.cond = o.cond
			return
		}
	}
}
