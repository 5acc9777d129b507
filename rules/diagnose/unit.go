package diagnose

import (
	"math"
	"strings"

	"pvtally/schema"
)

// unitSlips are the factors by which a number grows when its unit was mistaken: what it is in the field's unit over what is printed.
func (b *board) unitSlips(k *cell) []float64 {
	middle := func(name string) float64 {
		row := printed(b.row("stc", -1, name))
		if len(row) == 0 {
			return math.NaN()
		}
		return b.x[row[len(row)/2]]
	}
	perCent := func(of string) []float64 {
		v, n := middle(of), b.x[b.single("cell", "count")]
		if !(v > 0) {
			return nil
		}
		out := []float64{100 / v, 0.1 / v} // V/K and mV/K printed as %/K
		if n > 0 {
			out = append(out, 0.1*n/v) // mV/K for each cell
		}
		return out
	}
	switch k.name {
	case "alpha_isc_pct_per_k":
		return perCent("isc_a")
	case "beta_voc_pct_per_k":
		return perCent("voc_v")
	case "gamma_pmax_pct_per_k":
		return perCent("pmax_w")
	case "alpha_isc_a_per_k", "beta_voc_v_per_k":
		return []float64{0.001}
	case "length_mm", "width_mm", "depth_mm":
		return []float64{10, 25.4, 1000}
	case "mass_kg":
		return []float64{0.45359237}
	case "front_load_pa", "rear_load_pa":
		return []float64{47.88, 1000}
	}
	return nil
}

// significant writes a converted number with as many significant digits as were printed, at least two.
func significant(v float64, text string) (schema.Number, bool) {
	digits := 0
	for _, c := range strings.TrimLeft(strings.Replace(strings.TrimPrefix(text, "-"), ".", "", 1), "0") {
		if c >= '0' && c <= '9' {
			digits++
		}
	}
	if v == 0 {
		return schema.Number{}, false
	}
	decimals := max(digits, 2) - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	return rounded(v, min(max(decimals, 0), 6))
}
