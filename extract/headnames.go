package extract

import (
	"math"
	"strconv"
	"strings"

	"pvtally/extract/quantity"
)

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
