package extract

import (
	"math"
	"slices"
)

// Of a card, the value stands under its label, flush with it and in somewhat larger lettering; much larger figures stand over their words.
const (
	cardReach = 2.2
	cardSize  = 1.1
	cardMost  = 1.4
)

// underCard tells whether a cell stands under a label as a card's value does.
func underCard(head, c *cell) bool {
	d := c.base - head.base
	return d > 0 && d < cardReach*c.size && c.size > cardSize*head.size && c.size < cardMost*head.size && math.Abs(head.box.X0-c.box.X0) < 2.5 && c != head
}

// cardValue tells whether a label has its value under it.
func (v *view) cardValue(head *cell) bool {
	for i := head.line + 1; i < len(v.cells) && v.lines[i].Baseline < head.base+3*cardReach*head.size; i++ {
		for k := range v.cells[i] {
			if c := &v.cells[i][k]; underCard(head, c) && len(c.quantities) > 0 && !v.ruledBetween(head.base, c.base, c.box.X0, c.box.X1) {
				return true
			}
		}
	}
	return false
}

// cardOf is the row of the card that a cell is the value of.
func (v *view) cardOf(c *cell) *row {
	var best *row
	for _, r := range v.rows {
		if r.concept == "" || !underCard(r.label[len(r.label)-1], c) || v.ruledBetween(r.base, c.base, c.box.X0, c.box.X1) {
			continue
		}
		if slices.ContainsFunc(r.values, func(o *cell) bool { return math.Abs(o.base-r.base) < 0.3*o.size }) {
			continue // a label with a value on its line
		}
		if best == nil || r.base > best.base {
			best = r
		}
	}
	return best
}
