package rules

import "fmt"

var limitsLoad = &Rule{
	ID:      "limits/load",
	Title:   "test loads are 1.5 times design loads, and customary",
	Why:     "IEC 61215 tests with the design load times a safety factor of at least 1.5. A test load below that, or a rear load above the front's, is misprinted or is a design load under the wrong heading.",
	Formula: "test ≥ 1.5 × design; rear ≤ front; test ∈ 2400, 3600, 3800, 4000, 5400, 6000, 7000, 8000 … Pa",
	Sources: []Source{{"IEC 61215-2 MQT 16: 2400 Pa is 1600 Pa design, 5400 Pa is 3600 Pa", "secondary"}},
	Levels:  []Threshold{{Note, "rear load above front load, test load below 2400 Pa, or not in steps of 100 Pa"}, {Warning, "test load is not 1.5 times the design load"}, {Error, "design load is above the test load"}},
	Settings: []Setting{
		{"factor", 1.5, "times", "safety factor between design and test load"},
		{"within_pct", 2, "%", "how far the printed pair may lie from the factor"},
	},
	Needs:   []string{"limits.front_load_pa or limits.rear_load_pa"},
	Caution: loadCaution,
	Check: func(p *Pass) {
		l := &p.Sheet.Limits
		front, rear := p.value(l.FrontLoad, "limits", "front_load_pa", -1, -1), p.value(l.RearLoad, "limits", "rear_load_pa", -1, -1)
		frontDesign, rearDesign := p.value(l.FrontDesignLoad, "limits", "front_design_load_pa", -1, -1), p.value(l.RearDesignLoad, "limits", "rear_design_load_pa", -1, -1)
		factor, within := p.Setting("factor"), p.Setting("within_pct")/100
		for _, pair := range [][2]*Value{{&front, &frontDesign}, {&rear, &rearDesign}} {
			test, design := pair[0], pair[1]
			switch {
			case !test.Printed() || !design.Printed():
			case design.Lo > test.Hi:
				p.Report(Error, Finding{Message: fmt.Sprintf("%s %s is above %s %s", design.Symbol(), design, test.Symbol(), test), Implied: []string{around(test.V / factor)}}, design, test)
			case test.Hi < design.Lo*factor*(1-within):
				p.Report(Warning, Finding{Message: fmt.Sprintf("%s %s is %s times %s %s, the test asks for %s", test.Symbol(), test, around(test.V/design.V), design.Symbol(), design, around(factor)), Implied: []string{around(design.V * factor)}}, test, design)
			case test.Lo > design.Hi*factor*1.4:
				p.Report(Note, Finding{Message: fmt.Sprintf("%s %s is %s times %s %s, usual is %s", test.Symbol(), test, around(test.V/design.V), design.Symbol(), design, around(factor))}, test, design)
			}
		}
		if front.Printed() && rear.Printed() && rear.Lo > front.Hi {
			p.Report(Note, Finding{Message: fmt.Sprintf("rear load %s is above front load %s", rear, front)}, &rear, &front)
		}
		for _, v := range []*Value{&front, &rear} {
			if v.Printed() && (v.V < 1400 || v.V > 12000) {
				p.Report(Note, Finding{Message: fmt.Sprintf("%s %s, customary test loads are 2400 to 8000 Pa", v.Symbol(), v)}, v)
			}
		}
	},
}
