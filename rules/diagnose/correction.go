package diagnose

import (
	"math"

	"pvtally/schema"
)

// edit is what one cell would be.
type edit struct {
	cell int
	to   schema.Number
}

// correction is a mistake undone.
type correction struct {
	mistake Mistake
	edits   []edit
	prior   float64 // logarithm of the mistake's probability
	gain    float64 // by how many nats the board's relations fit better
	share   float64 // of the probability of all explanations
}

// weight is the logarithm of the explanation's probability over that of an honest sheet with these numbers.
func (c *correction) weight() float64 { return c.prior + c.gain }

// put writes a number into a cell.
func (b *board) put(c int, n schema.Number) {
	b.now[c], b.x[c] = n, n.Float()
	switch {
	case n.IsZero():
		b.x[c], b.half[c] = math.NaN(), 0
	case n == b.cells[c].n:
		b.half[c] = b.cells[c].half // which may come from a conversion
	default:
		b.half[c] = n.HalfStep()
	}
	b.ln[c] = math.Log(math.Abs(b.x[c]))
}

// standing is what stands in a cell.
type standing struct {
	n           schema.Number
	x, ln, half float64
}

func (b *board) standing(c int) standing { return standing{b.now[c], b.x[c], b.ln[c], b.half[c]} }

func (b *board) stand(c int, s standing) {
	b.now[c], b.x[c], b.ln[c], b.half[c] = s.n, s.x, s.ln, s.half
}

// apply writes a correction for good.
func (b *board) apply(edits []edit) {
	for _, e := range edits {
		b.put(e.cell, e.to)
		b.fixed[e.cell] = true
	}
	b.priceAgain(edits)
}

// restore takes a correction back.
func (b *board) restore(edits []edit) {
	for _, e := range edits {
		b.put(e.cell, b.cells[e.cell].n)
		b.fixed[e.cell] = false
	}
	b.priceAgain(edits)
}

// maxTries bounds how many corrections are tried on a sheet: a hundred times what a sheet of eight classes with one mistake asks for.
const maxTries = 50_000

// try is the gain of a correction: what its cells' relations cost less with it. Where it cannot reach need, it is some number below.
func (b *board) try(edits []edit, need float64) (gain float64) {
	if b.tries++; b.tries > maxTries {
		return math.Inf(-1)
	}
	open := 0.0 // what the relations not yet asked can still save
	b.round++
	for _, e := range edits {
		for _, r := range b.of[e.cell] {
			if b.seen[r] != b.round {
				b.seen[r] = b.round
				open += b.cost[r]
			}
		}
	}
	if open < need {
		return open
	}
	var room [8]standing
	kept := room[:0]
	for _, e := range edits {
		kept = append(kept, b.standing(e.cell))
		b.put(e.cell, e.to)
	}
	b.round++
	for _, e := range edits {
		for _, r := range b.of[e.cell] {
			if gain+open < need {
				break
			}
			if b.seen[r] != b.round {
				b.seen[r] = b.round
				gain += b.cost[r] - b.rels[r].misfit(b)
				open -= b.cost[r]
			}
		}
	}
	for i, e := range edits {
		b.stand(e.cell, kept[i])
	}
	return gain
}

// without is the gain of leaving a cell out altogether: no correction of it can gain more. Where it cannot reach need, it is some number below.
func (b *board) without(c int, need float64) float64 {
	return b.try([]edit{{cell: c}}, need)
}

// owed is what a cell's relations cost.
func (b *board) owed(c int) (sum float64) {
	for _, r := range b.of[c] {
		sum += b.cost[r]
	}
	return sum
}
