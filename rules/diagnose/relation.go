package diagnose

import (
	"cmp"
	"math"
	"slices"
)

// relation is something that honest sheets keep between some of their numbers.
type relation interface {
	// cells are the numbers it relates.
	cells() []int
	// misfit is the cost of what stands on the board now; 0 where too little is printed.
	misfit(b *board) float64
	// solve is what a cell would be for the relation to hold exactly; false where it does not tell.
	solve(b *board, c int) (float64, bool)
}

// relate adds a relation, with what is said of one that holds once a mistake is undone; a "%s" in it stands for the value.
func (b *board) relate(says string, r relation) {
	b.rels, b.says = append(b.rels, r), append(b.says, says)
	for _, c := range r.cells() {
		if c != none && !slices.Contains(b.of[c], len(b.rels)-1) {
			b.of[c] = append(b.of[c], len(b.rels)-1)
		}
	}
}

// price finds what each relation costs with what stands on the board.
func (b *board) price() {
	b.cost = slices.Grow(b.cost[:0], len(b.rels))[:len(b.rels)]
	for len(b.seen) < len(b.rels) {
		b.seen = append(b.seen, 0)
	}
	for i, r := range b.rels {
		b.cost[i] = r.misfit(b)
	}
	b.dearestFirst()
}

// priceAgain finds what the relations of some cells cost, once other numbers stand there.
func (b *board) priceAgain(edits []edit) {
	b.round++
	for _, e := range edits {
		for _, r := range b.of[e.cell] {
			if b.seen[r] != b.round {
				b.seen[r] = b.round
				b.cost[r] = b.rels[r].misfit(b)
			}
		}
	}
	b.dearestFirst()
}

// dearestFirst puts each cell's relations into the order in which they tell most.
func (b *board) dearestFirst() {
	for _, of := range b.of {
		slices.SortStableFunc(of, func(i, j int) int { return cmp.Compare(b.cost[j], b.cost[i]) })
	}
}

// term is a power of a cell's value.
type term struct {
	cell  int
	power float64
}

// product holds when the values' powers multiply to a number: Vmp × Imp / Pmax = 1.
type product struct {
	terms []term
	is    float64 // natural logarithm of what they multiply to
	scatter
}

func (p *product) cells() []int {
	out := make([]int, len(p.terms))
	for i, t := range p.terms {
		out[i] = t.cell
	}
	return out
}

// gap is the logarithm of what the product is over what it should be, and its rounding; ok is false where a value is missing.
func (p *product) gap(b *board) (r, rounding float64, ok, possible bool) {
	r, possible = -p.is, true
	for _, t := range p.terms {
		x := b.x[t.cell]
		if math.IsNaN(x) {
			return 0, 0, false, true
		}
		if x <= 0 {
			possible = false
			continue
		}
		r += t.power * b.ln[t.cell]
		h := t.power * b.half[t.cell] / x * uniform
		rounding += h * h
	}
	return r, math.Sqrt(rounding), true, possible
}

func (p *product) misfit(b *board) float64 {
	r, rounding, ok, possible := p.gap(b)
	switch {
	case !ok:
		return 0
	case !possible:
		return p.broken()
	}
	return p.scatter.misfit(r, rounding)
}

func (p *product) solve(b *board, c int) (float64, bool) {
	rest, power := p.is, 0.0
	for _, t := range p.terms {
		if t.cell == c {
			power = t.power
			continue
		}
		x := b.x[t.cell]
		if !(x > 0) {
			return 0, false
		}
		rest -= t.power * b.ln[t.cell]
	}
	return math.Exp(rest / power), power != 0
}

// shared is one product in several classes whose gaps are one maker's doing: a wrong area is one mistake, not one for each class.
type shared struct {
	members []product // scatter: of one class round the others
	common  scatter   // of all together
	all     []int
	// expected is the logarithm of what the products should be, where the members do not say it themselves; not a number where it is not known.
	expected func(b *board) float64
}

func newShared(common scatter, members []product) *shared {
	s := &shared{members: members, common: common}
	for i := range members {
		s.all = append(s.all, members[i].cells()...)
	}
	return s
}

func (s *shared) cells() []int { return s.all }

func (s *shared) misfit(b *board) float64 {
	cost, _ := s.best(b)
	return cost
}

// best is the cheapest common gap: none, or what most of the classes have.
func (s *shared) best(b *board) (cost, gap float64) {
	var room [2 * maxClasses]float64
	gaps, rounds := room[:0:maxClasses], room[maxClasses:maxClasses]
	broken, wide := 0.0, 0.0
	offset := s.offset(b)
	if math.IsNaN(offset) {
		return 0, 0
	}
	for i := range s.members {
		r, rounding, ok, possible := s.members[i].gap(b)
		r -= offset
		switch {
		case !ok:
		case !possible:
			broken += s.members[i].broken()
		default:
			gaps, rounds = append(gaps, r), append(rounds, rounding)
			wide = max(wide, rounding)
		}
	}
	if len(gaps) == 0 {
		return broken, 0
	}
	try := func(d, sum float64) {
		for i := 0; i < len(gaps) && (sum < cost || gap == d); i++ {
			sum += s.members[0].scatter.misfit(gaps[i]-d, rounds[i])
		}
		if sum < cost || gap == d {
			cost, gap = sum, d
		}
	}
	try(0, 0)
	if cost > 0.1 {
		most := median(gaps)
		try(most, s.common.misfit(most, wide))
	}
	if len(gaps) == 2 {
		try(max(gaps[0], gaps[1]), s.common.misfit(max(gaps[0], gaps[1]), wide))
	}
	return cost + broken, gap
}

func (s *shared) offset(b *board) float64 {
	if s.expected == nil {
		return 0
	}
	return s.expected(b)
}

// solve closes the cell's own gap beside the others', or, for a cell of all classes, the common one.
func (s *shared) solve(b *board, c int) (float64, bool) {
	var all []float64
	power := 0.0
	for i := range s.members {
		m := &s.members[i]
		if v, ok := m.solve(b, c); ok {
			all = append(all, v)
			for _, t := range m.terms {
				if t.cell == c {
					power = t.power
				}
			}
		}
	}
	for i := range all {
		all[i] *= math.Exp(s.offset(b) / power)
	}
	switch len(all) {
	case 0:
		return 0, false
	case 1:
		kept := b.x[c]
		b.x[c] = math.NaN()
		_, gap := s.best(b)
		b.x[c] = kept
		return all[0] * math.Exp(gap/power), true
	}
	return median(all), true
}
