package rules

import (
	"fmt"

	"pvtally/rules/envelope"
)

var thermalTemperatureRange = &Rule{
	ID:    "thermal/temperature-range",
	Title: "NMOT and NOCT are those of open-rack modules, NMOT not above NOCT",
	Why: "Both are temperatures at 800 W/m2, 20 °C and 1 m/s on an open rack; physics of heat loss puts them in the forties. At NMOT the module delivers power, at NOCT it does not: " +
		"the energy taken out makes NMOT the cooler.",
	Formula: "lo ≤ NMOT, NOCT ≤ hi, by technology (41…52 °C for silicon); NMOT ≤ NOCT",
	Sources: []Source{
		{"IEC 61215:2005 clause 10.5 (NOCT), IEC 61215-2:2021 MQT 05 and IEC 61853-2 (NMOT)", "secondary"}, envelopeSource,
	},
	Grade:  Grade{Of: "distance outside the usual range", Unit: "of the distance from the bound to the median", Note: 0.2, Warning: 2, Error: 5},
	Levels: []Threshold{{Warning, "NMOT is above NOCT"}},
	Needs:  []string{"thermal.nmot_c or thermal.noct_c"},
	Check: func(p *Pass) {
		t := &p.Sheet.Thermal
		nmot, noct := p.value(t.NMOT, "thermal", "nmot_c", -1, -1), p.value(t.NOCT, "thermal", "noct_c", -1, -1)
		for _, v := range []*Value{&nmot, &noct} {
			if v.Printed() {
				p.inRange(envelope.Operating, v.Interval, v.Symbol(), " °C", v)
			}
		}
		if nmot.Printed() && noct.Printed() && nmot.V > noct.V {
			p.Report(Warning, Finding{Message: fmt.Sprintf("NMOT %s is above NOCT %s, though the module delivers power at NMOT", nmot, noct)}, &nmot, &noct)
		}
	},
}
