package rules

import "fmt"

var stcVoltageOrder = &Rule{
	ID:      "stc/voltage-order",
	Title:   "Vmp lies below Voc",
	Why:     "Power is drawn at a voltage below the open circuit's; at Voc no current flows. Two values the other way round have changed places.",
	Formula: "Vmp < Voc",
	Sources: []Source{{"Shape of the I-V curve, IEC TS 61836", "read"}},
	Levels:  []Threshold{{Error, "Vmp is not below Voc"}},
	Needs:   []string{"models[].stc.vmp_v", "models[].stc.voc_v"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		for i := range p.stc {
			p.below(&p.stc[i].Vmp, &p.stc[i].Voc)
		}
	},
}

// below reports a value that does not lie below another, as it must.
func (p *Pass) below(a, b *Value) {
	if a.Printed() && b.Printed() && a.V >= b.V {
		p.Report(Error, Finding{Message: fmt.Sprintf("%s %s is not below %s %s", a.Symbol(), a, b.Symbol(), b)}, a, b)
	}
}
