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
	b.thermal(stc)
	b.module(stc)
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
			b.relate("the model's name says %s", &titled{c, []float64{w}, true})
			continue
		}
		var named []float64
		for _, v := range numbersIn(b.sheet.Models[i].Name) {
			if v > 20 && v < 1000 {
				named = append(named, v)
			}
		}
		if len(named) > 0 {
			b.relate("the model's name says %s", &titled{c, named, false})
		}
	}
	if row := printed(stc.pmax); len(row) > 2 {
		b.relate("the classes keep their step", &stepped{row})
	}
}

// module relates what the technology's modules have in common.
func (b *board) module(stc *table) {
	count, length, width := b.single("cell", "count"), b.single("body", "length_mm"), b.single("body", "width_mm")
	if like := envelope.LikenessOf(b.sheet.Cell.Technology); like != nil && count != none && length != none && width != none {
		b.relate("count of cells, voltage, current and area suit each other", &alike{like, stc.pmax, stc.voc, stc.isc, length, width, count, b.single("thermal", "beta_voc_pct_per_k")})
	} else if r := envelope.For(b.sheet.Cell.Technology)[envelope.VocCell]; r != nil && count != none {
		middle, k := usual(r, wildRatio)
		b.relate("Voc per cell is usual", &perCell{stc.voc, count, middle, k})
	}
	if count != none {
		b.relate("", &counted{count})
	}
	b.sized()
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
			b.relate("the module has a usual size", &product{terms: []term{{side.cell, 1}}, is: side.middle, scatter: side.spread})
		}
	}
	if mass := b.single("body", "mass_kg"); mass != none && length != none && width != none {
		b.relate("mass over area is usual", &product{terms: []term{{mass, 1}, {length, -1}, {width, -1}}, is: math.Log(11.5e-6), scatter: scatter{lo: 0.08, hi: 0.15, wild: 0.01}})
	}
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
	own := scatter{lo: 0.0015, hi: 0.0015, habit: 0.004, wild: 0.02, far: aFactor}
	near := func(share, spread float64) (float64, scatter) {
		return math.Log(share), scatter{lo: spread, hi: spread, wild: 0.02, far: aFactor}
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
		b.ratio("the values "+condition(t.group)+" follow from STC's", q.over, q.under, is, own, common)
	}
}
