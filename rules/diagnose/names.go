package diagnose

import (
	"math"
	"regexp"
	"strconv"

	"pvtally/schema"
)

var numbers = regexp.MustCompile(`[0-9]+(\.[0-9]+)?`)

// namedWatts is the power that each class's name carries, 0 where none does: the number in the place in which at least half of the names
// (and two) have their class's Pmax.
func namedWatts(sheet *schema.Sheet) []float64 {
	watts := make([]float64, len(sheet.Models))
	votes := map[int]int{}
	best := -1
	for i := range sheet.Models {
		for at, v := range numbersIn(sheet.Models[i].Name) {
			if isWatts(v, sheet.Models[i].STC.Pmax.Float()) {
				votes[at]++
				if best < 0 || votes[at] > votes[best] {
					best = at
				}
			}
		}
	}
	if best < 0 || votes[best] < 2 || 2*votes[best] < len(watts) {
		return watts
	}
	for i := range watts {
		if in := numbersIn(sheet.Models[i].Name); best < len(in) {
			watts[i] = in[best]
		}
	}
	return watts
}

func numbersIn(name string) (out []float64) {
	for _, text := range numbers.FindAllString(name, 12) {
		v, _ := strconv.ParseFloat(text, 64)
		out = append(out, v)
	}
	return out
}

// isWatts allows a name to leave off half a watt.
func isWatts(named, pmax float64) bool {
	return named == pmax || named == math.Floor(pmax) && pmax-named == 0.5
}

// nominal is a class's nominal power in W: its name's, else its Pmax.
func (b *board) nominal(class, pmax int) float64 {
	if w := b.watts[class]; w > 0 {
		return w
	}
	return b.x[pmax]
}

// titled holds when a class's Pmax is what its name says.
type titled struct {
	pmax  int
	named []float64 // numbers that may be the power
	sure  bool      // the other classes' names carry theirs in this place
}

func (t *titled) cells() []int { return []int{t.pmax} }

func (t *titled) misfit(b *board) float64 {
	x := b.x[t.pmax]
	if math.IsNaN(x) {
		return 0
	}
	for _, w := range t.named {
		if isWatts(w, x) {
			return 0
		}
	}
	if t.sure {
		return 9
	}
	return 3 // most names carry the power (common practice)
}

func (t *titled) solve(b *board, c int) (float64, bool) {
	if t.sure || len(t.named) == 1 {
		return t.named[0], true
	}
	return 0, false
}

// stepped holds when the classes' powers keep one step: mostly 5 W, and multiples where a class is left out.
type stepped struct{ row []int }

func (s *stepped) cells() []int { return s.row }

func (s *stepped) misfit(b *board) float64 {
	var room [maxClasses]float64
	p := room[:0]
	for _, c := range s.row {
		if x := b.x[c]; !math.IsNaN(x) {
			p = append(p, x)
		}
	}
	if len(p) < 3 {
		return 0
	}
	// how many stand off the lattice through the most
	step := s.step(p)
	off := len(p)
	for _, from := range p {
		n := 0
		for _, x := range p {
			if k := (x - from) / step; math.Abs(k-math.Round(k)) > 0.01 || x != from && k == 0 {
				n++
			}
		}
		off = min(off, n)
	}
	cost := 5 * float64(off)
	for i := 1; i < len(p); i++ {
		if p[i] == p[i-1] || (p[i] > p[i-1]) != (p[len(p)-1] > p[0]) {
			cost += 4
		}
	}
	return cost
}

// step is the median distance of neighbours, as a whole number of watts where the powers are whole.
func (s *stepped) step(p []float64) float64 {
	var d []float64
	for i := 1; i < len(p); i++ {
		d = append(d, math.Abs(p[i]-p[i-1]))
	}
	if m := median(d); m > 0 {
		return m
	}
	return 1
}

func (s *stepped) solve(b *board, c int) (float64, bool) {
	for i, at := range s.row {
		if at != c {
			continue
		}
		if i > 0 && i+1 < len(s.row) {
			return (b.x[s.row[i-1]] + b.x[s.row[i+1]]) / 2, true
		}
		if i == 0 && len(s.row) > 2 {
			return 2*b.x[s.row[1]] - b.x[s.row[2]], true
		}
		if i > 1 {
			return 2*b.x[s.row[i-1]] - b.x[s.row[i-2]], true
		}
	}
	return 0, false
}
