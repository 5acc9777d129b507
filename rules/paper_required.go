package rules

import "strings"

var paperRequired = &Rule{
	ID:      "paper/required",
	Title:   "the sheet prints what EN 50380 usually requires",
	Why:     "A design needs these values, and the standard for datasheets is commonly cited as requiring them. What is missing must be asked for.",
	Formula: "present: STC values, temperature coefficients, NMOT or NOCT, system voltage, fuse, size and mass, tolerance, technology; bifaciality where bifacial values are printed",
	Sources: []Source{{"EN 50380:2003 and :2017 as commonly cited; the clauses themselves were not read", "from memory"}},
	Levels:  []Threshold{{Note, "something is missing"}},
	Needs:   []string{"models[]"},
	Check: func(p *Pass) {
		s := p.Sheet
		if len(s.Models) == 0 {
			p.Report(Note, Finding{Message: "no power class with its values is printed: there is hardly anything to judge"})
			return
		}
		var missing []string
		need := func(ok bool, what string) {
			if !ok {
				missing = append(missing, what)
			}
		}
		for i := range p.stc {
			if e := &p.stc[i]; !e.Full() {
				need(false, "STC values of "+p.modelName(i))
				break
			}
		}
		c := &p.coef[0]
		t := &s.Thermal
		need(c.Alpha.Known(), "α(Isc)")
		need(c.Beta.Known(), "β(Voc)")
		need(c.Gamma.Known(), "γ(Pmax)")
		need(!t.NMOT.IsZero() || !t.NOCT.IsZero(), "NMOT")
		need(len(s.Limits.SystemVoltage) > 0, "maximum system voltage")
		need(!s.Limits.SeriesFuse.IsZero(), "maximum over-current protection rating")
		need(p.length.Printed() && p.width.Printed(), "outer size")
		need(!s.Body.Mass.IsZero(), "mass")
		o := &s.Tolerance
		need(!o.PowerPlusW.IsZero() || !o.PowerPlusPct.IsZero() || !o.PowerMinusW.IsZero() || !o.PowerMinusPct.IsZero(), "tolerance of Pmax")
		need(s.Cell.Technology != "", "cell technology")
		if len(missing) > 0 {
			p.Report(Note, Finding{Message: "usually required by EN 50380 and not printed: " + strings.Join(missing, ", ")})
		}
	},
}
