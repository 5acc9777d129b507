package main

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strconv"
)

// cutShare is the share of the list's product lines that goes into the repository.
const cutShare = 8

// cut is every eighth product line, in an order that tells nothing of the names, numbered.
func cut(rows []module) [][]string {
	families := map[string][]module{}
	for _, m := range rows {
		families[m.family] = append(families[m.family], m)
	}
	names := slices.Sorted(maps.Keys(families))
	shuffle := rand.New(rand.NewPCG(61215, 61730))
	shuffle.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	out := [][]string{{"id", "family", "technology", "bifacial", "pmax_w", "area_m2", "length_m", "width_m", "cells_in_series",
		"isc_a", "voc_v", "imp_a", "vmp_v", "alpha_isc_a_per_k", "beta_voc_v_per_k", "gamma_pmax_pct_per_k", "noct_c"}}
	f := func(v float64, decimals int) string {
		if v == 0 && decimals == 3 {
			return ""
		}
		return strconv.FormatFloat(v, 'f', decimals, 64)
	}
	g := func(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
	for i, name := range names[:len(names)/cutShare] {
		for _, m := range families[name] {
			bifacial := "0"
			if m.bifacial {
				bifacial = "1"
			}
			out = append(out, []string{fmt.Sprintf("m%04d", len(out)), fmt.Sprintf("f%04d", i+1), m.technology, bifacial, f(m.pmax, 2), g(m.area), f(m.length, 3), f(m.width, 3),
				g(m.cells), g(m.isc), g(m.voc), g(m.imp), g(m.vmp), g(m.alpha), g(m.beta), g(m.gamma), g(m.noct)})
		}
	}
	return out
}
