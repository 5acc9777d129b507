package revision

import (
	"pvtally/rules/site"
	"pvtally/schema"
)

// String is one class's longest string at one system voltage, where the new edition lets it hold fewer modules.
type String struct {
	Model string
	Limit float64 // V, of the old edition
	Now   float64 // V, of the new one where that has changed, else Limit
	Falls []Fall
}

// Fall is a span of record lows in °C, both ends included, in which the longest string falls from Old modules to New.
type Fall struct{ From, To, Old, New int }

// The record lows that are looked at, every whole degree: from the coldest of the NEC's table to where frost is rare.
const coldest, mildest = -40, 10

// shorter compares the longest strings by both customary methods, Voc with the printed coefficient (IEC 62548, NEC 690.7(A)(1)) and with the
// factor of NEC Table 690.7(A): the shorter of the two counts.
func shorter(old, new *schema.Sheet) (list []String) {
	after := site.Modules(new)
	for i, before := range site.Modules(old) {
		k := partner(&before, after, i)
		if k < 0 {
			continue
		}
		for _, limit := range limitsOf(old) {
			s := String{Model: before.Name, Limit: limit, Now: limitNow(limit, new)}
			for low := coldest; low <= mildest; low++ {
				a, b := longest(&before, s.Limit, low), longest(&after[k], s.Now, low)
				if a <= 0 || b < 0 || b >= a {
					continue
				}
				if n := len(s.Falls); n > 0 && s.Falls[n-1].To == low-1 && s.Falls[n-1].Old == a && s.Falls[n-1].New == b {
					s.Falls[n-1].To = low
				} else {
					s.Falls = append(s.Falls, Fall{low, low, a, b})
				}
			}
			if len(s.Falls) > 0 {
				list = append(list, s)
			}
		}
	}
	return list
}

// partner finds a class in the new edition: by name, else by power.
func partner(m *site.Module, after []site.Module, i int) int {
	byPower := -1
	for k := range after {
		if after[k].Name == m.Name {
			return k
		}
		if after[k].Pmax.Literal != "" && after[k].Pmax.V == m.Pmax.V {
			byPower = k
		}
	}
	return byPower
}

// limitsOf are the system voltages that a sheet prints.
func limitsOf(s *schema.Sheet) (list []float64) {
	for _, v := range s.Limits.SystemVoltage {
		if v.Float() > 0 {
			list = append(list, v.Float())
		}
	}
	return list
}

// limitNow is the voltage that the new edition still allows for a string built to limit.
func limitNow(limit float64, new *schema.Sheet) float64 {
	highest := 0.0
	for _, v := range limitsOf(new) {
		highest = max(highest, v)
	}
	if highest == 0 {
		return limit // no longer printed: that is a change of its own
	}
	return min(limit, highest)
}

// longest is how many modules stay below the limit at a record low; -1 where neither method has a voltage.
func longest(m *site.Module, limit float64, low int) int {
	c := m.OnColdest(float64(low))
	volts := 0.0
	for _, v := range []site.Value{c.Coefficient, c.Table} {
		if v.Known() {
			volts = max(volts, v.V)
		}
	}
	if volts <= 0 {
		return -1
	}
	return int(limit/volts + 1e-9)
}
