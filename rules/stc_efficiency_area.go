package rules

import (
	"fmt"

	"pvtally/schema/relate"
)

var stcEfficiencyArea = &Rule{
	ID:    "stc/efficiency-area",
	Title: "efficiency is Pmax over the module's outer area",
	Why: "A module's efficiency is its power over the light that falls on its whole area at 1000 W/m2. A gap means a wrong size, a wrong power, a wrong efficiency, or the cell's efficiency in the module's place. " +
		"Some makers print the average of their production, a few tenths of a point above, and say so in a footnote; where the efficiency is that of the nominal power in the model's name, it is a note.",
	Formula: "efficiency = Pmax / (length × width × 1000 W/m2)",
	Sources: []Source{{"Arithmetic with the definition of IEC TS 61836", "read"}},
	Grade:   Grade{Of: "part of the gap that rounding cannot explain", Unit: "%", Note: 0, Warning: 0.1, Error: 3},
	Needs:   []string{"models[].stc.efficiency_pct", "models[].stc.pmax_w", "body.length_mm", "body.width_mm"},
	Yields:  []string{"body/sides", "classes/slipped-row", "classes/name-power"},
	Check: func(p *Pass) {
		if p.area == relate.All {
			return
		}
		for i := range p.stc {
			e := &p.stc[i]
			if !e.Efficiency.Printed() || !e.Pmax.Printed() {
				continue
			}
			expected := e.Pmax.Div(p.area).Scale(0.1)
			g := Compare(&e.Efficiency, expected)
			l := p.Grade(g.Pct)
			if l == 0 {
				continue
			}
			text := fmt.Sprintf("Pmax / area = %s / (%s × %s) = %s %%, printed efficiency %s", e.Pmax, p.length, p.width, around(expected.Mid()), e.Efficiency)
			if r := e.Efficiency.V / expected.Mid(); l == Error && r > 1.06 && r < 1.16 {
				text += ", as a cell's efficiency would be"
			}
			if nominal, ok := p.averaged(i); ok {
				l, text = Note, text+", which is that of the name's "+around(nominal)+" W"
			}
			p.Report(l, apart(g, expected, text), &e.Efficiency, &e.Pmax, &p.length, &p.width)
		}
	},
}

// averaged reports an efficiency that is not the printed Pmax's but the nominal power's in the model's name: some makers print the average Pmax of
// a class, half a class above its name, and the efficiency that the class has at least.
func (p *Pass) averaged(i int) (nominal float64, ok bool) {
	pmax := p.stc[i].Pmax.V
	nominal, count := number(p.modelName(i), -1)
	if count == 0 || nominal >= pmax || nominal < leastNominal*pmax {
		return 0, false
	}
	return nominal, Compare(&p.stc[i].Efficiency, relate.Exactly(nominal).Div(p.area).Scale(0.1)).Holds()
}

// leastNominal is the nominal power over the average of its class, at the least: classes are 5 W wide.
const leastNominal = 0.98
