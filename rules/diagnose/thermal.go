package diagnose

import (
	"math"

	"pvtally/rules"
	"pvtally/rules/envelope"
	"pvtally/rules/physics"
)

// coefficient is a temperature coefficient in %/K, or 0 cells: printed so, or absolute with the value it is a share of.
type coefficient struct {
	cell int
	of   int // none where it is printed in %/K
}

// value is the coefficient in %/K, with its rounding.
func (k coefficient) value(b *board) (v, rounding float64) {
	factor := 1.0
	if k.of != none {
		factor = 100 / b.x[k.of]
	}
	return factor * b.x[k.cell], factor * b.half[k.cell] * uniform
}

// thermal relates the temperature coefficients: the sheet's, and those that a class has of its own.
func (b *board) thermal(stc *table) {
	for owner := -1; owner < len(b.sheet.Models); owner++ {
		voc := printed(stc.voc)
		if owner >= 0 {
			voc = printed(stc.voc[owner : owner+1])
		}
		find := func(pct, abs string, row []int) coefficient {
			if c := b.find(owner, "thermal", -1, pct); c != none {
				return coefficient{cell: c}
			}
			class := owner
			if class < 0 {
				class = (len(row) - 1) / 2
			}
			if class >= len(row) || class < 0 || row[class] == none {
				return coefficient{}
			}
			return coefficient{b.find(owner, "thermal", -1, abs), row[class]}
		}
		alpha := find("alpha_isc_pct_per_k", "alpha_isc_a_per_k", stc.isc)
		beta := find("beta_voc_pct_per_k", "beta_voc_v_per_k", stc.voc)
		gamma := find("gamma_pmax_pct_per_k", "gamma_pmax_w_per_k", stc.pmax)
		const usual = "the coefficients are usual"
		b.ranged(usual, envelope.Alpha, wildCoefficient, alpha)
		b.ranged(usual, envelope.Gamma, wildCoefficient, gamma)
		b.ranged(usual, envelope.Beta, wildCoefficient, beta)
		b.ranged("γ - α - β is usual", envelope.Sum, wildCoefficient, gamma, alpha, beta)
		b.theory(beta, voc)
		b.bothUnits(owner, "alpha_isc_pct_per_k", "alpha_isc_a_per_k", stc.isc)
		b.bothUnits(owner, "beta_voc_pct_per_k", "beta_voc_v_per_k", stc.voc)
		b.bothUnits(owner, "gamma_pmax_pct_per_k", "gamma_pmax_w_per_k", stc.pmax)
	}
	for _, name := range []string{"nmot_c", "noct_c"} {
		b.ranged("", envelope.Operating, 0.002, coefficient{cell: b.single("thermal", name)})
	}
}

// wildCoefficient is the probability per %/K that a coefficient, or a sum of them, is anything.
const wildCoefficient = 0.02

// ranged holds when a number, or the first less all others, lies in an envelope's range.
type ranged struct {
	of     []coefficient
	middle float64
	scatter
}

func (b *board) ranged(says string, q envelope.Quantity, wild float64, of ...coefficient) {
	r := envelope.For(b.sheet.Cell.Technology)[q]
	for _, k := range of {
		if k.cell == none {
			return
		}
	}
	if r != nil {
		middle, k := usual(r, wild)
		b.relate(says, &ranged{of, middle, k})
	}
}

func (r *ranged) cells() (out []int) {
	for _, k := range r.of {
		out = append(out, k.cell, k.of)
	}
	return out
}

func (r *ranged) misfit(b *board) float64 {
	sum, rounding := -r.middle, 0.0
	for i, k := range r.of {
		v, h := k.value(b)
		if i > 0 {
			v = -v
		}
		sum += v
		rounding += h * h
	}
	if math.IsNaN(sum) {
		return 0
	}
	return r.scatter.misfit(sum, math.Sqrt(rounding))
}

func (r *ranged) solve(*board, int) (float64, bool) { return 0, false }

// theory holds when β per cell is what its voltage makes it (see thermal/beta-theory).
type theory struct {
	beta   coefficient
	count  int
	voc    []int
	middle float64
	scatter
}

func (b *board) theory(beta coefficient, voc []int) {
	count := b.single("cell", "count")
	r := envelope.For(b.sheet.Cell.Technology)[envelope.Theory]
	if r != nil && envelope.LikenessOf(b.sheet.Cell.Technology) != nil && beta.cell != none && count != none {
		middle, k := usual(r, 0.005)
		b.relate("β is what theory gives for the cell's Voc", &theory{beta, count, voc, middle, k})
	}
}

func (t *theory) cells() []int {
	return append(t.voc[:len(t.voc):len(t.voc)], t.beta.cell, t.beta.of, t.count)
}

func (t *theory) misfit(b *board) float64 {
	beta, _ := t.beta.value(b)
	sum, m := 0.0, 0.0
	for _, c := range t.voc {
		n := rules.SeriesCells(b.sheet.Cell, b.x[t.count], b.x[c])
		if v := b.x[c] / n; n > 0 && v > 0 && !math.IsNaN(beta) {
			sum += t.scatter.misfit(1000*(beta/100*v-physics.SiliconVocSlope(v))-t.middle, 0)
			m++
		}
	}
	if m == 0 {
		return 0
	}
	return sum / m
}

func (t *theory) solve(*board, int) (float64, bool) { return 0, false }

// bothUnits relates a coefficient in %/K to the same in absolute units, where both are printed.
func (b *board) bothUnits(owner int, pct, abs string, row []int) {
	p, a := b.find(owner, "thermal", -1, pct), b.find(owner, "thermal", -1, abs)
	of := printed(row)
	if p == none || a == none || len(of) == 0 {
		return
	}
	middle := of[(len(of)-1)/2]
	if owner >= 0 {
		middle = row[owner]
	}
	b.relate("the coefficient is the same in both units", &signed{product{terms: []term{{p, 1}, {a, -1}, {middle, 1}}, is: math.Log(100),
		scatter: scatter{lo: 0.01, hi: 0.01, habit: 0.03, wild: 0.01}}})
}

// signed is a product whose first two numbers must have the same sign.
type signed struct{ product }

func (s *signed) misfit(b *board) float64 {
	p, a := s.terms[0].cell, s.terms[1].cell
	if math.IsNaN(b.x[p]) || math.IsNaN(b.x[a]) {
		return 0
	}
	if b.x[p]*b.x[a] <= 0 {
		return s.broken()
	}
	if b.x[p] > 0 {
		return s.product.misfit(b)
	}
	b.x[p], b.x[a] = -b.x[p], -b.x[a]
	cost := s.product.misfit(b)
	b.x[p], b.x[a] = -b.x[p], -b.x[a]
	return cost
}

func (s *signed) solve(b *board, c int) (float64, bool) {
	p, a := s.terms[0].cell, s.terms[1].cell
	if b.x[p] < 0 && b.x[a] < 0 {
		b.x[p], b.x[a] = -b.x[p], -b.x[a]
		v, ok := s.product.solve(b, c)
		b.x[p], b.x[a] = -b.x[p], -b.x[a]
		if c == p || c == a {
			v = -v
		}
		return v, ok
	}
	return s.product.solve(b, c)
}
