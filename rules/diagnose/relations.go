package diagnose

import (
	"math"

	"pvtally/rules"
	"pvtally/rules/envelope"
	"pvtally/rules/physics"
)

// relateAll puts down every relation that the printed numbers allow.
func (b *board) relateAll() {
	tables := b.tables()
	stc := &tables[0]
	for i := range tables {
		b.electrical(&tables[i])
	}
	b.efficiency(stc)
	b.classes(stc)
	b.module(stc)
	b.thermal(stc)
	for i := range tables[1:] {
		b.translated(stc, &tables[1+i])
	}
	b.again()
	b.promises()
	b.price()
}

// classes relates the powers of the classes to their names and to each other.
func (b *board) classes(stc *table) {
	for i, c := range stc.pmax {
		if c == none {
			continue
		}
		if w := b.watts[i]; w > 0 {
			b.relate(&titled{c, []float64{w}, true})
			continue
		}
		var named []float64
		for _, v := range numbersIn(b.sheet.Models[i].Name) {
			if v > 20 && v < 1000 {
				named = append(named, v)
			}
		}
		if len(named) > 0 {
			b.relate(&titled{c, named, false})
		}
	}
	if row := printed(stc.pmax); len(row) > 2 {
		b.relate(&stepped{row})
	}
}

// module relates what the technology's modules have in common.
func (b *board) module(stc *table) {
	b.typical(envelope.VmpVoc, stc.vmp, stc.voc)
	b.typical(envelope.ImpIsc, stc.imp, stc.isc)
	count, length, width := b.single("cell", "count"), b.single("body", "length_mm"), b.single("body", "width_mm")
	if like := envelope.LikenessOf(b.sheet.Cell.Technology); like != nil && count != none && length != none && width != none {
		b.relate(&alike{like, stc.pmax, stc.voc, stc.isc, length, width, count, b.single("thermal", "beta_voc_pct_per_k")})
	} else if r := envelope.For(b.sheet.Cell.Technology)[envelope.VocCell]; r != nil && count != none {
		middle, k := usual(r, wildRatio)
		b.relate(&perCell{stc.voc, count, middle, k})
	}
	if count != none {
		b.relate(&counted{count})
	}
	b.body(length, width)
}

// Outer sides of modules, mm: medians and spreads of the natural logarithm over the open list.
func (b *board) body(length, width int) {
	for _, side := range []struct {
		cell   int
		middle float64
		spread scatter
	}{
		{length, math.Log(1700), scatter{lo: 0.25, hi: 0.2, wild: 0.002}},
		{width, math.Log(1010), scatter{lo: 0.2, hi: 0.12, wild: 0.002}},
		{b.single("body", "depth_mm"), math.Log(37), scatter{lo: 0.15, hi: 0.15, wild: 0.002}},
	} {
		if side.cell != none {
			b.relate(&product{terms: []term{{side.cell, 1}}, is: side.middle, scatter: side.spread})
		}
	}
	if mass := b.single("body", "mass_kg"); mass != none && length != none && width != none {
		b.relate(&product{terms: []term{{mass, 1}, {length, -1}, {width, -1}}, is: math.Log(11.5e-6), scatter: scatter{lo: 0.08, hi: 0.15, wild: 0.01}})
	}
}

// thermal relates the temperature coefficients.
func (b *board) thermal(stc *table) {
	const g = "thermal"
	alpha, beta, gamma := b.single(g, "alpha_isc_pct_per_k"), b.single(g, "beta_voc_pct_per_k"), b.single(g, "gamma_pmax_pct_per_k")
	count := b.single("cell", "count")
	const wild = 0.02 // per %/K
	b.ranged(envelope.Alpha, wild, term{alpha, 1})
	b.ranged(envelope.Gamma, wild, term{gamma, 1})
	b.ranged(envelope.Sum, wild, term{gamma, 1}, term{alpha, -1}, term{beta, -1})
	r := envelope.For(b.sheet.Cell.Technology)[envelope.Theory]
	if r != nil && envelope.LikenessOf(b.sheet.Cell.Technology) != nil && beta != none && count != none {
		middle, k := usual(r, 0.005)
		b.relate(&theory{beta, count, stc.voc, k, middle})
	}
	b.ranged(envelope.Beta, wild, term{beta, 1})
	both := scatter{lo: 0.01, hi: 0.01, habit: 0.03, wild: 0.01}
	for _, k := range []struct {
		pct, abs int
		of       []int
	}{{alpha, b.single(g, "alpha_isc_a_per_k"), stc.isc}, {beta, b.single(g, "beta_voc_v_per_k"), stc.voc}, {gamma, b.single(g, "gamma_pmax_w_per_k"), stc.pmax}} {
		if of := printed(k.of); k.pct != none && k.abs != none && len(of) > 0 {
			b.relate(&signed{product{terms: []term{{k.pct, 1}, {k.abs, -1}, {of[(len(of)-1)/2], 1}}, is: math.Log(100), scatter: both}})
		}
	}
	for _, t := range []int{b.single(g, "nmot_c"), b.single(g, "noct_c")} {
		b.ranged(envelope.Operating, 0.002, term{t, 1})
	}
}

// signed is a product of numbers whose signs must agree.
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

// perCell holds when Voc over the cells in series is what the technology gives.
type perCell struct {
	voc    []int
	count  int
	middle float64
	scatter
}

func (p *perCell) cells() []int { return append(p.voc[:len(p.voc):len(p.voc)], p.count) }

func (p *perCell) misfit(b *board) float64 {
	var v []float64
	for _, c := range p.voc {
		if !math.IsNaN(b.x[c]) {
			v = append(v, b.x[c])
		}
	}
	voc := median(v)
	if n := rules.SeriesCells(b.sheet.Cell, b.x[p.count], voc); n > 0 && voc > 0 {
		return p.scatter.misfit(voc/n-p.middle, 0)
	}
	return 0
}

func (p *perCell) solve(*board, int) (float64, bool) { return 0, false }

// translated relates a table at another condition to STC's: each class by the same ratio, near what theory says.
func (b *board) translated(stc, t *table) {
	own := scatter{lo: 0.0015, hi: 0.0015, habit: 0.004, wild: 0.02}
	near := func(share, spread float64) (float64, scatter) {
		return math.Log(share), scatter{lo: spread, hi: spread, wild: 0.02}
	}
	pmax, current, voltage := 1.0, 1.0, 1.0
	spread, steady := 0.01, 0.006
	switch t.group {
	case "nmot", "noct":
		pmax, current, voltage, spread, steady = 0.8*0.93, 0.8*1.01, 0.935, 0.015, 0.012
	case "bnpi":
		phi := b.x[b.single("bifacial", "factor_pct")]
		if math.IsNaN(phi) {
			phi = 75
		}
		current = 1 + physics.BNPIRear/physics.STCIrradiance*phi/100
		pmax, spread = current*0.997, 0.005
	case "low":
		g := b.x[b.find(0, "low", -1, "irradiance_w_m2")] / physics.STCIrradiance
		if math.IsNaN(g) || g <= 0 {
			return
		}
		pmax, current, voltage, spread, steady = 0.97*g, g, 1+0.04*math.Log(g), 0.02, 0.02
	case "rear_gain":
		gain := b.x[b.find(0, t.group, t.entry, "gain_pct")]
		if math.IsNaN(gain) {
			return
		}
		pmax, current, spread = 1+gain/100, 1+gain/100, 0.002
	case "rear_ratio":
		ratio, phi := b.x[b.find(0, t.group, t.entry, "ratio_pct")], b.x[b.single("bifacial", "factor_pct")]
		if math.IsNaN(ratio * phi) {
			return
		}
		pmax, current, spread = 1+ratio*phi/1e4, 1+ratio*phi/1e4, 0.01
	}
	for _, q := range []struct {
		over, under   []int
		share, spread float64
	}{
		{t.pmax, stc.pmax, pmax, spread}, {t.isc, stc.isc, current, max(spread, 0.006)}, {t.imp, stc.imp, current, 2 * max(spread, 0.006)},
		{t.voc, stc.voc, voltage, steady}, {t.vmp, stc.vmp, voltage, 2 * steady},
	} {
		is, common := near(q.share, q.spread)
		b.ratio(q.over, q.under, is, own, common)
	}
}
