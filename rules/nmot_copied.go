package rules

import "fmt"

var nmotCopied, noctCopied = twice(Rule{
	ID:      "nmot/copied",
	Title:   "the table at NMOT is not STC's over again, nor another class's",
	Why:     "A column copied from the STC table or from the next class, with only its heading changed, is a common slip of layout.",
	Formula: "y(NMOT) ≠ y(STC); y(NMOT, class i) ≠ y(NMOT, class k)",
	Sources: []Source{{"How tables go wrong", "common practice"}},
	Levels:  []Threshold{{Error, "two or more values repeat STC's, or the whole table repeats another class's of different power"}},
	Needs:   []string{"models[].nmot", "models[].stc"},
}, func(p *Pass, o *operating) {
	s := &p.stc[o.i]
	var same []*Value
	for _, pair := range [][2]*Value{{&o.Pmax, &s.Pmax}, {&o.Isc, &s.Isc}, {&o.Imp, &s.Imp}, {&o.Voc, &s.Voc}, {&o.Vmp, &s.Vmp}} {
		if pair[0].Printed() && pair[1].Printed() && pair[0].V == pair[1].V {
			same = append(same, pair[0])
		}
	}
	if len(same) >= 2 {
		p.Report(Error, Finding{Message: fmt.Sprintf("at %s %s are the values of STC", upper(same[0].at.group), list(same))}, same...)
		return
	}
	if o.i == 0 || !o.Full() {
		return
	}
	// the neighbour before it is enough: classes stand in order, and a copy sits beside its original
	m := &p.Sheet.Models[o.i-1]
	b := &m.NMOT
	if o.Pmax.at.group == "noct" {
		b = &m.NOCT
	}
	if m.STC.Pmax.Float() != s.Pmax.V && b.Pmax.Float() == o.Pmax.V && b.Vmp.Float() == o.Vmp.V && b.Imp.Float() == o.Imp.V && b.Voc.Float() == o.Voc.V && b.Isc.Float() == o.Isc.V {
		p.Report(Error, Finding{Message: fmt.Sprintf("the values at %s (%s) are those of %s", upper(o.Pmax.at.group), list([]*Value{&o.Pmax, &o.Vmp, &o.Imp, &o.Voc, &o.Isc}), m.Name)}, &o.Pmax, &o.Vmp, &o.Imp, &o.Voc, &o.Isc)
	}
})
