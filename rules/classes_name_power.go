package rules

import (
	"fmt"
	"math"
	"strconv"
)

var classesNamePower = &Rule{
	ID:      "classes/name-power",
	Title:   "the watts in a model's name are its Pmax",
	Why:     "A class's name carries its nominal power. Where the names of the other classes do, and this one's number in the same place is another, name or power is misprinted.",
	Formula: "number in the name = Pmax",
	Sources: []Source{{"How makers name their classes", "common practice"}},
	Levels:  []Threshold{{Warning, "a one-class sheet whose name ends in a multiple of 5 W near Pmax, but not in Pmax"}, {Error, "the other classes' names carry their Pmax in this place"}},
	Needs:   []string{"models[].name", "models[].stc.pmax_w"},
	Check: func(p *Pass) {
		report := func(i int, l Level, named float64) {
			v := &p.stc[i].Pmax
			p.Report(l, Finding{Message: fmt.Sprintf("the name %s says %s W, printed Pmax %s", p.modelName(i), around(named), v), Implied: []string{around(named)}}, v)
		}
		for i := range p.stc {
			if p.nominal[i] != p.stc[i].Pmax.V && p.stc[i].Pmax.Printed() {
				report(i, Error, p.nominal[i])
			}
		}
		if len(p.stc) != 1 || !p.stc[0].Pmax.Printed() {
			return
		}
		pmax := p.stc[0].Pmax.V
		if _, ok := wattsAt(p.modelName(0), pmax); ok {
			return
		}
		if named, count := number(p.modelName(0), -1); count > 0 && math.Mod(named, 5) == 0 && math.Abs(named/pmax-1) <= 0.2 {
			report(0, Warning, named)
		}
	},
}

// nominals is each class's nominal power: the printed Pmax, or what its name says where the names of at least half of the classes carry their Pmax in that place
// and this one's another number. The classes are ordered and laid on lines by it, so that one wrong Pmax does not spoil every other comparison.
func (p *Pass) nominals(out []float64) []float64 {
	place, agree := -1, 0
	for i := range p.stc {
		out = append(out, p.stc[i].Pmax.V)
		if at, ok := wattsAt(p.modelName(i), p.stc[i].Pmax.V); ok && p.stc[i].Pmax.Printed() {
			agree++
			place = max(place, at)
		}
	}
	if len(p.stc) < 2 || place < 0 || 2*agree < len(p.stc) {
		return out
	}
	for i := range p.stc {
		if _, ok := wattsAt(p.modelName(i), out[i]); ok || !p.stc[i].Pmax.Printed() {
			continue
		}
		if named, count := number(p.modelName(i), place); count > place && named > 0 {
			out[i] = named
		}
	}
	return out
}

// wattsAt finds Pmax among the numbers of a name: which of them it is, and whether there is one. A name may leave off half a watt.
func wattsAt(name string, pmax float64) (at int, ok bool) {
	_, count := number(name, -1)
	for at = count - 1; at >= 0; at-- {
		if v, _ := number(name, at); v == pmax || v == math.Floor(pmax) && pmax-v == 0.5 {
			return at, true
		}
	}
	return 0, false
}

// number is the at-th run of digits in a name (the last for -1), a decimal point between digits included, and how many runs there are.
func number(name string, at int) (v float64, count int) {
	for i := 0; i < len(name); i++ {
		if name[i] < '0' || name[i] > '9' {
			continue
		}
		j := i
		for j < len(name) && (name[j] >= '0' && name[j] <= '9' || name[j] == '.' && j+1 < len(name) && name[j+1] >= '0' && name[j+1] <= '9') {
			j++
		}
		if count == at || at < 0 {
			v, _ = strconv.ParseFloat(name[i:j], 64)
		}
		count++
		i = j
	}
	return v, count
}
