package rules

import (
	"strings"

	"pvtally/rules/physics"
	"pvtally/schema"
	"pvtally/schema/relate"
)

// operating is one of the two operating conditions, NMOT or NOCT, of one class: its table and its cell temperature.
type operating struct {
	Electrical
	i           int
	temperature Value
	translated  bool // what follows is known
	isc         relate.Interval
	voc         relate.Interval
	pmax        relate.Interval
}

// twice makes the NMOT rule and the NOCT rule of one text: NMOT in it becomes NOCT.
func twice(r Rule, check func(*Pass, *operating)) (nmot, noct *Rule) {
	other := strings.NewReplacer("NMOT", "NOCT", "nmot", "noct")
	second := r
	for _, text := range []*string{&second.ID, &second.Title, &second.Why, &second.Formula, &second.Grade.Of} {
		*text = other.Replace(*text)
	}
	translate := func(list []string) (out []string) {
		for _, s := range list {
			out = append(out, other.Replace(s))
		}
		return out
	}
	second.Needs, second.Yields = translate(r.Needs), translate(r.Yields)
	second.Levels = append([]Threshold(nil), r.Levels...)
	for i := range second.Levels {
		second.Levels[i].When = other.Replace(second.Levels[i].When)
	}
	second.Settings = append([]Setting(nil), r.Settings...)
	first := r
	first.Check = func(p *Pass) {
		for i := range p.nmot {
			check(p, &p.nmot[i])
		}
	}
	second.Check = func(p *Pass) {
		for i := range p.noct {
			check(p, &p.noct[i])
		}
	}
	return &first, &second
}

// operatings lists every class that has the condition's table. Its temperature is the condition's own; where the sheet prints only
// the other's (one sheet in five does), that one serves, and findings name it.
func (p *Pass) operatings(out []operating, name string, table func(*schema.Model) *schema.Electrical) []operating {
	t := &p.Sheet.Thermal
	nmot, noct := p.value(t.NMOT, "thermal", "nmot_c", -1, -1), p.value(t.NOCT, "thermal", "noct_c", -1, -1)
	own, other := nmot, noct
	if name == "noct" {
		own, other = noct, nmot
	}
	if !own.Printed() {
		own = other
	}
	for i := range p.Sheet.Models {
		m := table(&p.Sheet.Models[i])
		if m.Pmax.IsZero() && m.Vmp.IsZero() && m.Imp.IsZero() && m.Voc.IsZero() && m.Isc.IsZero() {
			continue
		}
		out = append(out, operating{Electrical: p.electrical(m, name, i, -1), i: i, temperature: own})
	}
	return out
}

const operatingIrradiance = 800

// translate finds what a class's STC values become at 800 W/m2 and the printed temperature: Isc and Pmax by the printed coefficients, Voc by the coefficient and
// the logarithm of the irradiance; Pmax also by the fitted single-diode model, both forms within the interval. All where something is missing.
func (p *Pass) translate(o *operating) {
	if o.translated {
		return
	}
	o.translated = true
	o.isc, o.voc, o.pmax = relate.All, relate.All, relate.All
	if !o.temperature.Printed() {
		return
	}
	e, c := &p.stc[o.i], &p.coef[o.i]
	rise := o.temperature.Sub(relate.Exactly(physics.STCTemperature))
	if e.Isc.Printed() {
		factor := relate.Exactly(operatingIrradiance / physics.STCIrradiance)
		if c.Alpha.Known() && c.Alpha.V > 0 {
			factor = factor.Mul(c.Alpha.Mul(rise).Scale(0.01).Add(relate.Exactly(1)))
		}
		o.isc = e.Isc.Mul(factor)
	}
	fit, ok, _ := p.Fit(o.i)
	if e.Voc.Printed() && c.Beta.Known() {
		// n Ns kT/q is near 0.040 Voc for silicon (3.6 to 4.4 %): half a per cent of Voc at most between its ends
		a := relate.Interval{Lo: 0.036, Hi: 0.044}.Scale(e.Voc.V)
		if ok {
			a = relate.Exactly(fit.A)
		}
		lo := physics.VoltageAt(e.Voc.Lo, c.Beta.Lo/100, a.Hi, operatingIrradiance, o.temperature.Hi)
		hi := physics.VoltageAt(e.Voc.Hi, c.Beta.Hi/100, a.Lo, operatingIrradiance, o.temperature.Lo)
		o.voc = relate.Interval{Lo: lo, Hi: hi}
	}
	if e.Pmax.Printed() && c.Gamma.Known() {
		factor := c.Gamma.Mul(rise).Scale(0.01).Add(relate.Exactly(1)).Scale(operatingIrradiance / physics.STCIrradiance)
		o.pmax = e.Pmax.Mul(factor)
		if ok {
			gap, _ := gapOf(p.Sheet.Cell.Technology)
			model := fit.At(operatingIrradiance, o.temperature.V, max(c.Alpha.V, 0)/100*e.Isc.V, gap).MPP().Power()
			// the model knows the irradiance better than the coefficient, the coefficient the temperature: a model far from it has no say
			if m := o.pmax.Mid(); model > 0.97*m && model < 1.03*m {
				o.pmax = o.pmax.Hull(relate.Exactly(model))
			}
		}
	}
}
