package physics

import (
	"errors"
	"fmt"
	"math"
)

// Nameplate is what a datasheet says of a module at STC: A and V, Alpha in A/K, Beta in V/K (negative), Series the cells in series.
type Nameplate struct {
	Isc, Voc, Imp, Vmp float64
	Alpha, Beta        float64
	Series             float64
	Gap                Gap
}

// Fit is a solution of the nameplate's conditions.
type Fit struct {
	Diode
	// Ideality is A / (Ns kT/q).
	Ideality float64
	// Beta is the solution's own coefficient of Voc in V/K.
	Beta float64
	// Bound is what kept Beta from the printed one; "" where the two agree.
	Bound string
}

// The idealities in which FitNameplate looks: wider than any single junction shows (a doubled count of cells gives about 0.5).
const (
	MinIdeality = 0.5
	MaxIdeality = 2.0
)

// What can stop a fit on its way to the printed coefficient of Voc.
const (
	BoundSeries   = "no series resistance left"
	BoundShunt    = "no shunt loss left"
	BoundIdeality = "ideality at its limit"
)

// Why a nameplate has no single-diode curve.
var (
	ErrMissing  = errors.New("a value is missing or not positive")
	ErrVoltage  = errors.New("the voltage Vmp does not lie between half of Voc and Voc")
	ErrCurrent  = errors.New("the current Imp does not lie between half of Isc and Isc")
	ErrNoSeries = fmt.Errorf("zero slope of power at Vmp asks for a negative series resistance even at an ideality of %.1f", MinIdeality)
	ErrNoShunt  = fmt.Errorf("zero slope of power at Vmp asks for a negative shunt conductance even at an ideality of %.1f", MinIdeality)
)

// FitNameplate solves Isc, Voc, the maximum-power point and the zero slope of power there (De Soto 2006, eqs. 3-6) over the ideality,
// and of the solutions with Rs >= 0 and Rsh > 0 takes the one that meets the printed coefficient of Voc (eq. 7) or, where none does, the one nearest to it.
// A higher ideality makes Voc fall more steeply and leaves less series and shunt loss to explain the knee: the physical solutions
// end where one of the two losses is used up, so they form one interval of idealities. The error is one of those above.
func FitNameplate(m Nameplate) (Fit, error) {
	if err := m.orderly(); err != nil {
		return Fit{}, err
	}
	unit := m.Series * STCThermalVoltage
	lo, hi := MinIdeality*unit, MaxIdeality*unit
	if slack := m.slack(lo); slack <= 0 {
		if m.slope(lo, 0) >= 0 {
			return Fit{}, ErrNoSeries
		}
		return Fit{}, ErrNoShunt
	}
	bound := BoundIdeality
	if m.slack(hi) < 0 {
		hi = root(m.slack, lo, hi, 1e-9*unit)
		for step := 1e-9 * unit; m.slack(hi) < 0; step *= 2 { // the root's last bit may stand on the wrong side
			hi = max(hi-step, lo)
		}
		if bound = BoundShunt; -m.slope(hi, 0) < m.slope(hi, m.shuntless(hi)) {
			bound = BoundSeries
		}
	}
	steeper := func(a float64) float64 { return m.diode(a).betaFrom(m.Voc, m.Alpha, m.Gap) - m.Beta }
	a := hi
	switch {
	case steeper(hi) >= 0: // nothing physical falls as steeply as printed
	case steeper(lo) <= 0:
		a, bound = lo, BoundIdeality
	default:
		a, bound = root(steeper, lo, hi, 1e-9*unit), ""
	}
	d := m.diode(a)
	return Fit{Diode: d, Ideality: a / unit, Beta: d.betaFrom(m.Voc, m.Alpha, m.Gap), Bound: bound}, nil
}

// Solvable reports that some physical curve exists, whatever its coefficient of Voc.
func (m *Nameplate) Solvable() bool {
	return m.orderly() == nil && m.slack(MinIdeality*m.Series*STCThermalVoltage) > 0
}

func (m *Nameplate) orderly() error {
	switch {
	case !(m.Isc > 0 && m.Voc > 0 && m.Imp > 0 && m.Vmp > 0 && m.Series > 0):
		return ErrMissing
	case !(m.Vmp > m.Voc/2 && m.Vmp < m.Voc):
		return ErrVoltage
	case !(m.Imp > m.Isc/2 && m.Imp < m.Isc):
		return ErrCurrent
	}
	return nil
}

// shuntless is the series resistance in ohm at which no shunt is left, for a modified ideality factor in V: the upper end of the physical ones.
func (m *Nameplate) shuntless(a float64) float64 {
	return (m.Voc - m.Vmp + a*math.Log1p(-m.Imp/m.Isc)) / m.Imp
}

// loss returns the two unknowns in which the conditions are linear once a and Rs are given: the diode's current at Voc in A, and the shunt conductance in S.
// Isc = x (1 - es) + g (Voc - Isc Rs) and Imp = x (1 - em) + g (Voc - Vmp - Imp Rs); em is the diode's current at the maximum-power point over x.
func (m *Nameplate) loss(a, rs float64) (x, g, em float64) {
	em = math.Exp((m.Vmp + m.Imp*rs - m.Voc) / a)
	es := math.Exp((m.Isc*rs - m.Voc) / a)
	det := (1-es)*(m.Voc-m.Vmp-m.Imp*rs) - (1-em)*(m.Voc-m.Isc*rs)
	x = (m.Isc*(m.Voc-m.Vmp) - m.Imp*m.Voc) / det
	g = ((1-es)*m.Imp - (1-em)*m.Isc) / det
	return x, g, em
}

// slope is d(IV)/dV at the printed maximum-power point with its sign turned, in A: zero for the right series resistance, rising with it.
func (m *Nameplate) slope(a, rs float64) float64 {
	x, g, em := m.loss(a, rs)
	return (x*em/a+g)*(m.Vmp-m.Imp*rs) - m.Imp
}

// slack is positive where a physical solution exists at a: with no series resistance the slope is still negative, with no shunt already positive.
func (m *Nameplate) slack(a float64) float64 {
	rs := m.shuntless(a)
	if rs < 0 {
		return rs * m.Imp / m.Voc // both losses used up; negative and continuous
	}
	return min(-m.slope(a, 0), m.slope(a, rs))
}

// diode is the physical solution at a, which must have slack.
func (m *Nameplate) diode(a float64) Diode {
	top := m.shuntless(a)
	rs := root(func(rs float64) float64 { return m.slope(a, rs) }, 0, top, 1e-12*top)
	x, g, _ := m.loss(a, rs)
	io := x * math.Exp(-m.Voc/a)
	return Diode{IL: x - io + m.Voc*max(g, 0), Io: io, Rs: rs, Rsh: 1 / max(g, 0), A: a}
}
