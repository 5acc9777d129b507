package physics

import "math"

// lambertWExp is W0(exp(x)), the principal branch at an argument given by its logarithm: exp(x) itself overflows for x > 709,
// which a module of 96 cells reaches. It solves w + ln w = x by Newton steps (quadratic; 5 suffice to 1e-15 from these starts).
func lambertWExp(x float64) float64 {
	if x < -36 {
		return math.Exp(x) // w << 1: w + ln w = ln w to the last bit
	}
	w := math.Exp(x)
	if x > 1 {
		w = x - math.Log(x)
	} else {
		w /= 1 + w
	}
	for range 8 {
		step := (w + math.Log(w) - x) * w / (1 + w)
		w -= step
		if math.Abs(step) <= 1e-15*w {
			break
		}
	}
	return w
}
