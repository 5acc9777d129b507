package rules

import (
	"fmt"

	"pvtally/rules/envelope"
)

// efficiencyLimits are per cent of the module's total area: the best on sale, the record of a module, and what physics allows.
type efficiencyLimits struct{ sold, record, physical float64 }

func efficiencyLimitsOf(technology string) efficiencyLimits {
	switch technology {
	case "multi", "multi-perc":
		return efficiencyLimits{20.0, 20.4, 29.4}
	case "cdte":
		return efficiencyLimits{19.7, 20.2, 32.8}
	case "cigs":
		return efficiencyLimits{18.6, 19.2, 33.6}
	case "a-si":
		return efficiencyLimits{12.0, 12.3, 29.0}
	case "tandem", "":
		return efficiencyLimits{26.0, 26.9, 45}
	}
	return efficiencyLimits{25.0, 25.4, 29.4}
}

var stcEfficiencyLimit = &Rule{
	ID:      "stc/efficiency-limit",
	Title:   "efficiency is what has been built, and below what can be",
	Why:     "No module on sale beats the record module of its technology, and none beats physics; a higher figure is a misprint, another area's, or a cell's.",
	Formula: "efficiency ≤ best on sale (25.0 % silicon), ≤ record module (25.4 %; multi 20.4 %, CdTe 20.2 %, CIGS 19.2 %, thin silicon 12.3 %), ≤ physical limit (29.4 % silicon)",
	Sources: []Source{
		{"Silicon module record 25.4 % (certified October 2024), as reported in the trade press", "secondary"},
		{"Solar cell efficiency tables, versions 57 to 67: modules of other technologies", "from memory"},
		envelopeSource,
		{"Richter, Hermle, Glunz 2013: 29.4 % for silicon; detailed balance over ASTM G173-03 for the others", "calculated"},
	},
	Settings: []Setting{{"below", 0.25, rangeGrade.Unit, "how far below the usual range makes a note"}},
	Levels:   []Threshold{{Note, "above the best modules on sale, or below what modules of the technology have"}, {Warning, "above the record module of the technology"}, {Error, "above the physical limit"}},
	Needs:    []string{"models[].stc.efficiency_pct"},
	Yields:   []string{"stc/efficiency-area"},
	Check: func(p *Pass) {
		limits := efficiencyLimitsOf(p.Sheet.Cell.Technology)
		for i := range p.stc {
			v := &p.stc[i].Efficiency
			if !v.Printed() {
				continue
			}
			report := func(l Level, limit float64, what string) {
				p.Report(l, Finding{Message: fmt.Sprintf("efficiency %s is above %s, %s %%", v, what, around(limit)), Implied: []string{"0", around(limit)}}, v)
			}
			switch {
			case v.Lo > limits.physical:
				report(Error, limits.physical, "the physical limit of the technology")
			case v.Lo > limits.record:
				report(Warning, limits.record, "the record module of the technology")
			case v.Lo > limits.sold:
				report(Note, limits.sold, "the best modules on sale")
			default:
				if r := p.env[envelope.Efficiency]; r != nil && v.Hi < r.Lo-p.Setting("below")*r.LoScale {
					p.Report(Note, Finding{Message: fmt.Sprintf("efficiency %s is low: modules of this kind begin at %s %% (%s)", v, around(r.Lo), r.LoOrigin), Implied: []string{around(r.Lo), around(r.Hi)}}, v)
				}
			}
		}
	},
}
