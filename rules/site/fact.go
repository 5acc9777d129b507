package site

import "strings"

// Unit is what a quantity is measured in. Whoever shows it may convert.
type Unit string

// The units of this package's quantities.
const (
	Watt          Unit = "W"
	WattPerArea   Unit = "W/m2"
	WattHour      Unit = "kWh"
	Percent       Unit = "%"
	PercentPerK   Unit = "%/K"
	Volt          Unit = "V"
	Ampere        Unit = "A"
	Celsius       Unit = "°C"
	Kelvin        Unit = "K"
	Millimetre    Unit = "mm"
	Metre         Unit = "m"
	SquareMetre   Unit = "m2"
	Kilogram      Unit = "kg"
	KilogramPerM2 Unit = "kg/m2"
	MetrePerSec   Unit = "m/s"
	Years         Unit = "years"
	Count         Unit = ""
	Money         Unit = "money"
	MoneyPerWatt  Unit = "money/W"
)

// Fact is one thing a datasheet says, made comparable.
type Fact struct {
	ID, Label string
	Unit      Unit
	How       string // the arithmetic, where there is any
	Of        func(*Module) Value
}

// Facts are compared side by side, in this order.
var Facts = []Fact{
	{"pmax", "power at STC", Watt, "", func(m *Module) Value { return m.Pmax }},
	{"power_per_area", "power per area", WattPerArea, "Pmax / (length × width)", func(m *Module) Value { return m.Pmax.over(m.Area) }},
	{"efficiency", "efficiency", Percent, "", func(m *Module) Value { return m.Efficiency }},
	{"vmp", "Vmp at STC", Volt, "", func(m *Module) Value { return m.Vmp }},
	{"imp", "Imp at STC", Ampere, "", func(m *Module) Value { return m.Imp }},
	{"voc", "Voc at STC", Volt, "", func(m *Module) Value { return m.Voc }},
	{"isc", "Isc at STC", Ampere, "", func(m *Module) Value { return m.Isc }},
	{"alpha", "temperature coefficient α of Isc", PercentPerK, "", func(m *Module) Value { return m.Alpha }},
	{"beta", "temperature coefficient β of Voc", PercentPerK, "", func(m *Module) Value { return m.Beta }},
	{"gamma", "temperature coefficient γ of Pmax", PercentPerK, "", func(m *Module) Value { return m.Gamma }},
	{"nmot", "NMOT", Celsius, "", func(m *Module) Value { return m.NMOT }},
	{"noct", "NOCT", Celsius, "", func(m *Module) Value { return m.NOCT }},
	{"bifaciality", "bifaciality", Percent, "", func(m *Module) Value { return m.Bifaciality }},
	{"length", "length", Millimetre, "", func(m *Module) Value { return m.Length }},
	{"width", "width", Millimetre, "", func(m *Module) Value { return m.Width }},
	{"mass", "mass", Kilogram, "", func(m *Module) Value { return m.Mass }},
	{"mass_per_area", "mass per area", KilogramPerM2, "mass / (length × width)", func(m *Module) Value { return m.Mass.over(m.Area) }},
	{"fuse", "maximum series fuse", Ampere, "", func(m *Module) Value { return m.Fuse }},
	{"system_voltage", "maximum system voltage", Volt, "the lowest printed", (*Module).SystemVoltage},
	{"power_plus", "power tolerance, plus", Percent, "of Pmax", (*Module).tolerancePlus},
	{"power_minus", "power tolerance, minus", Percent, "of Pmax", (*Module).toleranceMinus},
	{"measurement", "stated measurement uncertainty of Pmax", Percent, "", onSheet("/tolerance/measurement_pct", "the measurement uncertainty")},
	{"product_years", "product warranty", Years, "", onSheet("/warranty/product_years", "the product warranty")},
	{"performance_years", "performance warranty", Years, "", onSheet("/warranty/performance_years", "the performance warranty")},
	{"first_year_loss", "warranted loss, first year", Percent, "", onSheet("/warranty/first_year_loss_pct", "the loss of the first year")},
	{"annual_loss", "warranted loss per year after", Percent, "", onSheet("/warranty/annual_loss_pct", "the loss per year")},
	{"final_output", "warranted output at the end", Percent, "", onSheet("/warranty/final_output_pct", "the output at the end of the warranty")},
}

func onSheet(pointer, what string) func(*Module) Value {
	return func(m *Module) Value { return printed(m.Sheet, pointer, what) }
}

// SystemVoltage is the lowest printed maximum system voltage in V: which of several holds is for the label to say, and the lowest is safe.
func (m *Module) SystemVoltage() Value {
	list := m.Sheet.Limits.SystemVoltage
	if len(list) == 0 {
		return None("the maximum system voltage is not printed")
	}
	least := list[0]
	for _, v := range list[1:] {
		if v.Float() < least.Float() {
			least = v
		}
	}
	v := Exactly(least.Float()) // a limit is a limit, not a rounded measurement
	v.Literal = least.String()
	return v
}

// SystemVoltages are all printed ones, for a note where they differ; "" where there are not several.
func (m *Module) SystemVoltages() string {
	var all []string
	for _, v := range m.Sheet.Limits.SystemVoltage {
		all = append(all, v.String()+" V")
	}
	if len(all) < 2 {
		return ""
	}
	return strings.Join(all, " and ")
}

func (m *Module) tolerancePlus() Value {
	v := m.PowerTolerance()
	if _, plus := powerTolerance(&m.Sheet.Tolerance, m.Pmax.V); v.Known() {
		return Exactly(100 * plus / m.Pmax.V)
	}
	return v
}

func (m *Module) toleranceMinus() Value {
	v := m.PowerTolerance()
	if minus, _ := powerTolerance(&m.Sheet.Tolerance, m.Pmax.V); v.Known() {
		return Exactly(100 * minus / m.Pmax.V)
	}
	return v
}
