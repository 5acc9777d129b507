package rules

import (
	"fmt"

	"pvtally/schema/relate"
)

// glassDensity is that of soda-lime glass, kg/m2 per mm.
const glassDensity = 2.5

var bodyGlassMass = &Rule{
	ID:      "body/glass-mass",
	Title:   "the module is heavier than its glass",
	Why:     "Soda-lime glass weighs 2.5 kg per square metre and millimetre; cells, encapsulant, frame and box come on top.",
	Formula: "mass > 2.5 × (front + rear glass in mm) × area in m2",
	Sources: []Source{{"Density of soda-lime glass, 2500 kg/m3", "from memory"}},
	Levels:  []Threshold{{Error, "the glass alone is heavier than the module"}},
	Needs:   []string{"body.mass_kg", "body.front_glass_mm", "body.length_mm", "body.width_mm"},
	Yields:  []string{"body/sides", "stc/efficiency-area"},
	Caution: loadCaution,
	Check: func(p *Pass) {
		b := &p.Sheet.Body
		mass, front, rear := p.value(b.Mass, "body", "mass_kg", -1, -1), p.value(b.FrontGlass, "body", "front_glass_mm", -1, -1), p.value(b.RearGlass, "body", "rear_glass_mm", -1, -1)
		if !mass.Printed() || !front.Printed() || p.area == relate.All {
			return
		}
		// the glass lies inside the frame: some 2 % less than the outer area
		glass := (front.Lo + max(rear.Lo, 0)) * glassDensity * p.area.Lo * 0.98
		if mass.Hi < glass {
			p.Report(Error, Finding{Message: fmt.Sprintf("glass of %s over %s × %s weighs %s kg, the printed mass is %s", list([]*Value{&front, &rear}), p.length, p.width, around(glass), mass)}, &mass, &front, &rear, &p.length, &p.width)
		}
	},
}
