// Package yardstick measures a diagnosis: it builds honest sheets round lab-rated modules of the open list, prints a mistake on each, and
// says which cell a good diagnosis must name. It serves tests and the calibration; the program does not use it.
package yardstick

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
)

// Module is one lab-rated module, with a name of its product line.
type Module struct {
	Family, Technology string
	values             map[string]float64
}

// columns that a module must have to build a sheet on.
var columns = []string{"pmax_w", "area_m2", "length_m", "width_m", "cells_in_series", "isc_a", "voc_v", "imp_a", "vmp_v", "alpha_isc_a_per_k", "beta_voc_v_per_k", "gamma_pmax_pct_per_k", "noct_c"}

// Read takes the sound silicon modules of a list like testdata/open/modules.csv, one of each product line, in the list's order. A row of the list
// that is itself in error (some one in twenty) is left out.
func Read(r io.Reader) ([]Module, error) {
	rows, err := csv.NewReader(r).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("could not read the list of modules: %w", err)
	}
	if len(rows) == 0 {
		return nil, fmt.Errorf("could not read the list of modules: it is empty")
	}
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	families := map[string][]Module{}
	var order []string
	for _, row := range rows[1:] {
		m := Module{Family: row[at["family"]], Technology: row[at["technology"]], values: map[string]float64{}}
		complete := m.Technology == "mono" || m.Technology == "multi"
		for _, name := range columns {
			v, err := strconv.ParseFloat(row[at[name]], 64)
			complete = complete && err == nil
			m.values[name] = v
		}
		if complete && m.sound() {
			if families[m.Family] == nil {
				order = append(order, m.Family)
			}
			families[m.Family] = append(families[m.Family], m)
		}
	}
	var out []Module
	for _, name := range order {
		f := families[name]
		slices.SortFunc(f, func(a, b Module) int { return int(1000 * (a.values["pmax_w"] - b.values["pmax_w"])) })
		out = append(out, f[len(f)/2])
	}
	return out, nil
}

// sound is false for a row that is itself in error: half cells counted as series cells, a lost sign, an area that is not length times width.
func (m *Module) sound() bool {
	v := m.values
	alpha, beta, gamma := 100*v["alpha_isc_a_per_k"]/v["isc_a"], 100*v["beta_voc_v_per_k"]/v["voc_v"], v["gamma_pmax_pct_per_k"]
	within := func(x, lo, hi float64) bool { return x > lo && x < hi }
	return within(v["voc_v"]/v["cells_in_series"], 0.57, 0.755) && within(alpha, 0.01, 0.1) && within(beta, -0.42, -0.2) && gamma < beta &&
		within(gamma-alpha-beta, -0.28, -0.05) && within(v["length_m"]*v["width_m"]/v["area_m2"], 0.99, 1.01) &&
		within(v["pmax_w"]/(v["voc_v"]*v["isc_a"]), 0.70, 0.83)
}
