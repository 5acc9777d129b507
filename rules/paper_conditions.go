package rules

import (
	"fmt"

	"pvtally/schema"
)

var paperConditions = &Rule{
	ID:      "paper/conditions",
	Title:   "the conditions printed for NMOT, NOCT, BNPI and STC are the standard's",
	Why:     "A value at other conditions than the standard's cannot be compared with another maker's: 800 W/m2, 20 °C and 1 m/s for NMOT and NOCT, 1000 and 135 W/m2 for BNPI.",
	Formula: "NMOT, NOCT: 800 W/m2, 20 °C ambient, 1 m/s; BNPI: 1000 + 135 W/m2; STC: 1000 W/m2, 25 °C, AM 1.5",
	Sources: []Source{{"IEC 61215-1 and -2:2021; IEC TS 61836", "secondary"}},
	Levels:  []Threshold{{Note, "a table stands without its temperature"}, {Warning, "a printed condition is not the standard's"}},
	Needs:   []string{"conditions, or models[].nmot, models[].noct"},
	Check: func(p *Pass) {
		c := &p.Sheet.Conditions
		for _, k := range []struct {
			name                          string
			is                            *schema.Condition
			irradiance, rear, ambient, wd float64
			cell, mass                    float64
		}{
			{"stc", &c.STC, 1000, 0, 0, 0, 25, 1.5},
			{"nmot", &c.NMOT, 800, 0, 20, 1, 0, 1.5},
			{"noct", &c.NOCT, 800, 0, 20, 1, 0, 1.5},
			{"bnpi", &c.BNPI, 1000, 135, 0, 0, 25, 1.5},
		} {
			for _, f := range []struct {
				n    schema.Number
				name string
				want float64
			}{{k.is.Irradiance, "irradiance_w_m2", k.irradiance}, {k.is.RearIrradiance, "rear_irradiance_w_m2", k.rear}, {k.is.Ambient, "ambient_c", k.ambient}, {k.is.Wind, "wind_m_s", k.wd}, {k.is.CellTemp, "cell_c", k.cell}, {k.is.AirMass, "air_mass", k.mass}} {
				if f.n.IsZero() || f.want == 0 || f.n.Float() == f.want {
					continue
				}
				if v := p.value(f.n, "conditions/"+k.name, f.name, -1, -1); v.Printed() {
					p.Report(Warning, Finding{Message: fmt.Sprintf("%s at %s is %s, the standard's is %s", v.Symbol(), upper(k.name), v, around(f.want)), Implied: []string{around(f.want)}}, &v)
				}
			}
		}
		t := &p.Sheet.Thermal
		if !t.NMOT.IsZero() || !t.NOCT.IsZero() {
			return
		}
		for i := range p.Sheet.Models {
			m := &p.Sheet.Models[i]
			for _, table := range []struct {
				name string
				n    schema.Number
			}{{"nmot", m.NMOT.Pmax}, {"noct", m.NOCT.Pmax}} {
				if v := p.value(table.n, table.name, "pmax_w", i, -1); v.Printed() {
					p.Report(Note, Finding{Message: fmt.Sprintf("values at %s are printed, the temperature is not", upper(table.name))}, &v)
					return
				}
			}
		}
	},
}
