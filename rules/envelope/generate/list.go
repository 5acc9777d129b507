package main

import (
	"archive/zip"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// listSuffix ends the name of the module list in the wheel.
const listSuffix = "cec-modules-2019-03-05.csv"

// module is one row of the list, with what is derived of it.
type module struct {
	family, technology                   string
	bifacial                             bool
	area, length, width                  float64 // m2, m; length and width 0 where the list lacks them
	cells, isc, voc, imp, vmp            float64
	alpha, beta, gamma, noct             float64 // A/K, V/K, %/K, °C
	vocCell, fill, efficiency, density   float64 // V, 1, %, mA/cm2
	alphaPct, betaPct, sum, theory, pmax float64 // %/K, %/K, %/K, mV/K per cell, W
}

var technologies = map[string]string{"Mono-c-Si": "mono", "Multi-c-Si": "multi", "Thin Film": "thin-film", "CdTe": "cdte", "CIGS": "cigs"}

// readWheel finds the list in the wheel and parses it; the two lines under its header are units and names of another program's variables.
func readWheel(path string) ([]module, error) {
	wheel, err := zip.OpenReader(path)
	if err != nil {
		return nil, fmt.Errorf("could not open %q: %w", path, err)
	}
	defer wheel.Close()
	for _, f := range wheel.File {
		if strings.HasSuffix(f.Name, listSuffix) {
			r, err := f.Open()
			if err != nil {
				return nil, fmt.Errorf("could not read %q in %q: %w", f.Name, path, err)
			}
			defer r.Close()
			return parse(r)
		}
	}
	return nil, fmt.Errorf("no file ending in %s in %q", listSuffix, path)
}

func parse(r io.Reader) ([]module, error) {
	rows, err := csv.NewReader(r).ReadAll()
	if err != nil || len(rows) < 4 {
		return nil, fmt.Errorf("could not parse the list: %d lines, %w", len(rows), err)
	}
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	var out []module
	for _, row := range rows[3:] {
		get := func(name string) float64 {
			v, err := strconv.ParseFloat(row[column[name]], 64)
			if err != nil {
				return 0
			}
			return v
		}
		m := module{
			technology: technologies[row[column["Technology"]]], bifacial: row[column["Bifacial"]] == "1",
			area: get("A_c"), length: get("Length"), width: get("Width"), cells: get("N_s"),
			isc: get("I_sc_ref"), voc: get("V_oc_ref"), imp: get("I_mp_ref"), vmp: get("V_mp_ref"),
			alpha: get("alpha_sc"), beta: get("beta_oc"), gamma: get("gamma_r"), noct: get("T_NOCT"),
		}
		if m.technology == "" || !(m.area > 0 && m.cells > 0 && m.isc > 0 && m.voc > 0) {
			continue
		}
		m.pmax = m.imp * m.vmp
		m.family = familyOf(row[column["Name"]], m.pmax)
		m.vocCell = m.voc / m.cells
		m.fill = m.pmax / (m.voc * m.isc)
		m.efficiency = m.pmax / m.area / 10
		m.density = m.isc * m.cells / m.area / 10
		m.alphaPct, m.betaPct = m.alpha/m.isc*100, m.beta/m.voc*100
		m.sum = m.gamma - m.alphaPct - m.betaPct
		m.theory = 1000 * (m.beta/m.cells - siliconSlope(m.vocCell))
		out = append(out, m)
	}
	return out, nil
}

var digits = regexp.MustCompile(`\d+(\.\d+)?`)

// familyOf is a module's name with its watts taken out: the classes of one product line.
func familyOf(name string, pmax float64) string {
	return digits.ReplaceAllStringFunc(name, func(s string) string {
		if v, _ := strconv.ParseFloat(s, 64); math.Abs(v-pmax) < 0.015*pmax {
			return "#"
		}
		return s
	})
}
