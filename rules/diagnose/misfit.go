package diagnose

import "math"

// A relation's misfit is measured in nats: the logarithm of how much rarer its gap is on an honest sheet than no gap at all. Honest sheets
// scatter by rounding, now and then by a maker's habit, and rarely by anything at all: the last is what a broken relation costs at most.
// In such sums of logarithms the explanations of a sheet are compared (Bayes' rule).

// scatter is how a relation lies off on honest sheets, beyond the rounding of its values. All in the relation's own unit: a share of the
// value (natural logarithm) for products, %/K for sums of coefficients.
type scatter struct {
	lo, hi float64 // one standard deviation below and above the middle
	habit  float64 // one standard deviation of makers' habits; 0 for none
	wild   float64 // probability per unit that it lies anywhere
	far    float64 // over which distance that falls to a third; 0 for never
}

// habitual is how often a habit shows: on one sheet in twenty (from memory; production averages, rounded areas).
const habitual = 0.05

// misfit is the cost of a gap r with a rounding scatter of one standard deviation.
func (k scatter) misfit(r, rounding float64) float64 {
	own := k.hi
	if r < 0 {
		own = k.lo
	}
	s := math.Sqrt(own*own + rounding*rounding)
	z := r / s
	if z*z < 1e-4 {
		return 0
	}
	here, middle := bell(z)/s+k.wild, 1/s+k.wild
	if k.far > 0 {
		here += k.wild * (math.Exp(-math.Abs(r)/k.far) - 1)
	}
	if k.habit > 0 {
		t := k.habit + s
		here += habitual * bell(r/t) / t
		middle += habitual / t
	}
	return math.Log(middle / here)
}

// bell is the normal density over that of its middle; 0 from where nothing of it is left beside the chance of lying anywhere.
func bell(z float64) float64 {
	if z *= z; z < 100 {
		return math.Exp(-z / 2)
	}
	return 0
}

// broken is the cost where the relation cannot be formed at all, as of the logarithm of a negative number.
func (k scatter) broken() float64 { return k.misfit(3, 0.001) }

// uniform is the standard deviation of a rounding error within a half step.
const uniform = 0.57735
