package rules

import (
	"fmt"

	"pvtally/rules/physics"
)

var stcFillFactorLimit = &Rule{
	ID:    "stc/fill-factor-limit",
	Title: "the fill factor stays below the ideal one",
	Why: "A cell without any series or shunt loss has the fill factor FF0 of its Voc; no module reaches it. FF0 assumes an ideality of 1, so a value above it is a question; " +
		"above 0.893, the limit of a silicon cell with Auger recombination alone, it is impossible.",
	Formula: "FF < FF0 = (v - ln(v + 0.72)) / (v + 1), v = (Voc / cells in series) / (kT/q); FF < 0.893",
	Sources: []Source{
		{"Green, Solid-State Electronics 24 (1981) 788; Solar Cells 7 (1982) 337, DOI 10.1016/0379-6787(82)90057-6", "secondary"},
		{"Richter, Hermle, Glunz, IEEE J. Photovolt. 3 (2013) 1184, DOI 10.1109/JPHOTOV.2013.2270351", "from memory"},
	},
	Levels:  []Threshold{{Warning, "the fill factor exceeds FF0 by more than rounding"}, {Error, "it exceeds 0.893 for silicon, or 1 for anything"}},
	Needs:   []string{"models[].stc.pmax_w", "models[].stc.voc_v", "models[].stc.isc_a"},
	Yields:  []string{"stc/voltage-order", "stc/current-order", "stc/power-product", "classes/name-power"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		for i := range p.stc {
			e := &p.stc[i]
			if !e.Pmax.Printed() || !e.Voc.Printed() || !e.Isc.Printed() {
				continue
			}
			fill := e.Pmax.Div(e.Voc.Mul(e.Isc.Interval))
			limit := 1.0
			if p.silicon {
				limit = physics.SiliconMaxFillFactor
			}
			if fill.Lo > limit {
				p.Report(Error, Finding{Message: fmt.Sprintf("fill factor %s (%s) exceeds the limit of %s", around(fill.Mid()), list([]*Value{&e.Pmax, &e.Voc, &e.Isc}), around(limit))}, &e.Pmax, &e.Voc, &e.Isc)
				continue
			}
			if cell := p.vocCell(i); p.silicon && p.series > 0 && cell.Lo > 0.5 && cell.Hi < physics.SiliconMaxVoc {
				if ideal := physics.IdealFillFactor(cell.Hi, 1, physics.STCTemperature); fill.Lo > ideal {
					p.Report(Warning, Finding{Message: fmt.Sprintf("fill factor %s exceeds the ideal %s of a cell with %s V", around(fill.Mid()), around(ideal), around(cell.Mid()))}, &e.Pmax, &e.Voc, &e.Isc, &p.count)
				}
			}
		}
	},
}
