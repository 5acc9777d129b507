package rules

import "fmt"

var limitsTemperature = &Rule{
	ID:      "limits/temperature",
	Title:   "the operating temperatures are the customary -40 to +85 °C",
	Why:     "The climate tests of IEC 61215 run between -40 and +85 °C, and sheets print just that. Another figure is worth a look, an order the wrong way round is a slip.",
	Formula: "minimum = -40 °C, maximum = 85 °C (up to 105 °C for hot climates)",
	Sources: []Source{{"IEC 61215-2 MQT 11 to 13", "from memory"}, {"IEC TS 63126 for hotter operation", "from memory"}},
	Levels:  []Threshold{{Note, "another than the customary value"}, {Error, "the maximum is not above the minimum, or the minimum is above 0 °C"}},
	Needs:   []string{"limits.temperature_min_c, limits.temperature_max_c"},
	Check: func(p *Pass) {
		l := &p.Sheet.Limits
		lo, hi := p.value(l.TemperatureMin, "limits", "temperature_min_c", -1, -1), p.value(l.TemperatureMax, "limits", "temperature_max_c", -1, -1)
		if lo.Printed() && hi.Printed() && lo.V >= hi.V || lo.V > 0 {
			text := fmt.Sprintf("operating temperatures %s to %s", lo, hi)
			if lo.V > 0 {
				text += "; the minimum seems to have lost its minus"
			}
			p.Report(Error, Finding{Message: text, Implied: []string{"-40"}}, &lo, &hi)
			return
		}
		if lo.Printed() && lo.V != -40 {
			p.Report(Note, Finding{Message: fmt.Sprintf("lowest operating temperature %s, customary is -40 °C", lo), Implied: []string{"-40"}}, &lo)
		}
		if hi.Printed() && (hi.V < 85 || hi.V > 105) {
			p.Report(Note, Finding{Message: fmt.Sprintf("highest operating temperature %s, customary is 85 °C", hi), Implied: []string{"85"}}, &hi)
		}
	},
}
