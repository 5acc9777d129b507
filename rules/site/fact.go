package site

import (
	"strings"

	"pvtally/schema/relate"
)

// Unit is what a quantity is measured in. Whoever shows it may convert.
type Unit string

// The units of this package's quantities.
const (
	Watt          Unit = "W"
	WattPerArea   Unit = "W/m2"
	Irradiance    Unit = "W/m2 of light"
	Percent       Unit = "%"
	PercentPerK   Unit = "%/K"
	Volt          Unit = "V"
	VoltageLimit  Unit = "V of a limit"
	Ampere        Unit = "A"
	Rating        Unit = "A of a fuse"
	Installed     Unit = "W of a roof"
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
)

// Fact is one thing a datasheet says, made comparable.
type Fact struct {
	ID, Label string
	Unit      Unit
	Said      bool   // a difference is worth a sentence, not only a row
	How       string // the arithmetic, where there is any
	Of        func(*Module) Value
}

// Facts are compared side by side, in this order.
var Facts = []Fact{
	{"pmax", "power at STC", Watt, true, "", func(m *Module) Value { return m.Pmax }},
	{"power_per_area", "power per area", WattPerArea, true, "Pmax / (length × width)", func(m *Module) Value { return m.Pmax.Quotient(m.Area) }},
	{"efficiency", "efficiency", Percent, true, "", func(m *Module) Value { return m.Efficiency }},
	{"vmp", "Vmp at STC", Volt, false, "", func(m *Module) Value { return m.Vmp }},
	{"imp", "Imp at STC", Ampere, false, "", func(m *Module) Value { return m.Imp }},
	{"voc", "Voc at STC", Volt, false, "", func(m *Module) Value { return m.Voc }},
	{"isc", "Isc at STC", Ampere, false, "", func(m *Module) Value { return m.Isc }},
	{"alpha", "temperature coefficient α of Isc", PercentPerK, true, "", func(m *Module) Value { return m.Alpha }},
	{"beta", "temperature coefficient β of Voc", PercentPerK, true, "", func(m *Module) Value { return m.Beta }},
	{"gamma", "temperature coefficient γ of Pmax", PercentPerK, true, "", func(m *Module) Value { return m.Gamma }},
	{"nmot", "NMOT", Celsius, true, "", func(m *Module) Value { return m.NMOT }},
	{"noct", "NOCT", Celsius, true, "", func(m *Module) Value { return m.NOCT }},
	{"bifaciality", "bifaciality", Percent, true, "", func(m *Module) Value { return m.Bifaciality }},
	{"length", "length", Millimetre, true, "", func(m *Module) Value { return m.Length }},
	{"width", "width", Millimetre, true, "", func(m *Module) Value { return m.Width }},
	{"mass", "mass", Kilogram, false, "", func(m *Module) Value { return m.Mass }},
	{"mass_per_area", "mass per area", KilogramPerM2, true, "mass / (length × width)", func(m *Module) Value { return m.Mass.Quotient(m.Area) }},
	{"fuse", "maximum series fuse", Ampere, false, "", func(m *Module) Value { return m.Fuse }},
	{"system_voltage", "maximum system voltage", VoltageLimit, false, "the lowest printed", (*Module).SystemVoltage},
	{"power_plus", "power tolerance, plus", Percent, false, "of Pmax", (*Module).tolerancePlus},
	{"power_minus", "power tolerance, minus", Percent, false, "of Pmax", (*Module).toleranceMinus},
	{"measurement", "stated measurement uncertainty of Pmax", Percent, false, "", rated("/tolerance/measurement_pct", "the measurement uncertainty")},
	{"product_years", "product warranty", Years, true, "", rated("/warranty/product_years", "the product warranty")},
	{"performance_years", "performance warranty", Years, true, "", rated("/warranty/performance_years", "the performance warranty")},
	{"first_year_loss", "warranted loss, first year", Percent, true, "", rated("/warranty/first_year_loss_pct", "the loss of the first year")},
	{"annual_loss", "warranted loss per year after", Percent, true, "", rated("/warranty/annual_loss_pct", "the loss per year")},
	{"final_output", "warranted output at the end", Percent, true, "", rated("/warranty/final_output_pct", "the output at the end of the warranty")},
}

// rated is a promise or a rating: it is what it is, not a rounded measurement.
func rated(pointer, what string) func(*Module) Value {
	return func(m *Module) Value { return printed(m.Sheet, pointer, what).rating() }
}

func (v Value) rating() Value {
	if v.Known() {
		v.Interval = relate.Exactly(v.V)
	}
	return v
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
	return Value{V: least.Float(), Interval: relate.Exactly(least.Float()), Literal: least.String()}
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
