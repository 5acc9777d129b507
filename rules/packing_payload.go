package rules

import "fmt"

var packingPayload = &Rule{
	ID:      "packing/payload",
	Title:   "a container of modules is not heavier than it may be",
	Why:     "A 40' container carries some 28 tonnes. More modules than that, by the printed mass, means a wrong mass or a wrong count.",
	Formula: "modules per container × mass ≤ payload",
	Sources: []Source{{"Payload of a 40' high cube, 26.5 to 28.8 t (ISO 668)", "from memory"}},
	Levels:  []Threshold{{Note, "above the payload"}, {Warning, "above it by a fifth"}},
	Settings: []Setting{
		{"payload_kg", 28800, "kg", "greatest payload of a 40' high cube container"},
	},
	Needs:   []string{"packing.modules_per_container", "body.mass_kg"},
	Caution: loadCaution,
	Check: func(p *Pass) {
		container, mass := p.value(p.Sheet.Packing.ModulesPerContainer, "packing", "modules_per_container", -1, -1), p.value(p.Sheet.Body.Mass, "body", "mass_kg", -1, -1)
		if !container.Printed() || !mass.Printed() {
			return
		}
		total, payload := container.V*mass.Lo, p.Setting("payload_kg")
		if total <= payload {
			return
		}
		l := Note
		if total > 1.2*payload {
			l = Warning
		}
		p.Report(l, Finding{Message: fmt.Sprintf("%s modules of %s are %s kg, a container carries %s kg", container.text, mass, around(container.V*mass.V), around(payload))}, &container, &mass)
	},
}
