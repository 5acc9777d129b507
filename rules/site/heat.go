package site

import (
	"pvtally/rules/physics"
)

// Heat is what an hour's temperature makes of one module.
type Heat struct {
	Cell     Value // °C
	Power    Value // W, by γ
	Model    Value // W, by the single-diode model
	Loss     Value // of power by temperature alone, % of the power the same light gives at 25 °C; negative in the warmth
	IscDrift Value // A from 25 °C to the cell temperature, at 1000 W/m2
	VocDrift Value // V, the same
}

// At is what an hour does to the module.
func (m *Module) At(h Hour, mount Mounting) Heat {
	t := m.CellTemperature(h, mount)
	warmth := t.Sum(Exactly(-physics.STCTemperature))
	relative := func(c Value) Value { return c.Product(warmth) } // %
	heat := Heat{
		Cell:     t,
		Loss:     relative(m.Gamma),
		Power:    m.Pmax.Product(relative(m.Gamma).Times(0.01).Sum(Exactly(1))).Times(h.Irradiance / physics.STCIrradiance),
		IscDrift: m.Isc.Product(relative(m.Alpha)).Times(0.01),
		VocDrift: m.Voc.Product(relative(m.Beta)).Times(0.01),
	}
	heat.Model = t
	if t.Known() {
		heat.Model = m.PowerByModel(h.Irradiance, t.V)
	}
	return heat
}

// PowerByModel is Pmax in W by the single-diode model.
func (m *Module) PowerByModel(irradiance, celsius float64) Value {
	if m.Curve == nil {
		return None("no single-diode curve goes through the printed values")
	}
	return Exactly(m.Curve.At(irradiance, celsius).MPP().Power())
}

// PowerAt is Pmax in W by γ at a cell temperature in °C, for 1000 W/m2.
func (m *Module) PowerAt(celsius float64) Value {
	return m.Pmax.Product(m.Gamma.Times((celsius - physics.STCTemperature) / 100).Sum(Exactly(1)))
}

// NominalPower is what the module gives at 800 W/m2 and its NMOT (or NOCT): as printed, and by γ.
func (m *Module) NominalPower() (printed, calculated Value) {
	printed, t := m.PowerNMOT, m.NMOT
	if !printed.Known() {
		if printed = m.PowerNOCT; !printed.Known() {
			printed = None("Pmax at NMOT or NOCT is not printed")
		}
	}
	if !t.Known() {
		t = m.NOCT
	}
	factor := m.Gamma.Product(t.Sum(Exactly(-physics.STCTemperature))).Times(0.01).Sum(Exactly(1))
	return printed, m.Pmax.Product(factor).Times(0.8)
}

// Span is how far Isc in A and Voc in V move between two cell temperatures in °C at 1000 W/m2.
func (m *Module) Span(low, high Value) (isc, voc Value) {
	rise := high.Sum(low.Times(-1))
	return m.Isc.Product(m.Alpha.Product(rise)).Times(0.01), m.Voc.Product(m.Beta.Product(rise)).Times(0.01)
}

// Sample is an hour with the energy of light that came in its like: any unit, the same in all samples of a year.
type Sample struct {
	Hour
	Energy float64
}

// Year is what temperature does over a year of samples.
type Year struct {
	Cell   Value // mean cell temperature weighted with the light, °C
	Effect Value // on the energy, % against cells that were always at 25 °C
}

// Over is the module's year: mean of γ (T - 25) weighted with the energy of the light.
func (m *Module) Over(samples []Sample, mount Mounting) Year {
	sum, weight := Exactly(0), 0.0
	for _, s := range samples {
		if s.Energy <= 0 {
			continue
		}
		t := m.CellTemperature(s.Hour, mount)
		if !t.Known() {
			return Year{t, t}
		}
		sum = sum.Sum(t.Times(s.Energy))
		weight += s.Energy
	}
	if weight <= 0 {
		none := None("no hour of the year has light")
		return Year{none, none}
	}
	cell := sum.Times(1 / weight)
	return Year{cell, m.Gamma.Product(cell.Sum(Exactly(-physics.STCTemperature)))}
}
