package diagnose

import (
	"math"
	"slices"

	"pvtally/rules"
	"pvtally/rules/envelope"
	"pvtally/rules/physics"
)

// typical holds when a ratio of two rows is what the technology's modules have; the classes of a sheet count as one module together.
type typical struct {
	over, under []int
	middle      float64 // natural logarithm
	scatter
}

func (t *typical) cells() []int { return append(t.over[:len(t.over):len(t.over)], t.under...) }

func (t *typical) misfit(b *board) float64 {
	sum, n := 0.0, 0.0
	for i, o := range t.over {
		x, y := b.x[o], b.x[t.under[i]]
		switch {
		case math.IsNaN(x) || math.IsNaN(y):
			continue
		case x <= 0 || y <= 0:
			sum += t.broken()
		default:
			sum += t.scatter.misfit(math.Log(x/y)-t.middle, 0)
		}
		n++
	}
	if n == 0 {
		return 0
	}
	return sum / n
}

func (t *typical) solve(*board, int) (float64, bool) { return 0, false }

// wildRatio is the probability per unit of a logarithm that a ratio lies anywhere.
const wildRatio = 0.02

// typical relates two rows by an envelope's range.
func (b *board) typical(says string, q envelope.Quantity, over, under []int) {
	r := envelope.For(b.sheet.Cell.Technology)[q]
	if r == nil || len(printed(over)) == 0 || len(printed(under)) == 0 {
		return
	}
	middle, k := usual(r, wildRatio)
	k.lo, k.hi, k.far = k.lo/middle, k.hi/middle, aFactor
	b.relate(says, &typical{over, under, math.Log(middle), k})
}

// usual makes of a range, the 1st to the 99th percentile, a middle and a scatter: wider than the list's, for sheets are of other years and the
// quantities hang together. A written bound may lie farther out than its scale.
func usual(r *envelope.Range, wild float64) (middle float64, k scatter) {
	const deviations = 1.65 // from the middle to a bound
	middle = r.Lo + r.LoScale
	return middle, scatter{lo: r.LoScale / deviations, hi: max(r.HiScale, r.Hi-middle) / deviations, wild: wild}
}

// alike holds when count of cells, Voc, Isc and area together are like the list's modules of that efficiency (see stc/cell-count).
type alike struct {
	like                       *envelope.Likeness
	pmax, voc, isc             []int
	length, width, count, beta int
}

func (a *alike) cells() []int {
	out := slices.Concat(a.pmax, a.voc, a.isc)
	return append(out, a.length, a.width, a.count, a.beta)
}

// leastLike is the squared distance from which a module is unlike any other, whatever more it is.
const leastLike = 26

func (a *alike) misfit(b *board) float64 {
	middle := func(row []int) float64 {
		var room [maxClasses]float64
		v := room[:0]
		for _, c := range row {
			if x := b.x[c]; !math.IsNaN(x) {
				v = append(v, x)
			}
		}
		if len(v) == 0 {
			return math.NaN()
		}
		return median(v)
	}
	p, voc, isc := middle(a.pmax), middle(a.voc), middle(a.isc)
	area := b.x[a.length] * b.x[a.width] * 1e-6
	n := rules.SeriesCells(b.sheet.Cell, b.x[a.count], voc)
	if math.IsNaN(p*voc*isc*area*b.x[a.count]) || n == 0 {
		return 0
	}
	if p <= 0 || voc <= 0 || isc <= 0 || area <= 0 || n < 0 {
		return leastLike / 2
	}
	theory := math.NaN()
	if beta := b.x[a.beta]; !math.IsNaN(beta) {
		theory = 1000 * (beta/100*voc/n - physics.SiliconVocSlope(voc/n))
	}
	d := a.like.Distance(p/area/10, voc/n, isc*n/area/10, theory)
	// the distance of a sound module is about 3; the last term is how a broken one may have any
	return -math.Log(math.Exp(-max(d-3, 0)/2) + math.Exp(-leastLike/2))
}

func (a *alike) solve(*board, int) (float64, bool) { return 0, false }

// median is the middle value; of an even count the lower of the two.
func median(v []float64) float64 {
	var room [maxClasses]float64
	w := append(room[:0], v...)
	slices.Sort(w)
	if len(w) == 0 {
		return 0
	}
	return w[(len(w)-1)/2]
}
