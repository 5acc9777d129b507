package physics

import "math"

// IdealFillFactor is FF0 of a cell without series or shunt loss, of an open-circuit voltage per cell in V, an ideality and a cell temperature in °C.
// It holds for a normalised voltage above 10. Source: Green, Solid-State Electronics 24 (1981) 788; Solar Cells 7 (1982) 337,
// DOI 10.1016/0379-6787(82)90057-6.
func IdealFillFactor(vocCell, ideality, celsius float64) float64 {
	v := vocCell / (ideality * ThermalVoltage(celsius))
	return (v - math.Log(v+0.72)) / (v + 1)
}

// FillFactor is FF with series and shunt loss: rs = Rs Isc/Voc below 0.4, rsh = Rsh Isc/Voc above 0.4. Source: Green, as IdealFillFactor.
func FillFactor(vocCell, ideality, celsius, rs, rsh float64) float64 {
	ffs := IdealFillFactor(vocCell, ideality, celsius)*(1-1.1*rs) + rs*rs/5.4
	v := vocCell / (ideality * ThermalVoltage(celsius))
	return ffs * (1 - (v+0.7)/v*ffs/rsh)
}

// FillFactorCoefficient is (1/FF) dFF/dT in 1/K of a cell at STC, from Voc per cell in V and beta in 1/K. Source: Green 1982, as IdealFillFactor.
func FillFactorCoefficient(vocCell, beta float64) float64 {
	return (1 - 1.02*IdealFillFactor(vocCell, 1, STCTemperature)) * (beta - 1/STCKelvin)
}
