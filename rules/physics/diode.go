package physics

import "math"

// Diode is the single-diode model of a whole module: I = IL - Io (exp((V + I Rs)/A) - 1) - (V + I Rs)/Rsh.
// Source: De Soto, Klein, Beckman, Solar Energy 80 (2006) 78, DOI 10.1016/j.solener.2005.06.010, eq. 1.
type Diode struct {
	IL  float64 // light current, A
	Io  float64 // diode reverse saturation current, A
	Rs  float64 // series resistance, ohm, >= 0
	Rsh float64 // shunt resistance, ohm, > 0; +Inf where there is no shunt
	A   float64 // modified ideality factor n Ns kT/q, V
}

// Point is one operating point.
type Point struct{ V, I float64 }

// Power is V I in W.
func (p Point) Power() float64 { return p.V * p.I }

// junction is the current at a voltage across the junction, V + I Rs, and its derivative.
func (d Diode) junction(vd float64) (i, slope float64) {
	e := math.Exp(vd / d.A)
	return d.IL - d.Io*(e-1) - vd/d.Rsh, -d.Io/d.A*e - 1/d.Rsh
}

// Current is I in A at a terminal voltage in V, explicit by the Lambert W function.
// Source: Jain, Kapoor, Solar Energy Materials and Solar Cells 81 (2004) 269, DOI 10.1016/j.solmat.2003.11.018.
func (d Diode) Current(v float64) float64 {
	if d.Rs == 0 {
		i, _ := d.junction(v)
		return i
	}
	s := 1 + d.Rs/d.Rsh
	x := math.Log(d.Rs*d.Io/(d.A*s)) + (d.Rs*(d.IL+d.Io)+v)/(d.A*s)
	return (d.IL+d.Io-v/d.Rsh)/s - d.A/d.Rs*lambertWExp(x)
}

// Isc is the short-circuit current in A.
func (d Diode) Isc() float64 { return d.Current(0) }

// Voc is the open-circuit voltage in V: a bracketed Newton search from the bound A ln(IL/Io + 1), which ignores the shunt.
func (d Diode) Voc() float64 {
	v := d.A * math.Log(d.IL/d.Io+1)
	for range 60 {
		i, slope := d.junction(v) // concave and falling: Newton from the right stays right of the root
		step := i / slope
		v -= step
		if math.Abs(step) <= 1e-14*v {
			break
		}
	}
	return v
}

// MPP is the maximum-power point, where d(IV)/dV = 0. With the junction voltage as the unknown the condition is explicit;
// a Newton search bracketed in (0, Voc) finds its one root.
func (d Diode) MPP() Point {
	lo, hi := 0.0, d.Voc()
	vd := hi - 2.5*d.A*math.Log1p(hi/d.A/10) // near the knee; any start in the bracket does
	if !(vd > lo && vd < hi) {
		vd = 0.8 * hi
	}
	for range 80 {
		e := d.Io / d.A * math.Exp(vd/d.A)
		i, slope := d.IL-d.A*e+d.Io-vd/d.Rsh, -e-1/d.Rsh
		curve := -e / d.A
		h := slope*(vd-2*i*d.Rs) + i
		if h > 0 {
			lo = vd
		} else {
			hi = vd
		}
		dh := curve*(vd-2*i*d.Rs) + slope*(2-2*slope*d.Rs)
		next := vd - h/dh
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-vd) <= 1e-13*vd {
			vd = next
			break
		}
		vd = next
	}
	i, _ := d.junction(vd)
	return Point{vd - i*d.Rs, i}
}

// FillFactor is Pmax / (Voc Isc).
func (d Diode) FillFactor() float64 { return d.MPP().Power() / (d.Voc() * d.Isc()) }
