package rules

import "fmt"

var nmotOrder, noctOrder = twice(Rule{
	ID:      "nmot/order",
	Title:   "at NMOT Vmp lies below Voc, Imp below Isc, and all below STC",
	Why:     "The table at NMOT has less light and warmer cells than STC's: every value but the efficiency is lower, and the knee of the curve lies below its ends as ever. Rows the other way round have changed headings.",
	Formula: "Vmp < Voc, Imp < Isc, y(NMOT) < y(STC) for Pmax, Voc, Vmp, Isc, Imp",
	Sources: []Source{{"Shape of the I-V curve; translation to 800 W/m2 as in IEC 60891", "read"}},
	Levels:  []Threshold{{Error, "a value at NMOT is not below the one it must lie below"}},
	Needs:   []string{"models[].nmot"},
	Yields:  []string{"nmot/copied"},
	Caution: voltageCaution,
}, func(p *Pass, o *operating) {
	s := &p.stc[o.i]
	interchanged := o.Vmp.Printed() && o.Voc.Printed() && o.Vmp.V >= o.Voc.V || o.Imp.Printed() && o.Isc.Printed() && o.Imp.V >= o.Isc.V
	if interchanged {
		text := fmt.Sprintf("at %s the values do not stand in the order of a curve: %s", upper(o.Pmax.at.group, o.Voc.at.group, o.Vmp.at.group), list([]*Value{&o.Vmp, &o.Voc, &o.Imp, &o.Isc}))
		if near(o.Voc.V, 0.8*s.Imp.V) || near(o.Voc.V, 0.8*s.Isc.V) || near(o.Isc.V, 0.93*s.Voc.V) || near(o.Vmp.V, 0.93*s.Voc.V) && near(o.Voc.V, 0.93*s.Vmp.V) {
			text += "; headings seem interchanged"
		}
		p.Report(Error, Finding{Message: text}, &o.Voc, &o.Vmp, &o.Isc, &o.Imp, &o.Pmax)
		return
	}
	for _, pair := range [][2]*Value{{&o.Pmax, &s.Pmax}, {&o.Vmp, &s.Vmp}, {&o.Imp, &s.Imp}, {&o.Voc, &s.Voc}, {&o.Isc, &s.Isc}} {
		if a, b := pair[0], pair[1]; a.Printed() && b.Printed() && a.V >= b.V {
			p.Report(Error, Finding{Message: fmt.Sprintf("%s at %s is %s, not below %s at STC", a.Symbol(), upper(a.at.group), a, b), Implied: []string{"0", b.text}}, a, b)
		}
	}
})

// near reports that two values differ by less than a twentieth.
func near(a, b float64) bool { return b > 0 && a > 0.95*b && a < 1.05*b }
