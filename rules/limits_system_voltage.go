package rules

import "fmt"

var limitsSystemVoltage = &Rule{
	ID:      "limits/system-voltage",
	Title:   "the maximum system voltage is one of the customary ones",
	Why:     "Modules are certified for 600, 1000 or 1500 V; other figures are rare, and a string designed by a misprint is a hazard. No module's own Voc comes near its system voltage.",
	Formula: "system voltage ∈ {600, 1000, 1500, 2000} V; system voltage > 2 Voc",
	Sources: []Source{{"NEC 690.7; IEC 61730", "from memory"}, {"Marks of real sheets", "common practice"}},
	Levels:  []Threshold{{Note, "not a customary value"}, {Warning, "below 200 or above 2000 V"}, {Error, "not above Voc"}},
	Needs:   []string{"limits.system_voltage_v"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		for r, n := range p.Sheet.Limits.SystemVoltage {
			v := p.value(n, "limits", "system_voltage_v", -1, r)
			if !v.Printed() {
				continue
			}
			l := Note
			switch v.V {
			case 600, 1000, 1500, 2000:
				l = 0
			default:
				if v.V < 200 || v.V > 2000 {
					l = Warning
				}
			}
			if len(p.stc) > 0 && v.V <= p.stc[0].Voc.V {
				l = Error
			}
			if l != 0 {
				p.Report(l, Finding{Message: fmt.Sprintf("maximum system voltage %s; customary are 600, 1000 and 1500 V", v), Implied: []string{"600", "1000", "1500"}}, &v)
			}
		}
	},
}
