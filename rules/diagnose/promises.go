package diagnose

import "math"

// linear holds when a sum of numbers is another number: a warranty's end value.
type linear struct {
	of     []int
	gap    func(x []float64) float64 // of the values in that order
	spread float64
	wild   float64
	inv    func(x []float64, k int) float64 // what the k-th would be, nil where it is not told
}

func (l *linear) cells() []int { return l.of }

func (l *linear) values(b *board) ([]float64, bool) {
	x := make([]float64, len(l.of))
	for i, c := range l.of {
		if x[i] = b.x[c]; math.IsNaN(x[i]) {
			return nil, false
		}
	}
	return x, true
}

func (l *linear) misfit(b *board) float64 {
	x, ok := l.values(b)
	if !ok {
		return 0
	}
	return scatter{lo: l.spread, hi: l.spread, wild: l.wild}.misfit(l.gap(x), 0)
}

func (l *linear) solve(b *board, c int) (float64, bool) {
	x, ok := l.values(b)
	if !ok || l.inv == nil {
		return 0, false
	}
	for k := range l.of {
		if l.of[k] == c {
			v := l.inv(x, k)
			return v, !math.IsNaN(v) && !math.IsInf(v, 0)
		}
	}
	return 0, false
}

// again relates a value to what the sheet says a second time.
func (b *board) again() {
	for i := range b.sheet.Also {
		a := &b.sheet.Also[i]
		c := b.at(a.Field)
		if c == none || a.Value.IsZero() || i > 200 {
			continue
		}
		half := a.Value.HalfStep()
		if !a.HalfStep.IsZero() {
			half = a.HalfStep.Float()
		}
		v := a.Value.Float()
		b.relate("the sheet itself says %s elsewhere", &linear{of: []int{c}, gap: func(x []float64) float64 { return x[0] - v }, spread: max(half, b.half[c]) * uniform,
			wild: 0.02 / max(math.Abs(v), 1e-9), inv: func([]float64, int) float64 { return v }})
	}
}

// promises relates the numbers of warranty and packing.
func (b *board) promises() {
	const w, k = "warranty", "packing"
	years, first, annual, final := b.single(w, "performance_years"), b.single(w, "first_year_loss_pct"), b.single(w, "annual_loss_pct"), b.single(w, "final_output_pct")
	if years != none && first != none && annual != none && final != none {
		b.relate("the yearly losses add up to the final output", &linear{of: []int{final, first, annual, years}, spread: 0.06, wild: 0.01,
			gap: func(x []float64) float64 { return x[0] - (100 - x[1] - x[2]*(x[3]-1)) },
			inv: func(x []float64, i int) float64 {
				return [...]float64{100 - x[1] - x[2]*(x[3]-1), 100 - x[0] - x[2]*(x[3]-1), (100 - x[0] - x[1]) / (x[3] - 1), (100-x[0]-x[1])/x[2] + 1}[i]
			}})
	}
	pallet, pallets, container := b.single(k, "modules_per_pallet"), b.single(k, "pallets_per_container"), b.single(k, "modules_per_container")
	if pallet != none && pallets != none && container != none {
		b.relate("modules × pallets is the container's count", &linear{of: []int{container, pallet, pallets}, spread: 0.3, wild: 1e-3,
			gap: func(x []float64) float64 { return x[0] - x[1]*x[2] },
			inv: func(x []float64, i int) float64 { return [...]float64{x[1] * x[2], x[0] / x[2], x[0] / x[1]}[i] }})
	}
	if fuse, isc := b.single("limits", "series_fuse_a"), printed(b.row("stc", -1, "isc_a")); fuse != none && len(isc) > 0 {
		b.relate("the fuse suits Isc", &product{terms: []term{{fuse, 1}, {isc[len(isc)/2], -1}}, is: math.Log(1.9), scatter: scatter{lo: 0.15, hi: 0.2, wild: 0.02}})
	}
}
