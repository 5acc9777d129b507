package diagnose

import (
	"cmp"
	"math"
	"slices"
)

// ranking is every explanation of what is on the board that is worth naming, the likeliest first, with its share of the probability.
type ranking struct {
	list   []correction
	honest float64 // share of there being no mistake at all
}

// far is by how many nats an explanation may fall behind the best and still be named.
const far = 9

// rank tries each kind of mistake on each implicated cell. honest is the logarithm of how likely it is that there is none.
func (b *board) rank(honest float64) ranking {
	var found []correction
	best := honest
	propose := func(c correction) {
		for _, e := range c.edits {
			if b.fixed[e.cell] {
				return
			}
		}
		c.gain = b.try(c.edits, best-far-c.prior)
		if w := c.weight(); w > best-far {
			found = append(found, c)
			best = max(best, w)
		}
	}
	type implicated struct {
		cell int
		most float64
	}
	var cells []implicated
	for c := range b.cells {
		if c != none && !b.fixed[c] && b.suspicious(c) {
			cells = append(cells, implicated{c, b.owed(c)})
		}
	}
	slices.SortStableFunc(cells, func(x, y implicated) int { return cmp.Compare(y.most, x.most) })
	likely := chance(OneDigit, 4*float64(len(b.cells))) // no slip in one cell is likelier, signs apart
	for _, c := range cells {
		need := max(0, best-far-likely-3)
		if c.most < need {
			break
		}
		if worth := b.without(c.cell, need); worth > 0 && worth >= need {
			b.singles(c.cell, propose)
		}
	}
	b.several(propose)
	return weigh(found, best, honest)
}

// weigh turns weights into shares.
func weigh(found []correction, best, honest float64) ranking {
	found = slices.DeleteFunc(found, func(c correction) bool { return c.weight() < best-far })
	slices.SortStableFunc(found, func(x, y correction) int { return cmp.Compare(y.weight(), x.weight()) })
	sum := math.Exp(honest - best)
	for i := range found {
		found[i].share = math.Exp(found[i].weight() - best)
		sum += found[i].share
	}
	for i := range found {
		found[i].share /= sum
	}
	return ranking{found, math.Exp(honest-best) / sum}
}
