package physics

import "math"

// Procedure1 moves a point of an I-V curve to another irradiance (W/m2) and cell temperature (°C) by IEC 60891, procedure 1.
// All corrections are absolute: Alpha in A/K, Beta in V/K, Rs in ohm, Kappa in ohm/K; Isc is the measured curve's.
// Source: IEC 60891:2009 clause 3 (from memory; form as in Piliougine et al., Energies 17 (2024) 566, DOI 10.3390/en17030566).
type Procedure1 struct{ Isc, Alpha, Beta, Rs, Kappa float64 }

// Move translates p from (g1, t1) to (g2, t2).
func (c Procedure1) Move(p Point, g1, t1, g2, t2 float64) Point {
	dt := t2 - t1
	i := p.I + c.Isc*(g2/g1-1) + c.Alpha*dt
	return Point{p.V - c.Rs*(i-p.I) - c.Kappa*i*dt + c.Beta*dt, i}
}

// Procedure2 is IEC 60891:2009 procedure 2. Alpha and Beta are relative (1/K), Voc is the curve's at STC, A the irradiance coefficient (about n Ns kT/q / Voc),
// Rs in ohm, Kappa in ohm/K.
type Procedure2 struct{ Voc, Alpha, Beta, A, Rs, Kappa float64 }

// Move translates p from (g1, t1) to (g2, t2).
func (c Procedure2) Move(p Point, g1, t1, g2, t2 float64) Point {
	dt := t2 - t1
	i := p.I * (1 + c.Alpha*dt) * g2 / g1
	return Point{p.V + c.Voc*(c.Beta*dt+c.A*math.Log(g2/g1)) - c.Rs*(i-p.I) - c.Kappa*i*dt, i}
}

// PowerAt is Pmax in the unit of pmax at an irradiance in W/m2 and a cell temperature in °C by the temperature coefficient alone (gamma in 1/K); textbook form.
func PowerAt(pmax, gamma, irradiance, celsius float64) float64 {
	return pmax * irradiance / STCIrradiance * (1 + gamma*(celsius-STCTemperature))
}

// CurrentAt is Isc at an irradiance and a cell temperature (alpha in 1/K); textbook form.
func CurrentAt(isc, alpha, irradiance, celsius float64) float64 {
	return isc * irradiance / STCIrradiance * (1 + alpha*(celsius-STCTemperature))
}

// VoltageAt is Voc at an irradiance and a cell temperature (beta in 1/K); a is the modified ideality factor n Ns kT/q in V.
func VoltageAt(voc, beta, a, irradiance, celsius float64) float64 {
	return voc*(1+beta*(celsius-STCTemperature)) + a*math.Log(irradiance/STCIrradiance)
}
