package physics

// What theory needs of silicon to say how Voc falls with temperature: the gap extrapolated to 0 K over q in V, and the power of T in the saturation current.
const (
	siliconGapAtZero = 1.206
	siliconGammaR    = 3
)

// SiliconVocSlope is dVoc/dT in V/K of one silicon junction at 25 °C from its Voc in V: (Voc - Eg0/q - gamma kT/q)/T.
// Source: Green, Prog. Photovolt. 11 (2003) 333, DOI 10.1002/pip.496; Dupré, Vaillon, Green, SOLMAT 140 (2015) 92, DOI 10.1016/j.solmat.2015.03.025.
func SiliconVocSlope(vocCell float64) float64 {
	return (vocCell - siliconGapAtZero - siliconGammaR*STCThermalVoltage) / STCKelvin
}

// Limits of one silicon junction by Auger recombination and the AM1.5G spectrum (ASTM G173-03).
// Source: Richter, Hermle, Glunz, IEEE J. Photovolt. 3 (2013) 1184, DOI 10.1109/JPHOTOV.2013.2270351 (from memory).
const (
	SiliconMaxVoc        = 0.7613 // V
	SiliconMaxCurrent    = 43.31  // mA/cm2, one sun, front side
	SiliconMaxFillFactor = 0.8926
	SiliconMaxEfficiency = 29.43 // % of the cell's area
)
