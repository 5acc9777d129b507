package physics

import "math"

// CellTemperature is the cell's in °C by Ross's form: ambient (°C) plus the rise at 800 W/m2 scaled with the irradiance in W/m2.
func CellTemperature(noct, irradiance, ambient float64) float64 {
	return ambient + (noct-20)*irradiance/800
}

// absorbed is the product of transmittance and absorptance that the NOCT models take.
const absorbed = 0.9

// CellTemperatureInWind is the cell's temperature in °C with the electrical energy taken out (efficiency as a share) and the wind in m/s at 10 m, one storey.
// Source: System Advisor Model Photovoltaic Model Technical Reference, NREL/TP-6A20-67399, section 10.6.
func CellTemperatureInWind(noct, irradiance, ambient, wind, efficiency float64) float64 {
	return ambient + irradiance/800*(noct-20)*(1-efficiency/absorbed)*9.5/(5.7+3.8*0.51*wind)
}

// Faiman is the module's temperature in °C at an irradiance in W/m2, ambient in °C and wind in m/s; u0 in W/m2/K, u1 in W s/m3/K.
// Source: Faiman, Prog. Photovolt. 16 (2008) 307, DOI 10.1002/pip.813; IEC 61853-2.
func Faiman(irradiance, ambient, wind, u0, u1 float64) float64 {
	return ambient + irradiance/(u0+u1*wind)
}

// NMOT is the nominal module operating temperature in °C from Faiman's coefficients: 800 W/m2, 20 °C, 1 m/s. Source: IEC 61853-2:2016, clause 8.
func NMOT(u0, u1 float64) float64 { return Faiman(800, 20, 1, u0, u1) }

// SandiaMount holds the coefficients of Sandia's thermal model for one mounting. Source: King, Boyson, Kratochvil, SAND2004-3535.
type SandiaMount struct{ A, B, DeltaT float64 }

// Mountings of SAND2004-3535.
var (
	GlassGlassOpenRack       = SandiaMount{-3.47, -0.0594, 3}
	GlassGlassCloseMount     = SandiaMount{-2.98, -0.0471, 1}
	GlassPolymerOpenRack     = SandiaMount{-3.56, -0.0750, 3}
	GlassPolymerInsulatedTop = SandiaMount{-2.81, -0.0455, 0}
)

// Temperatures are the module's back and the cell's in °C at an irradiance in W/m2, ambient in °C and wind in m/s at 10 m.
func (s SandiaMount) Temperatures(irradiance, ambient, wind float64) (module, cell float64) {
	module = irradiance*math.Exp(s.A+s.B*wind) + ambient
	return module, module + irradiance/STCIrradiance*s.DeltaT
}

// PTCRatio is PTC power over STC power from gamma in 1/K, NOCT in °C and the module's efficiency as a share: 1000 W/m2, 20 °C ambient, 1 m/s.
// Source: an identity of the California Energy Commission's list (edition of 2021-12-01: residual -0.5 to +0.2 % for silicon), calculated.
func PTCRatio(gamma, noct, efficiency float64) float64 {
	cell := 20 + 1.25*(noct-20)*(1-efficiency/absorbed)
	return 1 + gamma*(cell-STCTemperature)
}
