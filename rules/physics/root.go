package physics

import "math"

// root finds x between a and b, where f has unlike signs (if it has not, the end with the smaller |f|), to a tolerance in x.
// The method is Chandrupatla's, Advances in Engineering Software 28 (1997) 145, DOI 10.1016/S0965-9978(96)00051-8:
// inverse quadratic steps where they are safe, bisection where not.
func root(f func(float64) float64, a, b, tol float64) float64 {
	fa, fb := f(a), f(b)
	if fa*fb > 0 {
		if math.Abs(fa) < math.Abs(fb) {
			return a
		}
		return b
	}
	c, fc := a, fa
	t := 0.5
	for range 100 {
		x := a + t*(b-a)
		fx := f(x)
		if (fx > 0) == (fa > 0) {
			c, fc = a, fa
		} else {
			c, b = b, a
			fc, fb = fb, fa
		}
		a, fa = x, fx
		best, fbest := a, fa
		if math.Abs(fb) < math.Abs(fa) {
			best, fbest = b, fb
		}
		width := math.Abs(b - a)
		if fbest == 0 || width <= tol {
			return best
		}
		edge := tol / width / 2
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		t = 0.5
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		}
		t = min(max(t, edge), 1-edge)
	}
	return a
}
