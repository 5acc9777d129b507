package site

import "pvtally/rules/physics"

// Cold is one module's open-circuit voltage in V on the coldest morning, three ways.
type Cold struct {
	Coefficient Value // Voc (1 + β (T - 25)): IEC 62548, NEC 690.7(A)(1)
	Model       Value // the single-diode model at 1000 W/m2
	Table       Value // Voc × the factor of NEC Table 690.7(A)
	Factor      Value
}

// OnColdest is the voltage at the record low in °C: the cell is then as cold as the air, and the sun comes at once.
func (m *Module) OnColdest(low float64) Cold {
	c := Cold{Factor: m.tableFactor(low)}
	c.Coefficient = m.Voc.Product(m.Beta.Times((low - physics.STCTemperature) / 100).Sum(Exactly(1)))
	c.Table = m.Voc.Product(c.Factor)
	if c.Model = None("no single-diode curve goes through the printed values"); m.Curve != nil {
		c.Model = Exactly(m.Curve.At(physics.STCIrradiance, low).Voc())
	}
	return c
}

// Highest is the greatest of the voltages known, as their nominal values stand.
func (c Cold) Highest() Value {
	best := c.Coefficient
	for _, v := range []Value{c.Table, c.Model} {
		if v.Known() && (!best.Known() || v.V > best.V) {
			best = v
		}
	}
	return best
}

func (m *Module) tableFactor(low float64) Value {
	switch t := m.Sheet.Cell.Technology; t {
	case "cdte", "cigs", "a-si", "tandem":
		return None("NEC Table 690.7(A) is for crystalline and multicrystalline silicon, not for %s", t)
	}
	f, ok := VoltageFactor(low)
	if !ok {
		return None("NEC Table 690.7(A) ends at %g °C", tableEnd)
	}
	return Exactly(f)
}

// factors are the rows of NEC Table 690.7(A) (2017 to 2023; Table 690.7 before), crystalline and multicrystalline silicon, by their
// lowest temperature in °C. Source: NFPA 70, from memory; 1.02, 1.18 and 1.21 as cited elsewhere, the rest checked by the regularity of
// the table, 0.40 %/K down to -25 °C.
var factors = []struct{ lowest, factor float64 }{
	{20, 1.02}, {15, 1.04}, {10, 1.06}, {5, 1.08}, {0, 1.10}, {-5, 1.12}, {-10, 1.14}, {-15, 1.16}, {-20, 1.18}, {-25, 1.20},
	{-30, 1.21}, {-35, 1.23}, {-40, 1.25},
}

const tableEnd = -40.0

// VoltageFactor is the factor of NEC Table 690.7(A) for the lowest expected ambient temperature in °C; 1 from 25 °C up. Between two rows
// the colder one holds. ok is false below the table's end.
func VoltageFactor(low float64) (factor float64, ok bool) {
	if low >= physics.STCTemperature {
		return 1, true
	}
	for _, f := range factors {
		if low >= f.lowest {
			return f.factor, true
		}
	}
	return 0, false
}
