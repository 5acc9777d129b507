package diagnose

import (
	"math"
	"slices"

	"pvtally/schema"
)

// counts of cells that modules have: in series, and as half cells.
var counts = []string{"32", "36", "40", "48", "50", "54", "60", "64", "66", "72", "78", "80", "84", "88", "96", "108", "110", "112", "120", "128", "132", "144", "156"}

// counted holds when the number of cells is one that modules have.
type counted struct{ count int }

// rareCount is what another count costs: thin films and special modules have theirs.
const rareCount = 3

func (k *counted) cells() []int { return []int{k.count} }

func (k *counted) misfit(b *board) float64 {
	x := b.x[k.count]
	if math.IsNaN(x) || slices.ContainsFunc(counts, func(text string) bool { return schema.MustNumber(text).Float() == x }) {
		return 0
	}
	return rareCount
}

func (k *counted) solve(*board, int) (float64, bool) { return 0, false }

// cellCount proposes the count of another format, and half cells counted as series cells or the other way round.
func (b *board) cellCount(propose func(correction)) {
	c := b.single("cell", "count")
	if c == none || !b.suspicious(c) {
		return
	}
	for _, text := range counts {
		ways := 2 * float64(len(counts))
		n := schema.MustNumber(text)
		switch b.x[c] / n.Float() {
		case 2, 0.5:
			ways = 4
		case 60. / 72, 72. / 60, 54. / 60, 60. / 54, 66. / 60, 60. / 66, 66. / 72, 72. / 66: // and the same as half cells
			ways = 16
		}
		if n.Float() != b.x[c] {
			propose(correction{mistake: CellCount, edits: []edit{{c, n}}, prior: chance(CellCount, ways)})
		}
	}
}
