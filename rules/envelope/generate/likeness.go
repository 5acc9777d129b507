package main

import (
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// traits of a module that a wrong count of cells moves apart: ln of Voc per cell in V, ln of Isc per module area in mA/cm2, and
// how far β per cell stands from theory in mV/K. Efficiency, which no count moves, foretells all three.
var traits = []struct {
	name string
	of   func(m module) float64
}{
	{"ln_voc_cell", func(m module) float64 { return math.Log(m.vocCell) }},
	{"ln_density", func(m module) float64 { return math.Log(m.density) }},
	{"theory_mv", func(m module) float64 { return m.theory }},
}

// likeness regresses the traits on ln of the efficiency in %, and gives the residuals' inverse covariance after trimming the farthest hundredth.
func likeness(rows []module) [][]string {
	out := [][]string{{"technology", "trait", "at_zero", "per_ln_efficiency", "inverse_1", "inverse_2", "inverse_3", "rows"}}
	for _, technology := range []string{"mono", "multi"} {
		var in []module
		for _, m := range rows {
			if m.technology == technology && sound(m) {
				in = append(in, m)
			}
		}
		n, k := len(in), len(traits)
		x := make([]float64, n)
		for i, m := range in {
			x[i] = math.Log(m.efficiency)
		}
		a, b := make([]float64, k), make([]float64, k)
		residuals := mat.NewDense(n, k, nil)
		for j, t := range traits {
			y := make([]float64, n)
			for i, m := range in {
				y[i] = t.of(m)
			}
			a[j], b[j] = stat.LinearRegression(x, y, nil, false)
			for i := range y {
				residuals.Set(i, j, y[i]-a[j]-b[j]*x[i])
			}
		}
		inverse := trimmed(residuals)
		f := func(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
		for j, t := range traits {
			row := []string{technology, t.name, f(a[j]), f(b[j])}
			for i := range traits {
				row = append(row, f(inverse.At(j, i)))
			}
			out = append(out, append(row, strconv.Itoa(n)))
		}
	}
	return out
}

// trimmed is the inverse covariance of the rows' residuals without the hundredth that lies farthest out; five rounds settle it.
func trimmed(residuals *mat.Dense) *mat.Dense {
	n, k := residuals.Dims()
	keep := make([]float64, n)
	for i := range keep {
		keep[i] = 1
	}
	inverse := mat.NewDense(k, k, nil)
	for range 5 {
		var cov mat.SymDense
		stat.CovarianceMatrix(&cov, residuals, keep)
		if err := inverse.Inverse(&cov); err != nil {
			panic(err) // the list's traits are independent; a singular matrix means the list was misread
		}
		far := make([]float64, n)
		for i := range far {
			r := residuals.RawRowView(i)
			v := mat.NewVecDense(k, r)
			far[i] = mat.Inner(v, inverse, v)
		}
		sorted := slices.Clone(far)
		slices.Sort(sorted)
		limit := stat.Quantile(0.99, stat.Empirical, sorted, nil)
		for i := range keep {
			keep[i] = 0
			if far[i] <= limit {
				keep[i] = 1
			}
		}
	}
	return inverse
}
