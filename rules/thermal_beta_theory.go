package rules

import (
	"fmt"

	"pvtally/rules/physics"
	"pvtally/schema/relate"
)

var thermalBetaTheory = &Rule{
	ID:    "thermal/beta-theory",
	Title: "β per cell is what theory gives for the cell's Voc",
	Why: "How fast a junction loses voltage follows from the voltage it has and from silicon's gap. A larger gap than real modules show means a wrong unit, " +
		"a wrong count of cells, a wrong Voc or another row's coefficient.",
	Formula: "β Voc/n = (Voc/n - Eg0/q - 3 kT/q)/T ± 0.5 mV/K, Eg0/q = 1.206 V, T = 298.15 K",
	Sources: []Source{
		{"Green, Prog. Photovolt. 11 (2003) 333, DOI 10.1002/pip.496; Dupré, Vaillon, Green, SOLMAT 140 (2015) 92, DOI 10.1016/j.solmat.2015.03.025", "secondary"},
		{"California Energy Commission list, edition 2021-12: -0.49…+0.50 mV/K for 98 % of silicon modules", "calculated"},
	},
	Grade:    Grade{Of: "distance beyond the tolerance", Unit: "mV/K per cell", Note: 0, Warning: 0.25, Error: 0.75},
	Settings: []Setting{{"tolerance", 0.5, "mV/K per cell", "what real modules show beyond theory"}},
	Needs:    []string{"thermal.beta_voc", "models[].stc.voc_v", "cell.count", "cell.technology"},
	Yields:   []string{"thermal/sign", "thermal/beta-range", "thermal/coefficient-sum", "stc/voc-per-cell", "stc/cell-count"},
	Caution:  voltageCaution,
	Check: func(p *Pass) {
		if !p.silicon || p.series <= 0 || len(p.stc) == 0 {
			return
		}
		i := len(p.stc) / 2
		b, cell := &p.coef[i].Beta, p.vocCell(i)
		if !b.Known() || !p.stc[i].Voc.Printed() || cell.Lo <= 0 {
			return
		}
		theory := relate.Interval{Lo: physics.SiliconVocSlope(cell.Lo), Hi: physics.SiliconVocSlope(cell.Hi)}.Scale(1000)
		printed := b.Mul(cell).Scale(10)
		beyond := printed.Gap(theory.Inflate(p.Setting("tolerance")))
		if beyond == 0 {
			return
		}
		p.Report(p.Grade(beyond), Finding{
			Message: fmt.Sprintf("β = %s of Voc %s over %s cells is %s mV/K per cell, theory gives %s ± %s for %s V per cell", b.src, p.stc[i].Voc, around(p.series), around(printed.Mid()), around(theory.Mid()), around(p.Setting("tolerance")), around(cell.Mid())),
			Implied: []string{around((theory.Lo - p.Setting("tolerance")) / cell.Mid() / 10), around((theory.Hi + p.Setting("tolerance")) / cell.Mid() / 10)},
		}, &b.src, &p.stc[i].Voc, &p.count)
	},
}
