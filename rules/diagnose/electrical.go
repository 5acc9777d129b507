package diagnose

import (
	"math"
	"strings"

	"pvtally/rules/envelope"
)

// table is one electrical table: the cells of each quantity over the classes.
type table struct {
	group                                string
	entry                                int // line of a gain or ratio table, else -1
	pmax, vmp, imp, voc, isc, efficiency []int
}

func (b *board) table(group string, entry int) table {
	return table{group, entry, b.row(group, entry, "pmax_w"), b.row(group, entry, "vmp_v"), b.row(group, entry, "imp_a"),
		b.row(group, entry, "voc_v"), b.row(group, entry, "isc_a"), b.row(group, entry, "efficiency_pct")}
}

// rows are a table's rows by quantity.
func (t *table) rows() [][]int { return [][]int{t.pmax, t.vmp, t.imp, t.voc, t.isc, t.efficiency} }

func (t *table) empty() bool {
	for _, r := range t.rows() {
		if len(printed(r)) > 0 {
			return false
		}
	}
	return true
}

// tables lists the electrical tables that the sheet prints, STC first.
func (b *board) tables() []table {
	out := []table{b.table("stc", -1)}
	lines := map[string]int{"rear_gain": 0, "rear_ratio": 0}
	for i := range b.sheet.Models {
		m := &b.sheet.Models[i]
		lines["rear_gain"], lines["rear_ratio"] = max(lines["rear_gain"], len(m.RearGain)), max(lines["rear_ratio"], len(m.RearRatio))
	}
	add := func(t table) {
		if !t.empty() && len(out) < 20 {
			out = append(out, t)
		}
	}
	for _, group := range []string{"nmot", "noct", "bnpi", "low"} {
		add(b.table(group, -1))
	}
	for _, group := range []string{"rear_gain", "rear_ratio"} {
		for k := range lines[group] {
			add(b.table(group, k))
		}
	}
	return out
}

// Scatter of electrical relations on honest sheets: Vmp × Imp lies within 0.04 % of Pmax at the median, 0.18 % at the 90th, 0.7 % at
// the 99th percentile of 62 real sheets; the efficiency within 0.02 points, and production averages 0.2 to 0.45 above (design/rules.md).
var (
	productScatter = scatter{lo: 0.0003, hi: 0.0003, habit: 0.002, wild: 0.02, far: aFactor}
	ownEfficiency  = scatter{lo: 0.0003, hi: 0.0003, habit: 0.002, wild: 0.02, far: aFactor}
	areaScatter    = scatter{lo: 0.0006, hi: 0.0006, habit: 0.015, wild: 0.02, far: aFactor}
)

// aFactor is the natural logarithm over which the chance of an honest sheet to be off falls to a third: 1.6 times is rarer than 1.1 times.
const aFactor = 0.5

// electrical relates the numbers of one table.
func (b *board) electrical(t *table) {
	for i := range t.pmax {
		if p, v, c := t.pmax[i], t.vmp[i], t.imp[i]; p != none && v != none && c != none {
			k := productScatter
			if t.group == "stc" {
				b.relate("Vmp × Imp is Pmax", &nominalProduct{product{terms: []term{{p, -1}, {v, 1}, {c, 1}}, scatter: k}})
				continue
			}
			b.relate("Vmp × Imp is Pmax "+condition(t.group), &product{terms: []term{{p, -1}, {v, 1}, {c, 1}}, scatter: k})
		}
	}
	b.typical("Vmp / Voc is usual", envelope.VmpVoc, t.vmp, t.voc)
	b.typical("Imp / Isc is usual", envelope.ImpIsc, t.imp, t.isc)
	b.line(t, "vmp_v", t.vmp)
	b.line(t, "voc_v", t.voc)
	b.line(t, "isc_a", t.isc)
	if len(printed(t.vmp)) == 0 {
		b.line(t, "imp_a", t.imp)
	}
	if t.group != "stc" {
		b.line(t, "pmax_w", t.pmax)
	}
}

// condition is how a table's condition is said.
func condition(group string) string {
	switch group {
	case "nmot", "noct", "bnpi":
		return "at " + strings.ToUpper(group)
	case "low":
		return "in low light"
	}
	return "with the rear side's light"
}

// nominalProduct is Vmp × Imp against a class's nominal power: an exact number, mostly, so its printed digits round nothing.
type nominalProduct struct{ product }

func (p *nominalProduct) misfit(b *board) float64 {
	pmax := p.terms[0].cell
	if math.IsNaN(b.x[pmax]) {
		return 0
	}
	kept := b.half[pmax]
	b.half[pmax] = 0
	exact := p.product.misfit(b)
	b.half[pmax] = kept
	return min(exact, p.product.misfit(b)+1.5) // one sheet in five prints a measured power
}

// proportional is the slope of what goes with the nominal power itself.
var proportional = envelope.Slope{Q05: 0.9, Median: 1, Q95: 1.1}

// line relates a row's classes, where there are two or more.
func (b *board) line(t *table, name string, row []int) {
	if len(printed(row)) < 2 {
		return
	}
	l := &line{row: row, slope: proportional, wide: 1}
	if s, ok := envelope.SlopeOf(name); ok {
		l.slope = s
	}
	stc := b.row("stc", -1, "pmax_w")
	for i := range row {
		if b.watts[i] == 0 && stc[i] != none {
			l.power = append(l.power, stc[i])
		} else {
			l.power = append(l.power, none)
		}
	}
	l.widen(b)
	b.relate("%s lies on the line of the other classes", l)
}

// efficiency relates a table's efficiencies to its powers and the module's area.
func (b *board) efficiency(t *table) {
	length, width := b.single("body", "length_mm"), b.single("body", "width_mm")
	if length == none || width == none {
		return
	}
	var members []product
	for i, e := range t.efficiency {
		if p := t.pmax[i]; e != none && p != none {
			members = append(members, product{terms: []term{{e, 1}, {length, 1}, {width, 1}, {p, -1}}, is: math.Log(1e5), scatter: ownEfficiency})
		}
	}
	if len(members) > 0 {
		b.relate("the efficiency is Pmax over length × width", newShared(areaScatter, members))
	}
}
