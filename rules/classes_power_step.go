package rules

import (
	"fmt"
	"math"
)

var classesPowerStep = &Rule{
	ID:      "classes/power-step",
	Title:   "power classes are evenly stepped",
	Why:     "Makers sort into classes of one width, mostly 5 W. One class off the steps of the others has a digit of its power wrong.",
	Formula: "Pmax(k+1) - Pmax(k) is a multiple of the smallest step",
	Sources: []Source{{"Sorting in steps of 5 W (2 to 10 W)", "common practice"}},
	Levels:  []Threshold{{Note, "the steps are uneven throughout"}, {Warning, "one class alone breaks the steps"}},
	Needs:   []string{"models[].stc.pmax_w of four classes or more"},
	Yields:  []string{"classes/name-power", "stc/power-product"},
	Check: func(p *Pass) {
		n := len(p.rank)
		if n < 4 {
			return
		}
		power := func(r int) float64 { return p.stc[p.rank[r]].Pmax.V }
		even := func(without int) (step float64, ok bool) {
			step = math.Inf(1)
			for r, last := 0, -1; r < n; r++ {
				if r == without {
					continue
				}
				if d := power(r) - power(max(last, 0)); last >= 0 && d > 0 {
					step = min(step, d)
				}
				last = r
			}
			for r, last := 0, -1; r < n; r++ {
				if r == without {
					continue
				}
				if last >= 0 {
					k := (power(r) - power(last)) / step
					if math.Abs(k-math.Round(k)) > 0.01 {
						return step, false
					}
				}
				last = r
			}
			return step, step > 1
		}
		if _, ok := even(-1); ok {
			return
		}
		for r := range n {
			if step, ok := even(r); ok {
				v := &p.stc[p.rank[r]].Pmax
				p.Report(Warning, Finding{Message: fmt.Sprintf("Pmax %s breaks the steps of %s W that all other classes keep", v, around(step))}, v)
				return
			}
		}
		p.Report(Note, Finding{Message: "the power classes are not evenly stepped"}, &p.stc[p.rank[0]].Pmax)
	},
}
