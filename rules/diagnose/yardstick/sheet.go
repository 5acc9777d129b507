package yardstick

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"

	"pvtally/schema"
)

// number writes a value as a sheet prints it.
func number(v float64, decimals int) schema.Number {
	return schema.MustNumber(strconv.FormatFloat(v, 'f', decimals, 64))
}

// pick draws one of several by weight.
func pick[T any](rng *rand.Rand, values []T, weights []int) T {
	sum := 0
	for _, w := range weights {
		sum += w
	}
	at := rng.IntN(sum)
	for i, w := range weights {
		if at -= w; at < 0 {
			return values[i]
		}
	}
	return values[len(values)-1]
}

// Honest builds one honest sheet round a module: its values stand in one class, the others lie on the line that makers' sheets show (slopes and
// scatter as measured on 62 real sheets: half of the values exactly on the line, nine in ten within one printed unit). One sheet in two has a
// table at NMOT beside STC's.
func Honest(m Module, rng *rand.Rand) *schema.Sheet {
	v := m.values
	nominal := math.Round(v["pmax_w"]/5) * 5
	step := 5.0
	if nominal <= 120 {
		step = 2
	}
	n := pick(rng, []int{1, 2, 3, 4, 5, 6, 7, 8}, []int{5, 5, 15, 10, 34, 22, 4, 5})
	own := rng.IntN(n)
	length, width := 1000*max(v["length_m"], v["width_m"]), 1000*min(v["length_m"], v["width_m"])
	s := &schema.Sheet{Format: schema.Format, Maker: "Open List", Series: m.Family, Language: "en"}
	s.Cell = schema.Cell{Technology: m.Technology, Count: number(v["cells_in_series"], 0)}
	s.Body = schema.Body{Length: number(length, 0), Width: number(width, 0)}
	alpha, beta, gamma := 100*v["alpha_isc_a_per_k"]/v["isc_a"], 100*v["beta_voc_v_per_k"]/v["voc_v"], v["gamma_pmax_pct_per_k"]
	s.Thermal = schema.Thermal{
		AlphaIsc:  number(alpha, pick(rng, []int{2, 3}, []int{3, 7})),
		BetaVoc:   number(beta, pick(rng, []int{2, 3}, []int{7, 3})),
		GammaPmax: number(gamma, pick(rng, []int{2, 3}, []int{8, 2})),
	}
	operating := rng.IntN(2) == 0
	if operating {
		s.Thermal.NMOT = number(v["noct_c"]-2, 0)
	} else {
		s.Thermal.NOCT = number(v["noct_c"], 0)
	}
	decimals, share := pick(rng, []int{1, 2}, []int{1, 1}), pick(rng, []int{1, 2}, []int{3, 1})
	slopes := [3]float64{0.36 + 0.24*rng.Float64(), 0.25 + 0.25*rng.Float64(), 0.38 + 0.27*rng.Float64()}
	var low [3]float64
	for k := range n {
		p := nominal + float64(k-own)*step
		var x [3]float64 // Vmp, Voc, Isc
		for q, name := range []string{"vmp_v", "voc_v", "isc_a"} {
			d, base := decimals, v[name]
			if name == "isc_a" {
				d, base = 2, base*nominal/v["pmax_w"]
			}
			unit := math.Pow10(-d)
			y := math.Round(base*math.Pow(p/nominal, slopes[q])/unit) * unit
			if k != own {
				y += unit * pick(rng, []float64{0, 1, -1, 2, -2}, []int{78, 10, 10, 1, 1})
			}
			low[q] = max(y, low[q])
			x[q] = low[q]
		}
		c := schema.Model{Name: fmt.Sprintf("%s-%g", m.Family, p), STC: schema.Electrical{Pmax: number(p, 0), Vmp: number(x[0], decimals), Imp: number(p/x[0], 2),
			Voc: number(x[1], decimals), Isc: number(x[2], 2), Efficiency: number(p/(math.Round(length)*math.Round(width))*1e5, share)}}
		if operating {
			c.NMOT = atNMOT(&c.STC, s.Thermal.NMOT.Float()-25, alpha/100, beta/100, gamma/100, decimals)
		}
		s.Models = append(s.Models, c)
	}
	return s
}

// atNMOT is a class at 800 W/m2 and so many kelvins above 25 °C, by the coefficients.
func atNMOT(stc *schema.Electrical, rise, alpha, beta, gamma float64, decimals int) schema.Electrical {
	p := stc.Pmax.Float() * 0.8 * (1 + gamma*rise)
	voc := stc.Voc.Float() * (1 + beta*rise - 0.04*0.223) // n Ns kT/q ln 0.8, n Ns kT/q being some 4 % of Voc
	vmp := stc.Vmp.Float() * (1 + 1.1*beta*rise)
	isc := stc.Isc.Float() * 0.8 * (1 + alpha*rise)
	return schema.Electrical{Pmax: number(p, 1), Vmp: number(vmp, decimals), Imp: number(p/vmp, 2), Voc: number(voc, decimals), Isc: number(isc, 2)}
}
