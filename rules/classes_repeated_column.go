package rules

import "fmt"

var classesRepeatedColumn = &Rule{
	ID:      "classes/repeated-column",
	Title:   "no two classes have the same numbers",
	Why:     "Two classes of different power cannot share voltage and current; a column was copied and only its heading changed.",
	Formula: "Pmax(i) ≠ Pmax(k) ⇒ (Vmp, Imp, Voc, Isc)(i) ≠ (Vmp, Imp, Voc, Isc)(k)",
	Sources: []Source{{"Arithmetic: Pmax = Vmp × Imp", "read"}},
	Levels:  []Threshold{{Error, "two classes of different power share all four values"}, {Warning, "two classes are the same in every value, power included"}},
	Needs:   []string{"models[].stc of two classes or more"},
	Check: func(p *Pass) {
		for r := 1; r < len(p.rank); r++ {
			i, j := p.rank[r-1], p.rank[r]
			a, b := &p.stc[i], &p.stc[j]
			if !a.Full() || !b.Full() || a.Vmp.V != b.Vmp.V || a.Imp.V != b.Imp.V || a.Voc.V != b.Voc.V || a.Isc.V != b.Isc.V {
				continue
			}
			l := Error
			if a.Pmax.V == b.Pmax.V {
				l = Warning
			}
			p.Report(l, Finding{Message: fmt.Sprintf("%s has the values of %s: Vmp %s, Imp %s, Voc %s, Isc %s", p.modelName(j), p.modelName(i), b.Vmp, b.Imp, b.Voc, b.Isc)}, &b.Vmp, &b.Imp, &b.Voc, &b.Isc, &a.Vmp, &a.Imp, &a.Voc, &a.Isc)
		}
	},
}
