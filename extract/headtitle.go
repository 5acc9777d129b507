package extract

import (
	"slices"

	"pvtally/extract/label"
	"pvtally/extract/page"
)

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
