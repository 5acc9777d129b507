package site

import (
	"fmt"
	"math"

	"pvtally/rules/physics"
)

// Window is what an inverter or charge controller asks of a string, in V.
type Window struct {
	Limit    float64 // highest voltage of the system; 0 where none is given
	TrackMin float64 // lowest voltage at which the tracker works; 0 where none is given
	TrackMax float64 // highest; 0 where none is given
	Parallel int     // strings on one input; 0 where it is not given
}

// Series is how many modules may stand in one string.
type Series struct {
	Limit                           Value // V: the site's, or the sheet's where that is lower
	ByCoefficient, ByModel, ByTable Value // most modules below the limit on the coldest morning
	ByTracking                      Value // most within the tracking window on the coldest morning
	Fewest                          Value // that keep the window in the hottest hour
	Most                            Value // the least of the upper bounds
	VmpCold, VmpHot                 Value // of one module, V
}

// InSeries sizes a string between the record low in °C and the hottest cell temperature. Bounds are the safer of two methods.
func (m *Module) InSeries(w Window, low Value, hottest Value) Series {
	s := Series{Limit: m.limit(w)}
	none := func(v Value) Value { return None("%s", v.Why) }
	s.ByCoefficient, s.ByModel, s.ByTable, s.VmpCold = none(low), none(low), none(low), none(low)
	if low.Known() {
		c := m.OnColdest(low.V)
		s.ByCoefficient, s.ByModel, s.ByTable = most(s.Limit, c.Coefficient), most(s.Limit, c.Model), most(s.Limit, c.Table)
		s.VmpCold = m.vmpAt(low.V, math.Max)
	}
	s.VmpHot = none(hottest)
	if hottest.Known() {
		s.VmpHot = m.vmpAt(hottest.V, math.Min)
	}
	s.ByTracking = None("no upper end of the tracking window is given")
	if w.TrackMax > 0 {
		s.ByTracking = most(Exactly(w.TrackMax), s.VmpCold)
	}
	s.Fewest = None("no lower end of the tracking window is given")
	if w.TrackMin > 0 {
		s.Fewest = fewest(w.TrackMin, s.VmpHot)
	}
	s.Most = least(s.ByCoefficient, s.ByTable, s.ByModel)
	if w.TrackMax > 0 {
		s.Most = least(s.Most, s.ByTracking)
	}
	return s
}

// limit is the lower of the site's and the sheet's voltage.
func (m *Module) limit(w Window) Value {
	sheet := m.SystemVoltage()
	switch {
	case w.Limit <= 0:
		return sheet
	case sheet.Known() && sheet.V < w.Limit:
		return sheet
	}
	return Exactly(w.Limit)
}

// vmpAt is Vmp at 1000 W/m2 by the model and by γ, whichever pick prefers: no sheet prints Vmp's coefficient, but γ is the sum of it and
// Imp's, and Imp hardly moves with temperature.
func (m *Module) vmpAt(celsius float64, pick func(a, b float64) float64) Value {
	v := m.Vmp.Product(m.Gamma.Times((celsius - physics.STCTemperature) / 100).Sum(Exactly(1)))
	if m.Curve == nil {
		return v
	}
	model := m.Curve.At(physics.STCIrradiance, celsius).MPP().V
	if !v.Known() {
		return Exactly(model)
	}
	return Exactly(pick(v.V, model))
}

// most is 0 where one module alone exceeds the limit.
func most(limit, each Value) Value {
	if why := Missing(limit, each); why != "" {
		return None("%s", why)
	}
	if each.V <= 0 {
		return None("the voltage comes out as %.3g V, which is none", each.V)
	}
	return Exactly(down(limit.V / each.V))
}

func fewest(limit float64, each Value) Value {
	switch {
	case !each.Known():
		return None("%s", each.Why)
	case each.V <= 0:
		return None("the voltage comes out as %.3g V, which is none", each.V)
	}
	return Exactly(max(1, up(limit/each.V)))
}

// least is the smallest of the values known; without any, the first reason.
func least(values ...Value) Value {
	best := values[0]
	for _, v := range values[1:] {
		if v.Known() && (!best.Known() || v.V < best.V) {
			best = v
		}
	}
	return best
}

// Split is how a count of modules parts into equal strings.
type Split struct{ Strings, Each int }

func (s Split) String() string { return fmt.Sprintf("%d × %d", s.Strings, s.Each) }

// Equal parts n modules into the fewest equal strings of fewest to most modules; ok is false where that cannot be done.
func Equal(n, fewest, most int) (s Split, ok bool) {
	if n < 1 || most < 1 {
		return Split{}, false
	}
	for each := min(n, most); each >= max(fewest, 1); each-- {
		if n%each == 0 {
			return Split{n / each, each}, true
		}
	}
	return Split{}, false
}

// Nearest are the counts below and above n that part into equal strings, 0 where there is none.
func Nearest(n, fewest, most int) (below, above int) {
	if most < max(fewest, 1) {
		return 0, 0
	}
	for below = n - 1; below > 0; below-- {
		if _, ok := Equal(below, fewest, most); ok {
			break
		}
	}
	for above = n + 1; ; above++ {
		if _, ok := Equal(above, fewest, most); ok {
			return max(below, 0), above
		}
	}
}
