package main

import (
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/gonum/stat"
)

// slopes are the exponents with which a product line's values grow with its power classes: d ln y / d ln Pmax between a family's
// lowest and highest class, where these lie at least 2 % apart.
func slopes(rows []module) [][]string {
	families := map[string][]module{}
	for _, m := range rows {
		if (m.technology == "mono" || m.technology == "multi") && sound(m) {
			families[m.family] = append(families[m.family], m)
		}
	}
	out := [][]string{{"field", "q01", "q05", "median", "q95", "q99", "families"}}
	for _, q := range []struct {
		field string
		of    func(m module) float64
	}{
		{"vmp_v", func(m module) float64 { return m.vmp }},
		{"imp_a", func(m module) float64 { return m.imp }},
		{"voc_v", func(m module) float64 { return m.voc }},
		{"isc_a", func(m module) float64 { return m.isc }},
	} {
		var vs []float64
		for _, ms := range families {
			byPower := func(a, b module) int { return int(math.Copysign(1, a.pmax-b.pmax)) }
			lo, hi := slices.MinFunc(ms, byPower), slices.MaxFunc(ms, byPower)
			if p := math.Log(hi.pmax / lo.pmax); p > 0.02 && lo.cells == hi.cells {
				vs = append(vs, math.Log(q.of(hi)/q.of(lo))/p)
			}
		}
		slices.Sort(vs)
		row := []string{q.field}
		for _, p := range []float64{0.01, 0.05, 0.5, 0.95, 0.99} {
			row = append(row, strconv.FormatFloat(stat.Quantile(p, stat.Empirical, vs, nil), 'f', 3, 64))
		}
		out = append(out, append(row, strconv.Itoa(len(vs))))
	}
	return out
}
