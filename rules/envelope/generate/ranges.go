package main

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"

	"gonum.org/v1/gonum/stat"

	"pvtally/rules/physics"
)

func siliconSlope(vocCell float64) float64 { return physics.SiliconVocSlope(vocCell) }

// quantities are what the envelope bounds; the units are in the names.
var quantities = []struct {
	name     string
	decimals int
	of       func(m module) float64
}{
	{"vmp_voc", 4, func(m module) float64 { return m.vmp / m.voc }},
	{"imp_isc", 4, func(m module) float64 { return m.imp / m.isc }},
	{"fill_factor", 4, func(m module) float64 { return m.fill }},
	{"voc_cell_v", 4, func(m module) float64 { return m.vocCell }},
	{"density_ma_cm2", 2, func(m module) float64 { return m.density }},
	{"alpha_pct", 4, func(m module) float64 { return m.alphaPct }},
	{"beta_pct", 4, func(m module) float64 { return m.betaPct }},
	{"gamma_pct", 4, func(m module) float64 { return m.gamma }},
	{"sum_pct", 4, func(m module) float64 { return m.sum }},
	{"theory_mv", 3, func(m module) float64 { return m.theory }},
	{"efficiency_pct", 2, func(m module) float64 { return m.efficiency }},
	{"operating_c", 1, func(m module) float64 { return m.noct }},
	{"ideality", 3, ideality},
	{"fit_beta_mv", 3, fitResidual},
}

// fitted solves a module's single-diode model; ok is false where there is none.
func fitted(m module) (physics.Fit, bool) {
	f, err := physics.FitNameplate(physics.Nameplate{Isc: m.isc, Voc: m.voc, Imp: m.imp, Vmp: m.vmp, Alpha: m.alpha, Beta: m.beta, Series: m.cells, Gap: physics.SiliconGap})
	return f, err == nil
}

func ideality(m module) float64 {
	if f, ok := fitted(m); ok {
		return f.Ideality
	}
	return math.NaN()
}

// fitResidual is how far the fit's coefficient of Voc stays from the listed one, mV/K per cell.
func fitResidual(m module) float64 {
	if f, ok := fitted(m); ok {
		return 1000 * (f.Beta - m.beta) / m.cells
	}
	return math.NaN()
}

// sound leaves out rows that are themselves in error: half cells counted as series cells, lost signs, an area that is not length x width.
// It asks only for physics; no bound of the envelope is among its conditions.
func sound(m module) bool {
	return m.vocCell > 0.55 && m.vocCell < physics.SiliconMaxVoc && m.fill < physics.SiliconMaxFillFactor && m.fill > 0.5 &&
		m.efficiency > 8 && m.efficiency < 24 && m.alpha > 0 && m.gamma < m.betaPct && m.betaPct < 0 &&
		(m.length == 0 || math.Abs(m.length*m.width/m.area-1) < 0.01)
}

// groups are the rows a technology's ranges are counted from. The list does not tell cell architectures: PERC is known by its voltage and efficiency.
var groups = []struct {
	technology, origin string
	selected           []string // by these quantities: the group says nothing of their range
	in                 func(m module) bool
}{
	{"mono", "CEC list 2019-03, 1-99 %", nil, func(m module) bool { return m.technology == "mono" }},
	{"multi", "CEC list 2019-03, 1-99 %", nil, func(m module) bool { return m.technology == "multi" }},
	{"mono-perc", "CEC list 2019-03, mono with Voc/cell 0.665-0.695 V and efficiency above 19 %, 1-99 %", []string{"voc_cell_v", "efficiency_pct"}, func(m module) bool {
		return m.technology == "mono" && m.vocCell > 0.665 && m.vocCell < 0.695 && m.efficiency > 19
	}},
}

// bound is one end of a range: its place, and the scale on which what lies beyond it is judged.
type bound struct {
	at, scale float64
	origin    string
}

type rng struct {
	lo, hi bound
	n      int
}

// hull is the wider of two ranges at each end.
func (r rng) hull(s rng) rng {
	if s.lo.at < r.lo.at {
		r.lo = s.lo
	}
	if s.hi.at > r.hi.at {
		r.hi = s.hi
	}
	r.n = max(r.n, s.n)
	return r
}

// parents are the technologies whose ranges a word stands for besides its own: "mono" on a sheet says nothing of the architecture.
var parents = []struct {
	technology string
	of         []string
	missing    bool // only for quantities without a range of their own
}{
	{"multi-perc", []string{"multi"}, false},
	{"topcon", []string{"mono"}, true},
	{"hjt", []string{"mono"}, true},
	{"ibc", []string{"mono"}, true},
	{"mono-perc", []string{"mono"}, true},
	{"mono-n", []string{"mono", "topcon", "hjt", "ibc"}, false},
	{"mono", []string{"mono-perc", "topcon", "hjt", "ibc"}, false},
	{"any", []string{"mono", "multi", "cdte", "cigs", "a-si", "tandem"}, false},
}

// ranges counts the quantiles, lays the written bounds over them, and gives each word of a record its range.
func ranges(rows []module, boundsPath string) ([][]string, error) {
	table := map[string]map[string]rng{}
	put := func(technology, quantity string, r rng) {
		if table[technology] == nil {
			table[technology] = map[string]rng{}
		}
		if old, ok := table[technology][quantity]; ok {
			r = old.hull(r)
		}
		table[technology][quantity] = r
	}
	for _, g := range groups {
		for _, q := range quantities {
			if r, ok := counted(rows, g.in, q.of); ok && !slices.Contains(g.selected, q.name) {
				r.lo.origin, r.hi.origin = g.origin, g.origin
				put(g.technology, q.name, r)
			}
		}
	}
	written, err := readBounds(boundsPath)
	if err != nil {
		return nil, err
	}
	for _, b := range written {
		put(b.technology, b.quantity, b.rng)
	}
	for _, p := range parents {
		for _, from := range p.of {
			for _, q := range quantities {
				r, ok := table[from][q.name]
				if _, own := table[p.technology][q.name]; !ok || own && p.missing {
					continue
				}
				put(p.technology, q.name, r)
			}
		}
	}
	out := [][]string{{"technology", "quantity", "lo", "lo_scale", "hi", "hi_scale", "rows", "lo_origin", "hi_origin"}}
	for _, technology := range slices.Sorted(mapsKeys(table)) {
		for _, q := range quantities {
			if r, ok := table[technology][q.name]; ok {
				f := func(v float64) string { return strconv.FormatFloat(v, 'f', q.decimals, 64) }
				out = append(out, []string{technology, q.name, f(r.lo.at), f(r.lo.scale), f(r.hi.at), f(r.hi.scale), strconv.Itoa(r.n), r.lo.origin, r.hi.origin})
			}
		}
	}
	return out, nil
}

func mapsKeys[V any](m map[string]V) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// counted is the range from the 1st to the 99th percentile of the sound rows; each end's scale is its distance from the median.
func counted(rows []module, in func(module) bool, of func(module) float64) (rng, bool) {
	var vs []float64
	for _, m := range rows {
		if in(m) && sound(m) {
			if v := of(m); !math.IsNaN(v) {
				vs = append(vs, v)
			}
		}
	}
	if len(vs) < 100 {
		return rng{}, false
	}
	slices.Sort(vs)
	at := func(p float64) float64 { return stat.Quantile(p, stat.Empirical, vs, nil) }
	lo, mid, hi := at(0.01), at(0.5), at(0.99)
	return rng{bound{at: lo, scale: mid - lo}, bound{at: hi, scale: hi - mid}, len(vs)}, true
}

type writtenBound struct {
	technology, quantity string
	rng
}

// readBounds reads the bounds that come from literature or memory; their scale is half the width.
func readBounds(path string) ([]writtenBound, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("could not read %q: %w", path, err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("could not parse %q: %w", path, err)
	}
	var out []writtenBound
	for _, row := range rows[1:] {
		lo, err1 := strconv.ParseFloat(row[2], 64)
		hi, err2 := strconv.ParseFloat(row[3], 64)
		if err1 != nil || err2 != nil || lo >= hi {
			return nil, fmt.Errorf("could not parse %q: bounds of %s %s", path, row[0], row[1])
		}
		half := (hi - lo) / 2
		out = append(out, writtenBound{row[0], row[1], rng{bound{lo, half, row[4]}, bound{hi, half, row[4]}, 0}})
	}
	return out, nil
}
