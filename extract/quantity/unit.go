package quantity

// Unit is the canonical name of a unit.
type Unit string

const (
	None    Unit = ""
	V       Unit = "V"
	KV      Unit = "kV"
	MilliV  Unit = "mV"
	A       Unit = "A"
	MilliA  Unit = "mA"
	W       Unit = "W" // Wp too
	KW      Unit = "kW"
	MW      Unit = "MW"
	WH      Unit = "Wh"
	KWH     Unit = "kWh"
	Ohm     Unit = "Ω"
	Hz      Unit = "Hz"
	Percent Unit = "%"
	MM      Unit = "mm"
	CM      Unit = "cm"
	M       Unit = "m"
	Inch    Unit = "in"
	Foot    Unit = "ft"
	MM2     Unit = "mm2"
	CM2     Unit = "cm2"
	M2      Unit = "m2"
	M3      Unit = "m3"
	Foot2   Unit = "ft2"
	Inch2   Unit = "in2"
	KG      Unit = "kg"
	G       Unit = "g"
	Ton     Unit = "t"
	Pound   Unit = "lb"
	C       Unit = "°C"
	F       Unit = "°F"
	K       Unit = "K"
	Degree  Unit = "°" // an angle, or a temperature whose letter is lost
	Pa      Unit = "Pa"
	KPa     Unit = "kPa"
	NPerM2  Unit = "N/m2"
	KgPerM2 Unit = "kg/m2"
	PSF     Unit = "psf"
	AWG     Unit = "AWG"
	Year    Unit = "yr"
	MPerS   Unit = "m/s"
	KMPerH  Unit = "km/h"
	MPH     Unit = "mph"
	WPerM2  Unit = "W/m2"
	WPerKG  Unit = "W/kg"
	Piece   Unit = "pcs" // modules, pieces

	PctPerK Unit = "%/K"
	PctPerF Unit = "%/°F"
	VPerK   Unit = "V/K"
	MVPerK  Unit = "mV/K"
	APerK   Unit = "A/K"
	MAPerK  Unit = "mA/K"
	WPerK   Unit = "W/K"
	PerK    Unit = "1/K"
	PPMPerK Unit = "ppm/K"
	VPerF   Unit = "V/°F"
	APerF   Unit = "A/°F"
	WPerF   Unit = "W/°F"
)

// Coefficient reports whether the unit is one over a temperature.
func (u Unit) Coefficient() bool {
	switch u {
	case PctPerK, PctPerF, VPerK, MVPerK, APerK, MAPerK, WPerK, PerK, PPMPerK, VPerF, APerF, WPerF:
		return true
	}
	return false
}

// temperature reports whether the unit is one of a scale that goes below nought.
func (u Unit) temperature() bool { return u == C || u == F }

// signed reports whether values below nought are common in the unit: a dash standing apart before such a value is a minus.
func (u Unit) signed() bool { return u.temperature() || u.Coefficient() }

// unsigned reports whether a value below nought makes no sense in the unit: a dash before it, even a touching one, is none.
func (u Unit) unsigned() bool {
	switch u {
	case Year, Piece, AWG, KG, Pound, MM2, M2, Foot2, WPerM2, MPerS:
		return true
	}
	return false
}
