package rules

var rearFactorMissing = &Rule{
	ID:      "rear/factor-missing",
	Title:   "a sheet with bifacial tables prints the bifaciality",
	Why:     "Without the bifaciality nobody can say what the rear side adds at a site: a gain table only multiplies. IEC 61215-1:2021 wants it on the label.",
	Formula: "rear_gain, rear_ratio or BNPI printed ⇒ bifaciality printed",
	Sources: []Source{{"IEC 61215-1:2021 and EN 50380:2017, documentation of bifacial types", "from memory"}},
	Levels:  []Threshold{{Note, "bifacial tables stand without a bifaciality"}},
	Needs:   []string{"models[].rear_gain, rear_ratio or bnpi"},
	Check: func(p *Pass) {
		if !p.Sheet.Bifacial.Factor.IsZero() {
			return
		}
		for i := range p.Sheet.Models {
			m := &p.Sheet.Models[i]
			var v Value
			switch {
			case len(m.RearGain) > 0:
				v = p.value(m.RearGain[0].Pmax, "rear_gain", "pmax_w", i, 0)
			case len(m.RearRatio) > 0:
				v = p.value(m.RearRatio[0].Pmax, "rear_ratio", "pmax_w", i, 0)
			case !m.BNPI.Pmax.IsZero():
				v = p.value(m.BNPI.Pmax, "bnpi", "pmax_w", i, -1)
			default:
				continue
			}
			p.Report(Note, Finding{Message: "bifacial values are printed, the bifaciality is not"}, &v)
			return
		}
	},
}
