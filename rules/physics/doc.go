// Package physics holds the equations of photovoltaic modules that the rules stand on: pure functions of plain numbers in the units their names say,
// each with its source. It knows no records and no rules, and imports nothing of the project.
package physics

const (
	// Boltzmann is k in J/K (SI, exact since 2019).
	Boltzmann = 1.380649e-23
	// Charge is the elementary charge q in C (SI, exact since 2019).
	Charge = 1.602176634e-19
	// ZeroCelsius is 0 °C in K.
	ZeroCelsius = 273.15
	// STCIrradiance is 1000 W/m2 (IEC TS 61836).
	STCIrradiance = 1000.0
	// STCTemperature is 25 °C, the cell's (IEC TS 61836).
	STCTemperature = 25.0
	// STCKelvin is STCTemperature in K.
	STCKelvin = STCTemperature + ZeroCelsius
	// STCThermalVoltage is kT/q at 25 °C in V: 25.693 mV.
	STCThermalVoltage = Boltzmann * STCKelvin / Charge
)

// ThermalVoltage is kT/q in V at a cell temperature in °C.
func ThermalVoltage(celsius float64) float64 {
	return Boltzmann * (celsius + ZeroCelsius) / Charge
}
