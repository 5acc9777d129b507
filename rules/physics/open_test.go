package physics

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// openModules are the silicon modules of the repository's part of the open list.
func openModules(t testing.TB) []Nameplate {
	t.Helper()
	f, err := os.Open("../../testdata/open/modules.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	var out []Nameplate
	for _, row := range rows[1:] {
		v := func(name string) float64 {
			x, err := strconv.ParseFloat(row[at[name]], 64)
			if err != nil {
				t.Fatal(err)
			}
			return x
		}
		if tech := row[at["technology"]]; tech == "mono" || tech == "multi" {
			out = append(out, Nameplate{Isc: v("isc_a"), Voc: v("voc_v"), Imp: v("imp_a"), Vmp: v("vmp_v"), Alpha: v("alpha_isc_a_per_k"), Beta: v("beta_voc_v_per_k"), Series: v("cells_in_series"), Gap: SiliconGap})
		}
	}
	return out
}

// scan looks for a physical solution the slow way: ideality by ideality, resistance by resistance, the other three parameters from the
// linear equations of short circuit, open circuit and maximum-power point, and a change of sign of d(IV)/dV between two of them.
func scan(t *testing.T, m Nameplate) bool {
	t.Helper()
	for n := MinIdeality; n <= MaxIdeality; n += 0.05 {
		a := n * m.Series * STCThermalVoltage
		last, was := 0.0, false
		for k := 0; k <= 300; k++ {
			rs := float64(k) / 300 * (m.Voc - m.Vmp) / m.Imp
			grow := func(vd float64) float64 { return math.Exp((vd - m.Voc) / a) } // Io scaled by exp(Voc/a)
			zero := math.Exp(-m.Voc / a)
			matrix := mat.NewDense(3, 3, []float64{
				1, zero - grow(m.Isc*rs), -m.Isc * rs,
				1, zero - 1, -m.Voc,
				1, zero - grow(m.Vmp+m.Imp*rs), -(m.Vmp + m.Imp*rs),
			})
			var x mat.VecDense
			if x.SolveVec(matrix, mat.NewVecDense(3, []float64{m.Isc, 0, m.Imp})) != nil || x.AtVec(1) <= 0 || x.AtVec(2) < 0 {
				was = false
				continue
			}
			g := x.AtVec(1)/a*grow(m.Vmp+m.Imp*rs) + x.AtVec(2)
			slope := m.Imp - m.Vmp*g/(1+rs*g)
			if was && (slope > 0) != (last > 0) {
				return true
			}
			last, was = slope, true
		}
	}
	return false
}

// TestFitOpenList: of the entries for which the slow scan finds a solution, FitNameplate solves at least 99.5 %, and each of its solutions
// meets the four conditions; where it says that β is met, it is.
func TestFitOpenList(t *testing.T) {
	modules := openModules(t)
	step := 1
	if testing.Short() {
		step = 10
	}
	var scanned, solved, all, met, bound int
	for i := 0; i < len(modules); i += step {
		m := modules[i]
		fit, err := FitNameplate(m)
		if err == nil {
			all++
			p := fit.MPP()
			for _, v := range []value{{"Isc", fit.Isc(), m.Isc, 1e-7}, {"Voc", fit.Voc(), m.Voc, 1e-7}, {"Imp", p.I, m.Imp, 1e-5}, {"Vmp", p.V, m.Vmp, 1e-5}} {
				if math.Abs(v.got-v.want) > v.tol*v.want {
					t.Errorf("entry %d: %s = %v, want %v (%+v)", i, v.name, v.got, v.want, fit)
				}
			}
			if !(fit.Rs >= 0 && fit.Rsh > 0 && fit.Io > 0) {
				t.Errorf("entry %d: not physical: %+v", i, fit)
			}
			if fit.Bound == "" {
				met++
				if math.Abs(fit.Beta-m.Beta) > 1e-6*math.Abs(m.Beta) {
					t.Errorf("entry %d: β = %v, want %v", i, fit.Beta, m.Beta)
				}
			} else {
				bound++
			}
		}
		if i%4 == 0 || step > 1 { // the scan is slow: a quarter of the entries
			if scan(t, m) {
				scanned++
				if err == nil {
					solved++
				} else {
					t.Logf("entry %d: the scan finds a curve, FitNameplate says %v: %+v", i, err, m)
				}
			}
		}
	}
	t.Logf("%d modules: %d solved, of these %d meet the printed β, %d stand at a bound; of %d that the scan solves, %d are solved", (len(modules)+step-1)/step, all, met, bound, scanned, solved)
	if scanned == 0 || float64(solved) < 0.995*float64(scanned) {
		t.Errorf("%d of %d entries solved, want 99.5 %%", solved, scanned)
	}
}

func BenchmarkFitOpenList(b *testing.B) {
	modules := openModules(b)
	i := 0
	for b.Loop() {
		_, _ = FitNameplate(modules[i%len(modules)])
		i++
	}
}
