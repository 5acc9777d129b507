package rules

import (
	"fmt"

	"pvtally/schema/relate"
)

var bodyMassArea = &Rule{
	ID:      "body/mass-area",
	Title:   "mass over area is that of a framed laminate",
	Why:     "Glass makes two thirds of a module's mass, and its thickness hardly varies. A mass per area far outside is in pounds, of a pallet, or of another format.",
	Formula: "9.5 ≤ mass / (length × width) ≤ 18 kg/m2",
	Sources: []Source{{"Glass of 2.5 kg/m2 per millimetre, encapsulant and cells 1.7, frame 1 to 2 kg/m2", "calculated"}},
	Levels:  []Threshold{{Note, "outside the usual band"}, {Warning, "outside by a fifth"}, {Error, "below 3 or above 40 kg/m2"}},
	Settings: []Setting{
		{"lowest", 9.5, "kg/m2", "lower end of the usual band"},
		{"highest", 18, "kg/m2", "upper end of the usual band"},
	},
	Needs:   []string{"body.mass_kg", "body.length_mm", "body.width_mm"},
	Yields:  []string{"body/sides", "body/glass-mass", "stc/efficiency-area"},
	Caution: loadCaution,
	Check: func(p *Pass) {
		mass := p.value(p.Sheet.Body.Mass, "body", "mass_kg", -1, -1)
		if !mass.Printed() || p.area == relate.All || p.area.Lo <= 0 {
			return
		}
		density := mass.Div(p.area)
		lo, hi := p.Setting("lowest"), p.Setting("highest")
		var l Level
		switch {
		case density.Hi < 3 || density.Lo > 40:
			l = Error
		case density.Hi < lo/1.2 || density.Lo > hi*1.2:
			l = Warning
		case density.Hi < lo || density.Lo > hi:
			l = Note
		default:
			return
		}
		text := fmt.Sprintf("mass %s over %s × %s is %s kg/m2, usual is %s to %s", mass, p.length, p.width, around(density.Mid()), around(lo), around(hi))
		if pounds := density.Mid() * 0.4536; density.Lo > hi && pounds >= lo && pounds <= hi {
			text += "; in pounds it would be usual"
		}
		p.Report(l, Finding{Message: text, Implied: span(relate.Interval{Lo: lo, Hi: hi}.Mul(p.area))}, &mass, &p.length, &p.width)
	},
}

// loadCaution stands on findings that touch what a roof or a structure must carry.
const loadCaution = "The sheet's own limits, local code and a licensed professional decide; do not size a structure from a value in question."
