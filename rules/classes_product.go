package rules

import (
	"fmt"
	"math"
)

var classesProduct = &Rule{
	ID:    "classes/product",
	Title: "Vmp times Imp meets the nominal power in every class alike",
	Why: "A class's Pmax is its nominal power, an exact number. Where Vmp times Imp gives it to the rounding of the two factors in every other class, a class that does not has a digit wrong, " +
		"though by itself it would pass for rounding of Pmax.",
	Formula: "|Vmp × Imp - Pmax| ≤ the others' worst, bounded by the rounding of Vmp and Imp",
	Sources: []Source{{"Arithmetic; the habit of the sheet itself", "calculated"}},
	Grade:   Grade{Of: "distance beyond what the other classes show", Unit: "printed units of Imp", Note: 0.5, Warning: 0.9, Error: Never},
	Needs:   []string{"models[].stc.pmax_w, vmp_v, imp_a of four classes or more"},
	Yields:  []string{"stc/power-product", "classes/name-power"},
	Check: func(p *Pass) {
		n := len(p.stc)
		if n < 4 {
			return
		}
		// the farthest class, and the farthest of the others
		worst, off, next := -1, 0.0, 0.0
		for i := range p.stc {
			e := &p.stc[i]
			if !e.Pmax.Printed() || !e.Vmp.Printed() || !e.Imp.Printed() || e.Vmp.V <= 0 {
				return
			}
			d := math.Abs(e.Pmax.V/e.Vmp.V-e.Imp.V) / (2 * e.Imp.Half())
			if d > off {
				worst, off, next = i, d, off
			} else {
				next = max(next, d)
			}
		}
		if worst < 0 {
			return
		}
		e := &p.stc[worst]
		// what the rounding of the factors can do, in units of Imp; a sheet that divides by its printed Vmp shows half a unit
		rounding := 0.5 + e.Vmp.Half()/e.Vmp.V*e.Imp.V/(2*e.Imp.Half())
		if next > rounding {
			return // the other classes do not keep the habit either
		}
		allowed := min(rounding, next+0.6)
		p.Report(p.Grade(off-max(allowed, 0.5)), Finding{
			Message: fmt.Sprintf("Pmax / Vmp = %s / %s = %s A, printed Imp %s: %s units of its last digit apart, in the other classes at most %s", e.Pmax, e.Vmp, decimalsOf(e.Pmax.V/e.Vmp.V, &e.Imp), e.Imp, around(off), around(next)),
			Implied: []string{decimalsOf(e.Pmax.V/e.Vmp.V, &e.Imp)},
		}, &e.Imp, &e.Vmp, &e.Pmax)
	},
}
