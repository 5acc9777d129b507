package diagnose

import (
	"math"

	"pvtally/rules"
	"pvtally/rules/envelope"
)

// relateAll puts down every relation that the printed numbers allow.
func (b *board) relateAll() {
	b.byRow = b.tables()
	tables := b.byRow
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
	b.ptc(stc)
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
	b.glazed(length, width)
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
