package site

import (
	"pvtally/rules/physics"
	"pvtally/schema/relate"
)

// Hour is the weather of an hour, or what stands for many hours. Temperatures in °C, irradiance on the module in W/m2, wind in m/s at 10 m.
type Hour struct {
	Ambient    float64
	Irradiance float64
	Wind       *float64 // nil where it is not known
	Module     *float64 // the cell's temperature, where it is given instead of calculated
}

// Mounting says how a module's temperature follows from an hour. The zero Mounting takes the sheet's NMOT or NOCT, on an open rack.
type Mounting struct {
	// Standoff is the gap to a roof in mm for the sheet's NMOT or NOCT; nil is an open rack.
	Standoff *float64
	// Faiman replaces the sheet's temperature by coefficients of Faiman's model.
	Faiman *Faiman
	// Sandia replaces it by a mounting of Sandia's model.
	Sandia *physics.SandiaMount
}

// Faiman holds the coefficients of physics.Faiman: U0 in W/m2/K, U1 in W s/m3/K.
type Faiman struct{ U0, U1 float64 }

// standoffs are what a gap of up to so many mm adds to NOCT, in K; beyond the last the module stands free.
// Source: System Advisor Model Photovoltaic Model Technical Reference, NREL/TP-6A20-67399, section 10.6 (in inches: 0.5, 1.5, 2.5, 3.5),
// from memory; which side of a bound belongs to which row is not said there.
var standoffs = []struct{ upTo, add float64 }{{12.7, 18}, {38.1, 11}, {63.5, 6}, {88.9, 2}}

// StandoffRise is what a gap to the roof in mm adds to NOCT or NMOT, in K.
func StandoffRise(mm float64) float64 {
	for _, s := range standoffs {
		if mm <= s.upTo {
			return s.add
		}
	}
	return 0
}

// CellTemperature is the cell's in °C. With the sheet's NMOT or NOCT it is Ross's form where the wind is not known, else NREL's with the
// wind; NOCT is measured at open circuit, so with it the energy that leaves as electricity is taken out.
func (m *Module) CellTemperature(h Hour, mount Mounting) Value {
	if h.Module != nil {
		return Exactly(*h.Module)
	}
	wind := 1.0
	if h.Wind != nil {
		wind = *h.Wind
	}
	switch {
	case mount.Faiman != nil:
		return Exactly(physics.Faiman(h.Irradiance, h.Ambient, wind, mount.Faiman.U0, mount.Faiman.U1))
	case mount.Sandia != nil:
		_, cell := mount.Sandia.Temperatures(h.Irradiance, h.Ambient, wind)
		return Exactly(cell)
	}
	nominal, efficiency := m.NMOT, 0.0
	if !nominal.Known() {
		if nominal = m.NOCT; !nominal.Known() {
			return None("neither NMOT nor NOCT is printed, so the cell temperature is not known")
		}
		efficiency = m.shareOfLight()
	}
	add := 0.0
	if mount.Standoff != nil {
		add = StandoffRise(*mount.Standoff)
	}
	at := func(nominal float64) float64 {
		if h.Wind == nil {
			return physics.CellTemperature(nominal+add, h.Irradiance, h.Ambient)
		}
		return physics.CellTemperatureInWind(nominal+add, h.Irradiance, h.Ambient, *h.Wind, efficiency)
	}
	return within(at(nominal.V), relate.Interval{Lo: at(nominal.Lo), Hi: at(nominal.Hi)})
}

// TemperatureBy names the printed value on which CellTemperature stands in an hour: "NMOT", "NOCT", or "" where it needs none.
func (m *Module) TemperatureBy(h Hour, mount Mounting) string {
	switch {
	case h.Module != nil || mount.Faiman != nil || mount.Sandia != nil:
		return ""
	case m.NMOT.Known():
		return "NMOT"
	case m.NOCT.Known():
		return "NOCT"
	}
	return ""
}

// shareOfLight is the efficiency as a share, 0 where the sheet lets nobody know it: the module is then taken as hotter than it is.
func (m *Module) shareOfLight() float64 {
	if e := m.Pmax.Quotient(m.Area); e.Known() {
		return e.V / physics.STCIrradiance
	}
	if m.Efficiency.Known() {
		return m.Efficiency.V / 100
	}
	return 0
}
