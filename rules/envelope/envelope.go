// Package envelope knows how photovoltaic modules usually are: ranges of their ratios, coefficients and fitted parameters by cell technology,
// counted from the open list of lab-rated modules and widened for newer cell types. Its data files carry the origin of every bound;
// generate/ makes them. It knows no records and no rules.
package envelope

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

// Quantity is what a range bounds.
type Quantity int

// The quantities, with their units.
const (
	VmpVoc     Quantity = iota // ratio
	ImpIsc                     // ratio
	FillFactor                 // ratio
	VocCell                    // V per cell in series
	Density                    // Isc x series cells / module area, mA/cm2
	Alpha                      // %/K
	Beta                       // %/K
	Gamma                      // %/K
	Sum                        // gamma - alpha - beta, %/K
	Theory                     // beta per cell minus theory's, mV/K
	Efficiency                 // of the module's area, %
	Operating                  // NOCT or NMOT, °C
	Ideality                   // of the fitted single-diode model
	FitBeta                    // beta of the fitted model minus the printed one, mV/K per cell
	quantities
)

var names = [quantities]string{"vmp_voc", "imp_isc", "fill_factor", "voc_cell_v", "density_ma_cm2", "alpha_pct", "beta_pct", "gamma_pct", "sum_pct", "theory_mv", "efficiency_pct", "operating_c", "ideality", "fit_beta_mv"}

func (q Quantity) String() string { return names[q] }

// Range is what is usual, the 1st to the 99th percentile of the list or a written bound. What lies outside is measured on each end's
// own scale: the distance from the bound to the median, or half the width of a written range.
type Range struct {
	Lo, Hi             float64
	LoScale, HiScale   float64
	LoOrigin, HiOrigin string
	Rows               int // of the list that were counted, 0 for a written range
}

// Excess is how far an interval lies wholly outside the range, in units of that end's scale; 0 where it touches the range.
func (r *Range) Excess(lo, hi float64) float64 {
	switch {
	case lo > r.Hi && r.HiScale > 0:
		return (lo - r.Hi) / r.HiScale
	case hi < r.Lo:
		if r.LoScale > 0 {
			return (r.Lo - hi) / r.LoScale
		}
		return (r.Lo - hi) / r.HiScale
	}
	return 0
}

// Beyond is the value at an excess: the bound of what a rule lets pass.
func (r *Range) Beyond(excess float64) (lo, hi float64) {
	return r.Lo - excess*r.LoScale, r.Hi + excess*r.HiScale
}

// Ranges are one technology's; a nil entry is a quantity without one.
type Ranges [quantities]*Range

// Any is the word for a sheet that does not tell its technology: the widest range of all.
const Any = "any"

//go:embed ranges.csv
var rangesCSV string

var table = must(parse(rangesCSV))

// For is a technology's ranges, by the record's word for it; an unknown or empty word gives those of Any.
func For(technology string) *Ranges {
	if r, ok := table[technology]; ok {
		return r
	}
	return table[Any]
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err) // embedded data that do not parse are a mistake of the build
	}
	return v
}

func parse(text string) (map[string]*Ranges, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := map[string]*Ranges{}
	for _, row := range rows[1:] {
		q := Quantity(0)
		for q < quantities && names[q] != row[1] {
			q++
		}
		if q == quantities {
			return nil, fmt.Errorf("unknown quantity %q", row[1])
		}
		numbers, err := floats(row[2:7])
		if err != nil {
			return nil, err
		}
		if out[row[0]] == nil {
			out[row[0]] = new(Ranges)
		}
		out[row[0]][q] = &Range{numbers[0], numbers[2], numbers[1], numbers[3], row[7], row[8], int(numbers[4])}
	}
	return out, nil
}

func floats(texts []string) ([]float64, error) {
	out := make([]float64, len(texts))
	for i, s := range texts {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			return nil, fmt.Errorf("could not read the number %q: %w", s, err)
		}
		out[i] = v
	}
	return out, nil
}
