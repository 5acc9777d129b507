package diagnose

import (
	"math"
	"slices"
	"strings"

	"pvtally/schema"
)

// singles proposes every known slip that leads from some number to the one printed in a cell, and numbers that its relations imply.
func (b *board) singles(c int, propose func(correction)) {
	k := &b.cells[c]
	text := k.n.String()
	if !plain(text) {
		return
	}
	cells := float64(len(b.cells) - 1)
	s := slip{b, c, b.derived(c), propose}
	s.each(OneDigit, cells, otherDigits(text))
	if k.n.Decimals() < b.decimals(c) {
		s.each(OneDigit, cells, completed(text))
	}
	s.each(Transposed, cells, transposed(text))
	s.each(DecimalPoint, cells, moved(text, b.decimals(c)))
	if hasSign(k) {
		if n, err := schema.ParseNumber(negated(text)); err == nil {
			s.to(Sign, b.signs(), n)
		}
	}
	for _, f := range b.unitSlips(k) {
		if n, ok := significant(k.n.Float()*f, text); ok {
			s.to(Unit, unitWays, n)
		}
	}
	if n, ok := b.implied(c); ok {
		if ways := b.copied(c); ways > 0 {
			s.to(Neighbour, ways*cells, n)
		}
		s.to(Unknown, anyNumber*cells*otherSize(n.Float()/k.n.Float()), n)
	}
}

// slip makes corrections of one cell, alone and together with what was calculated from it.
type slip struct {
	b       *board
	cell    int
	derived []int
	propose func(correction)
}

// each proposes a kind of mistake with every number it may have started from, in any cell.
func (s *slip) each(m Mistake, cells float64, numbers []schema.Number) {
	for _, n := range numbers {
		s.to(m, cells*float64(len(numbers)), n)
	}
}

// to proposes one number.
func (s *slip) to(m Mistake, ways float64, n schema.Number) {
	b, k := s.b, &s.b.cells[s.cell]
	if n.Float() == k.n.Float() {
		return
	}
	x := correction{mistake: m, edits: []edit{{s.cell, n}}, prior: chance(m, ways)}
	if k.doubtful && m != Neighbour && m != Unit {
		x.mistake, x.prior = Reading, x.prior+doubt
	}
	s.propose(x)
	for _, d := range s.derived {
		if with, ok := rounded(b.x[d]*n.Float()/b.x[s.cell], b.decimals(d)); ok && with != b.now[d] && b.x[s.cell] != 0 {
			s.propose(correction{mistake: m, edits: []edit{{s.cell, n}, {d, with}}, prior: chance(m, 2*ways)})
		}
	}
}

// otherSize is by how much rarer a number is mistaken for one of another size.
func otherSize(ratio float64) float64 {
	if ratio <= 0 {
		return 20
	}
	return math.Exp(min(2*math.Abs(math.Log(ratio)), 3))
}

// derived are the same class's values at NMOT or NOCT where they stand off their row with it: makers calculate them, and a mistake that
// was made before shows in both.
func (b *board) derived(c int) (out []int) {
	k := &b.cells[c]
	if k.group != "stc" || k.name == "efficiency_pct" {
		return nil
	}
	for _, group := range []string{"nmot", "noct"} {
		if d := b.find(k.model, group, -1, k.name); d != none && !b.fixed[d] && b.suspicious(d) {
			out = append(out, d)
		}
	}
	return out
}

// doubt is by how much a number that was read once, or off a picture, is likelier to be another than one that two readers agree on; a natural
// logarithm (from memory).
const doubt = 1.5

// anyNumber is in how many ways a number can be another one of its size.
const anyNumber = 300

// unitWays is in how many ways units are mistaken on a sheet: a dozen quantities, two or three other units each.
const unitWays = 30

// hasSign tells the numbers that have a sign to lose.
func hasSign(k *cell) bool {
	return strings.HasSuffix(k.name, "_per_k") || k.name == "temperature_min_c"
}

// signs is how many numbers of the sheet have a sign to lose.
func (b *board) signs() float64 {
	n := 0.0
	for i := range b.cells {
		if hasSign(&b.cells[i]) {
			n++
		}
	}
	return n
}

// implied is the number that a cell's broken relations ask for, as its row prints it: of what each asks for, and the next numbers above and below,
// the one that serves all of them best.
func (b *board) implied(c int) (best schema.Number, ok bool) {
	decimals := b.decimals(c)
	unit := math.Pow10(-decimals)
	most := 0.0
	for _, r := range b.of[c] {
		if b.cost[r] < 1 {
			continue
		}
		v, told := b.rels[r].solve(b, c)
		if !told {
			continue
		}
		for _, d := range []float64{0, unit, -unit} {
			if n, fits := rounded(v+d, decimals); fits {
				if gain := b.try([]edit{{c, n}}, most); gain > most {
					best, most, ok = n, gain, true
				}
			}
		}
	}
	return best, ok
}

// copied is in how many ways a cell can have come by another's number: 0 where no other class, and not the same class at STC, has it. The next class's is the likeliest.
func (b *board) copied(c int) float64 {
	k := &b.cells[c]
	same := func(o int) bool { return o != none && o != c && b.now[o].Float() == k.n.Float() }
	switch {
	case k.model < 0:
		return 0
	case same(b.find(k.model-1, k.group, k.row, k.name)) || same(b.find(k.model+1, k.group, k.row, k.name)):
		return 3
	case k.group != "stc" && same(b.find(k.model, "stc", -1, k.name)):
		return 4
	case slices.ContainsFunc(b.siblings(c), same):
		return 3 * float64(len(b.sheet.Models))
	}
	return 0
}
