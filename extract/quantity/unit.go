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
	Piece   Unit = "pcs"

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

// Negative reports whether a value of the unit may sensibly be below zero on a sheet: a dash before it is then a minus.
func (u Unit) Negative() bool {
	switch u {
	case C, F, PctPerK, PctPerF, VPerK, MVPerK, APerK, MAPerK, WPerK, PerK, PPMPerK, VPerF, APerF, WPerF:
		return true
	}
	return false
}

// spellings is how sheets print each unit. A blank stands for any or no space. Spellings of three letters and more match in
// any case, shorter ones only as they stand (m is not M).
var spellings = map[Unit][]string{
	V:       {"V", "v", "V DC", "V d.c.", "V dc", "V D.C.", "V AC", "V DC.", "volt", "volts", "Vcc", "VCC", "V CC", "Vdc", "V c.c."},
	KV:      {"kV", "KV"},
	MilliV:  {"mV"},
	A:       {"A", "amp", "amps", "ampere", "amperes", "A DC", "Adc", "A dc"},
	MilliA:  {"mA"},
	W:       {"W", "w", "Wp", "WP", "wp", "Wc", "W p", "watt", "watts", "W peak", "watt peak", "Wat", "Wmp"},
	KW:      {"kW", "KW", "kWp", "KWp", "KWP"},
	MW:      {"MW", "MWp"},
	WH:      {"Wh"},
	KWH:     {"kWh", "KWh"},
	Ohm:     {"Ω", "Ω", "ohm", "ohms"},
	Hz:      {"Hz", "HZ"},
	Percent: {"%", "percent", "per cent", "Prozent"},
	MM:      {"mm", "MM", "Mm", "㎜", "millimeter", "millimeters", "millimetres"},
	CM:      {"cm", "CM", "㎝"},
	M:       {"m", "meter", "meters", "metre", "metres", "mètres", "metros", "metri"},
	Inch:    {"in", "in.", "inch", "inches", "inch.", "\"", "''", "Zoll", "pulgadas", "pouces", "pollici", "polegadas"},
	Foot:    {"ft", "ft.", "'", "feet", "foot", "Fuß"},
	MM2:     {"mm²", "mm2", "mm^2", "mm 2", "㎟", "sq mm", "sq.mm", "sqmm", "qmm", "mmq"},
	CM2:     {"cm²", "cm2", "cm^2", "cm 2"},
	M2:      {"m²", "m2", "m^2", "m 2", "㎡", "sqm", "sq.m", "sq m", "qm", "mq"},
	M3:      {"m³", "m3", "m^3", "m 3"},
	Foot2:   {"ft²", "ft2", "ft^2", "ft 2", "sqft", "sq.ft", "sq ft", "sq. ft"},
	Inch2:   {"in²", "in2", "in^2", "sq in"},
	KG:      {"kg", "KG", "Kg", "kgs", "kg.", "㎏", "kilogram", "kilograms", "kilogramm", "kilogrammes", "公斤", "千克"},
	G:       {"g", "gram", "grams"},
	Ton:     {"t", "tons", "tonnes"},
	Pound:   {"lb", "lbs", "lb.", "lbs.", "LB", "Lb", "Ibs", "pound", "pounds", "libras"},
	C:       {"° C", "°c", "℃", "o C", "O C", "C", "° ℃", "deg C", "deg. C", "degC", "degree C", "degrees C", "degree Celsius", "degrees Celsius", "° Celsius", "Celsius"},
	F:       {"° F", "℉", "o F", "F", "deg F", "deg. F", "degrees Fahrenheit", "Fahrenheit"},
	K:       {"K", "Kelvin", "° K", "K"},
	Degree:  {"°", "degree", "degrees", "deg", "deg."},
	Pa:      {"Pa", "pa", "PA", "pascal", "pascals"},
	KPa:     {"kPa", "KPa", "kPA", "KPA"},
	NPerM2:  {"N / m²", "N / m2", "N / m 2", "N / m^2", "N / ㎡", "Nm-2"},
	KgPerM2: {"kg / m²", "kg / m2", "kg / m 2", "kg / m^2", "kg / ㎡", "Kg / m²", "Kg / m2", "KG / M2", "kg / sqm"},
	PSF:     {"psf", "lb / ft²", "lb / ft2", "lbs / ft²", "lbs / ft2", "lb / ft 2", "lbs / ft 2", "lbf / ft²", "lbf / ft2", "lbs / sq ft", "lb / sq ft", "lbs / sq. ft", "lb / sq. ft", "lbs / sq.ft", "lb / sq.ft", "lbs / sqft", "Ibs / ft²", "Ibs / ft2"},
	AWG:     {"AWG", "awg"},
	Year:    {"year", "years", "yr", "yrs", "yr.", "yrs.", "year's", "Jahre", "Jahren", "Jahr", "an", "ans", "année", "années", "año", "años", "anni", "anno", "ano", "anos", "jaar", "jaren", "lat", "lata", "rok", "yıl", "yil", "年", "年間", "年间"},
	MPerS:   {"m / s", "m / sec"},
	KMPerH:  {"km / h", "Km / h", "kph"},
	MPH:     {"mph"},
	WPerM2:  {"W / m²", "W / m2", "W / m 2", "W / m^2", "W / ㎡", "w / m²", "w / m2", "w / ㎡", "W / M2", "W / M²", "W / sqm", "Wm-2", "W m-2", "W / qm", "W / mq"},
	WPerKG:  {"W / kg"},
	Piece: {"pc", "pcs", "pcs.", "PC", "Pc", "piece", "pieces", "Stk", "Stk.", "Stück", "St.", "pièce", "pièces", "pces", "unidad", "unidades", "uds", "uds.", "ud.", "unid.", "unités", "units", "unità", "pezzi", "pz", "pz.", "peças", "pçs", "piezas",
		"stuks", "szt", "szt.", "sztuk", "adet", "枚", "块", "塊", "片", "個", "个", "件", "张", "modules", "module", "panels", "módulos", "moduli", "Module", "Modulen", "modułów", "modülleri", "panneaux", "paneles", "pannelli"},
	PPMPerK: {"ppm / K", "ppm / ° C", "ppm / ℃"},
	PerK:    {"1 / K", "1 / ° C", "1 / ℃", "/ K", "/ ° C", "/ ℃", "/ o C", "K-1", "K⁻¹"},
}

// perDegree joins a numerator to a denominator: which unit "mV" becomes over kelvin and over degree Fahrenheit.
var perDegree = map[Unit]struct{ kelvin, fahrenheit Unit }{
	Percent: {PctPerK, PctPerF}, V: {VPerK, VPerF}, MilliV: {MVPerK, None}, A: {APerK, APerF}, MilliA: {MAPerK, None}, W: {WPerK, WPerF},
}

// perWords are the words and signs of division between a numerator and a temperature.
var perWords = []string{"/", "per", "pro", "par", "por", "·", "x", "je"}

// sizes are the magnitudes (common practice, no source) in which a number with one separator and three digits after it
// may be meant: as a whole number with thousands, or as a decimal. Exactly one fit decides; a unit not listed never decides.
var sizes = map[Unit]struct{ whole, decimal [2]float64 }{
	MM: {[2]float64{1000, 20000}, [2]float64{20, 1000}}, Pa: {[2]float64{1000, 20000}, [2]float64{}}, NPerM2: {[2]float64{1000, 20000}, [2]float64{}},
	V: {[2]float64{600, 2500}, [2]float64{10, 400}}, W: {[2]float64{1000, 2000}, [2]float64{20, 1000}}, WPerM2: {[2]float64{1000, 1500}, [2]float64{}},
	Piece: {[2]float64{1000, 10000}, [2]float64{}}, A: {[2]float64{}, [2]float64{0, 100}}, M: {[2]float64{}, [2]float64{0, 30}},
	Inch: {[2]float64{}, [2]float64{0, 200}}, Percent: {[2]float64{}, [2]float64{0, 200}}, KG: {[2]float64{1000, 40000}, [2]float64{5, 100}},
	Pound: {[2]float64{1000, 90000}, [2]float64{10, 200}}, M2: {[2]float64{}, [2]float64{0, 10}}, C: {[2]float64{}, [2]float64{0, 200}},
	PctPerK: {[2]float64{}, [2]float64{0, 2}}, VPerK: {[2]float64{}, [2]float64{0, 2}}, APerK: {[2]float64{}, [2]float64{0, 2}}, WPerK: {[2]float64{}, [2]float64{0, 10}},
	MVPerK: {[2]float64{}, [2]float64{0, 900}}, MAPerK: {[2]float64{}, [2]float64{0, 100}}, MM2: {[2]float64{}, [2]float64{0, 100}},
	PSF: {[2]float64{}, [2]float64{0, 300}}, KPa: {[2]float64{}, [2]float64{0, 20}}, KW: {[2]float64{}, [2]float64{0, 100}},
	K: {[2]float64{}, [2]float64{0, 100}}, F: {[2]float64{}, [2]float64{0, 300}}, CM: {[2]float64{}, [2]float64{0, 400}}, Foot: {[2]float64{}, [2]float64{0, 30}},
}
