package quantity

// spellings is how sheets print each unit, look-alike characters already made equal (see alike). A blank stands for any or
// no space. Spellings with three letters or more match in any case, shorter ones only as they stand: m is not M.
var spellings = map[Unit][]string{
	V:       {"V", "v", "V DC", "V dc", "V d.c.", "V D.C.", "V AC", "Vcc", "V CC", "V c.c.", "volt", "volts", "Volt"},
	KV:      {"kV", "KV"},
	MilliV:  {"mV"},
	A:       {"A", "A DC", "A dc", "amp", "amps", "ampere", "amperes", "ampère", "ampères"},
	MilliA:  {"mA"},
	W:       {"W", "w", "W p", "WP", "wp", "Wc", "Wmp", "watt", "watts", "W peak", "watt peak", "vatios", "瓦"},
	KW:      {"kW", "KW", "kW p", "KWp", "KWP"},
	MW:      {"MW", "MW p"},
	WH:      {"Wh"},
	KWH:     {"kWh", "KWh"},
	Ohm:     {"Ω", "ohm", "ohms"},
	Hz:      {"Hz", "HZ"},
	Percent: {"%", "percent", "per cent", "Prozent"},
	MM:      {"m m", "MM", "Mm", "㎜", "millimeter", "millimeters", "millimetre", "millimetres", "毫米"},
	CM:      {"c m", "CM", "㎝"},
	M:       {"m", "meter", "meters", "metre", "metres", "mètres", "metros", "metri"},
	Inch:    {"in", "in.", "inc h", "inc hes", "inch.", "\"", "''", "Zoll", "pulgadas", "pouces", "pollici", "polegadas", "英寸"},
	Foot:    {"ft", "ft.", "'", "feet", "foot", "Fuß", "pieds"},
	MM2:     {"m m²", "m m2", "m m^2", "mm 2", "MM2", "㎟", "sq mm", "sq.mm", "sq. mm", "qmm", "mmq"},
	CM2:     {"cm²", "cm2", "cm^2", "cm 2"},
	M2:      {"m²", "m2", "m^2", "m 2", "㎡", "sqm", "sq.m", "sq m", "sq. m", "qm", "mq"},
	M3:      {"m³", "m3", "m^3", "m 3"},
	Foot2:   {"ft²", "ft2", "ft^2", "ft 2", "sq ft", "sq.ft", "sq. ft"},
	Inch2:   {"in²", "in2", "in^2", "sq in", "inches2", "inches²"},
	KG:      {"k g", "KG", "Kg", "k gs", "KGS", "Kgs", "kg.", "㎏", "kilogram", "kilograms", "kilogramm", "kilogrammes", "kilogramos", "公斤", "千克"},
	G:       {"g", "gram", "grams"},
	Ton:     {"t", "tons", "tonnes"},
	Pound:   {"lb", "lb s", "lb.", "lbs.", "LB", "Lb", "LBS", "Lbs", "Ibs", "Ibs.", "pound", "pounds", "libras", "livres"},
	C:       {"° C", "°c", "℃", "° ℃", "C °", "o C", "O C", "\"C", "'C", "*C", "C", "deg C", "deg. C", "degree C", "degrees C", "degree Celsius", "degrees Celsius", "° Celsius", "Celsius", "Grad Celsius"},
	F:       {"° F", "℉", "o F", "F", "deg F", "deg. F", "degrees F", "degrees Fahrenheit", "Fahrenheit"},
	K:       {"K", "Kelvin", "° K"},
	Degree:  {"°", "degree", "degrees", "deg", "deg."},
	Pa:      {"Pa", "P a", "pa", "PA", "pascal", "pascals"},
	KPa:     {"kPa", "KPa", "kPA", "KPA", "kN / m²", "kN / m2", "kN / m 2", "KN / m²", "KN / m2"},
	NPerM2:  {"N / m²", "N / m2", "N / m 2", "N / m^2", "N / ㎡", "Nm-2"},
	KgPerM2: {"kg / m²", "kg / m2", "kg / m 2", "kg / m^2", "kg / ㎡", "Kg / m²", "Kg / m2", "KG / M2", "kg / sqm", "kgf / m²", "kgf / m2"},
	PSF: {"psf", "lb / ft²", "lb / ft2", "lb / ft 2", "lbs / ft²", "lbs / ft2", "lbs / ft 2", "lbf / ft²", "lbf / ft2", "lb / sq ft", "lbs / sq ft",
		"lb / sq.ft", "lbs / sq.ft", "lb / sq. ft", "lbs / sq. ft", "Ibs / ft²", "Ibs / ft2"},
	AWG:    {"AWG", "awg"},
	Year:   {"year", "years", "yea rs", "yr", "yrs", "yr.", "yrs.", "year's", "Jahre", "Jahren", "Jahr", "an", "ans", "année", "années", "año", "años", "anni", "anno", "ano", "anos", "jaar", "jaren", "lat", "lata", "rok", "yıl", "yil", "年", "年間", "年间", "년", "년간"},
	MPerS:  {"m / s", "m / sec"},
	KMPerH: {"km / h", "Km / h", "kph"},
	MPH:    {"mph"},
	WPerM2: {"W / m²", "W / m²2", "W / m2", "W / m 2", "W / m^2", "W / ㎡", "w / m²", "w / m2", "w / ㎡", "W / M2", "W / M²", "W / sqm", "W / qm", "W / mq", "Wm-2", "W m-2", "Wm²", "Watt / m²", "Watt / m2"},
	WPerKG: {"W / kg"},
	Piece: {"pc", "p c s", "pcs.", "PC", "Pc", "piece", "pieces", "ea", "nos", "nos.", "Stk", "Stk.", "Stück", "pièce", "pièces", "pces", "unidad", "unidades", "uds", "uds.", "ud.", "unid.",
		"unités", "units", "unità", "pezzi", "pz", "pz.", "peças", "pçs", "piezas", "stuks", "szt", "szt.", "sztuk", "adet", "EA", "ea", "nos.", "nos", "개", "매", "枚", "块", "塊", "片", "個", "个", "件", "张",
		"module", "modules", "modulen", "panel", "panels", "módulo", "módulos", "modulo", "moduli", "modułów", "modül", "panneaux", "paneles", "pannelli"},
	PctPerK: {"% K-1", "%·K-1", "% / K°"},
	PPMPerK: {"ppm / K", "ppm / ° C", "ppm / ℃"},
	PerK:    {"1 / K", "1 / ° C", "1 / ℃", "/ K", "/ ° C", "/ ℃", "/ o C", "K-1"},
}

// cutSpellings are what is left of a unit whose last characters are lost or stand on another line.
var cutSpellings = map[Unit][]string{
	WPerM2: {"W / m", "W / M"},
}

// perDegree joins a numerator to a denominator: which unit "mV" becomes over kelvin and over degree Fahrenheit.
var perDegree = map[Unit]struct{ kelvin, fahrenheit Unit }{
	Percent: {PctPerK, PctPerF}, V: {VPerK, VPerF}, MilliV: {MVPerK, None}, A: {APerK, APerF}, MilliA: {MAPerK, None}, W: {WPerK, WPerF},
}

// perWords are the signs and words of division between a numerator and a temperature.
var perWords = []string{"/", "per", "pro", "par", "por", "je"}
