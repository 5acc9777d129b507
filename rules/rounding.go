package rules

import (
	"slices"
	"strings"
)

// padded reports a row whose every value ends in a zero after the point: it was rounded one digit sooner than it is printed.
func padded(n int, value func(i int) *Value) bool {
	any := false
	for i := range n {
		v := value(i)
		if !v.Printed() {
			continue
		}
		if !strings.HasSuffix(v.text, "0") || !strings.Contains(v.text, ".") {
			return false
		}
		any = true
	}
	return any
}

// roundEfficiencies widens the efficiencies of a sheet that rounds to tenths and prints hundredths: 20.60, 20.90, 21.10.
func (f *facts) roundEfficiencies() {
	if len(f.stc) < 2 || !padded(len(f.stc), func(i int) *Value { return &f.stc[i].Efficiency }) {
		return
	}
	for i := range f.stc {
		if v := &f.stc[i].Efficiency; v.Printed() && !strings.HasSuffix(v.text, ".0") {
			v.Interval = v.Inflate(9 * v.Half())
		}
	}
}

// usualStep is the unit of the last digit that most of a row's values are printed with. One printed with fewer digits has dropped zeros, or a digit
// got lost: 13.99, 14.0, 14.11.
func usualStep(units []float64) float64 {
	if len(units) < 3 {
		return slices.Max(append(units, 0))
	}
	var room [16]float64
	sorted := append(room[:0], units...)
	slices.Sort(sorted)
	return sorted[len(sorted)/2]
}
