package rules

import "fmt"

var classesMonotone = &Rule{
	ID:      "classes/monotone",
	Title:   "no value falls as the power class rises",
	Why:     "A higher class has more voltage, more current or both, and never less of either: one product is sorted by its power. A value that falls is misprinted or stands in the wrong column.",
	Formula: "Pmax(k+1) > Pmax(k) ⇒ y(k+1) ≥ y(k) for Voc, Vmp, Isc, Imp, efficiency; likewise Pmax, Voc, Vmp, Isc at NMOT or NOCT",
	Sources: []Source{{"Sorting by power as makers do it", "common practice"}},
	Grade:   Grade{Of: "fall beyond rounding", Unit: "printed units", Note: 0, Warning: 0.5, Error: Never},
	Settings: []Setting{
		{"error_pct", 3, "%", "fall that makes an error"},
	},
	Levels: []Threshold{{Error, "the fall exceeds 3 %"}},
	Needs:  []string{"models[].stc, .nmot or .noct of two classes or more"},
	Yields: []string{"classes/slipped-row", "classes/efficiency", "stc/voltage-order", "stc/current-order", "stc/power-product", "stc/efficiency-area", "nmot/order", "noct/order", "nmot/power-product", "noct/power-product"},
	Check: func(p *Pass) {
		for _, q := range rowFields {
			p.rises(func(i int) *Value { return q.of(&p.stc[i]) })
		}
		for _, table := range [][]operating{p.nmot, p.noct} {
			for _, q := range operatingFields {
				p.rises(inTable(table, q))
			}
		}
	},
}

// rises reports where a row falls from one class to the next higher one.
func (p *Pass) rises(value func(i int) *Value) {
	for r := 1; r < len(p.rank); r++ {
		i, j := p.rank[r-1], p.rank[r]
		a, b := value(i), value(j)
		if !a.Printed() || !b.Printed() || p.nominal[i] >= p.nominal[j] || b.V >= a.V {
			continue
		}
		g := Compare(b, a.Interval)
		l := p.Grade(g.Steps)
		if g.Pct > p.Setting("error_pct") {
			l = Error
		}
		if l != 0 {
			p.Report(l, apart(g, a.Interval, fmt.Sprintf("%s%s falls from %s in %s to %s in the higher class", a.Symbol(), condition(a), a, p.modelName(i), b)), b, a)
		}
	}
}

// rowFields are the rows of an electrical table that rise with the class.
var rowFields = []smoothField{
	{"vmp_v", func(e *Electrical) *Value { return &e.Vmp }},
	{"imp_a", func(e *Electrical) *Value { return &e.Imp }},
	{"voc_v", func(e *Electrical) *Value { return &e.Voc }},
	{"isc_a", func(e *Electrical) *Value { return &e.Isc }},
	{"efficiency_pct", func(e *Electrical) *Value { return &e.Efficiency }},
}
