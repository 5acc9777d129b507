package physics

import "math"

// Gap is a semiconductor's band gap at 25 °C in eV and its relative change per K.
type Gap struct{ Ref, PerK float64 }

// Band gaps as the De Soto model takes them: silicon from De Soto 2006, the others as listed in the documentation of the pvlib library (BSD-3-Clause).
var (
	SiliconGap = Gap{1.121, -0.0002677}
	CdTeGap    = Gap{1.475, -0.0003}
	CIGSGap    = Gap{1.15, -0.00011}
)

// At translates parameters at STC to an irradiance in W/m2 (> 0) and a cell temperature in °C; alpha is the coefficient of Isc in A/K.
// Source: De Soto 2006, eqs. 8-13.
func (d Diode) At(irradiance, celsius, alpha float64, gap Gap) Diode {
	t, dt := celsius+ZeroCelsius, celsius-STCTemperature
	ratio, g := t/STCKelvin, irradiance/STCIrradiance
	k := Boltzmann / Charge // eV/K
	eg := gap.Ref * (1 + gap.PerK*dt)
	return Diode{
		IL:  g * (d.IL + alpha*dt),
		Io:  d.Io * ratio * ratio * ratio * math.Exp(gap.Ref/(k*STCKelvin)-eg/(k*t)),
		Rs:  d.Rs,
		Rsh: d.Rsh / g,
		A:   d.A * ratio,
	}
}

// betaStep is the temperature step over which Beta takes the difference, K (as the pvlib library does).
const betaStep = 2

// Beta is the model's coefficient of Voc in V/K at STC, over a step of 2 K.
func (d Diode) Beta(alpha float64, gap Gap) float64 { return d.betaFrom(d.Voc(), alpha, gap) }

// betaFrom is Beta where Voc at STC is already known.
func (d Diode) betaFrom(voc, alpha float64, gap Gap) float64 {
	return (d.At(STCIrradiance, STCTemperature+betaStep, alpha, gap).Voc() - voc) / betaStep
}
