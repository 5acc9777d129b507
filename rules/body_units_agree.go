package rules

import (
	"fmt"

	"pvtally/schema/relate"
)

var bodyUnitsAgree = &Rule{
	ID:      "body/units-agree",
	Title:   "a size, mass or load printed in two units is the same in both",
	Why:     "Sheets for several markets print millimetres and inches, kilograms and pounds, pascals and psf side by side. One of a pair that disagrees is misprinted, and only the pair can show it.",
	Formula: "|a - b| ≤ rounding of both; 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 psf = 47.88 Pa, 1 ft = 0.3048 m, AWG by ASTM B258",
	Sources: []Source{{"NIST SP 811 conversion factors; ASTM B258 for AWG", "from memory"}},
	Grade:   Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 0.1, Warning: 1, Error: 5},
	Settings: []Setting{
		{"cable_within_pct", 30, "%", "a cable's gauge is nominal: 4 mm2 is sold as 12 AWG (3.31 mm2)"},
		{"load_within_pct", 1.5, "%", "loads are rounded in psf"},
	},
	Needs:   []string{"also[] with a converted value"},
	Caution: loadCaution,
	Check: func(p *Pass) {
		p.agains(func(a *again) {
			if !a.converted {
				return
			}
			within := 0.0
			switch unitOf(a.first.at.name) {
			case " mm2":
				within = p.Setting("cable_within_pct")
			case " Pa":
				within = p.Setting("load_within_pct")
			}
			expected := a.interval
			if mid := expected.Mid(); within > 0 {
				expected = expected.Hull(relate.Interval{Lo: mid * (1 - within/100), Hi: mid * (1 + within/100)})
			}
			g := Compare(&a.first, expected)
			p.Report(p.Grade(g.Pct), apart(g, expected, fmt.Sprintf("%s is %s, and again %q, which is %s%s", a.first.Symbol(), a.first, a.second.Printed, a.second.Value, unitOf(a.first.at.name))), &a.first)
		})
	},
}
