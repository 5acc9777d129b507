package extract

import (
	"slices"
	"strings"

	"pvtally/extract/label"
)

// splitPaired parts a row that prints two quantities at once ("Vmpp / Impp | 41.60 V / 12.98 A") into one row each; the units tell whose a figure is.
func (v *view) splitPaired() {
	for i := 0; i < len(v.rows); i++ {
		r := v.rows[i]
		if !electrical[r.concept] || len(r.values) == 0 || len(r.values[0].quantities) != 2 {
			continue
		}
		first, second, ok := strings.Cut(r.text(), "/")
		if !ok {
			continue
		}
		a, b := conceptOf(label.Find(first)), conceptOf(label.Find(second))
		if !electrical[a] || !electrical[b] || a == b {
			continue
		}
		r.concept = a
		other := *r
		other.concept = b
		other.values = slices.Clone(r.values)
		i++
		v.rows = slices.Insert(v.rows, i, &other)
	}
}
