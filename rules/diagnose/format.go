package diagnose

import "math"

// sizes proposes another format's length, and sides in another unit together.
func (b *board) sizes(propose func(correction)) {
	length, width := b.single("body", "length_mm"), b.single("body", "width_mm")
	if length == none || width == none || !b.suspicious(length) {
		return
	}
	for _, f := range []float64{10, 25.4, 1000} {
		x, ok1 := significant(b.x[length]*f, b.cells[length].n.String())
		y, ok2 := significant(b.x[width]*f, b.cells[width].n.String())
		if ok1 && ok2 {
			propose(correction{mistake: Unit, edits: []edit{{length, x}, {width, y}}, prior: chance(Unit, unitWays)})
		}
	}
	for _, r := range b.of[length] {
		s, ok := b.rels[r].(*shared)
		if !ok || b.cost[r] < 1 {
			continue
		}
		for _, side := range []int{length, width} {
			v, ok := s.solve(b, side)
			if !ok || v <= 0 {
				continue
			}
			prior := chance(OtherFormat, 1) + b.formatRatio(side == length, b.x[side]/v)
			meant := b.knownNear(side == length, v)
			if len(meant) == 0 {
				meant = []float64{v}
			}
			for _, v := range meant {
				if n, ok := rounded(v, 0); ok {
					propose(correction{mistake: OtherFormat, edits: []edit{{side, n}}, prior: prior})
				}
			}
		}
	}
}

// knownNear are the sides of known sizes of these cells that the efficiency's rounding does not tell from v.
func (b *board) knownNear(long bool, v float64) (out []float64) {
	const within = 0.005
	for _, k := range b.knownSizes() {
		side := k[1]
		if long {
			side = k[0]
		}
		if math.Abs(side/v-1) < within {
			out = append(out, side)
		}
	}
	return out
}

// border is what frame and gaps add to the rows of cells, mm.
const border = 40

// formatRatio is the logarithm of the probability that a length is wrong by a ratio because it is the format's with one, two or three rows
// of cells more or less; or, one time in five, because it is of another cell size altogether.
func (b *board) formatRatio(long bool, ratio float64) float64 {
	const resolution = 0.002 // of the ratio, by the efficiency's rounding
	r := math.Log(ratio)
	p := 0.2 * resolution * math.Exp(-r*r/(2*0.15*0.15)) / (0.15 * math.Sqrt(2*math.Pi))
	n := b.x[b.single("cell", "count")]
	if n > 78 {
		n /= 2
	}
	width := b.x[b.single("body", "width_mm")]
	if long && n > 0 {
		// columns of cells whose pitch along the length is nearest to the pitch along the width
		length := b.x[b.single("body", "length_mm")] / ratio
		rows, off := 0.0, math.Inf(1)
		for _, columns := range []float64{2, 3, 4, 5, 6, 8} {
			if k := n / columns; k == math.Trunc(k) && math.Abs(math.Log(length/k/(width/columns))) < off {
				rows, off = k, math.Abs(math.Log(length/k/(width/columns)))
			}
		}
		pitch := (length - border) / max(rows, 1)
		for _, more := range []float64{-3, -2, -1, 1, 2, 3} {
			if rows == 0 {
				break
			}
			z := math.Log(ratio*length/((rows+more)*pitch+border)) / 0.012
			p += 0.8 / 6 * resolution / 0.012 / math.Sqrt(2*math.Pi) * math.Exp(-z*z/2)
		}
	}
	return math.Log(p + 1e-30)
}

// cellEfficiency proposes that the whole row of efficiencies is the cells': a few to some twenty per cent above Pmax over the area.
func (b *board) cellEfficiency(stc *table, propose func(correction)) {
	const resolution = 0.003
	var edits []edit
	var ratios []float64
	for _, c := range printed(stc.efficiency) {
		for _, r := range b.of[c] {
			s, ok := b.rels[r].(*shared)
			if !ok || b.cost[r] < 1 {
				continue
			}
			for i := range s.members {
				m := &s.members[i]
				if m.terms[0].cell != c {
					continue
				}
				if v, ok := m.solve(b, c); ok && v > 0 {
					if n, ok := rounded(v, b.cells[c].n.Decimals()); ok && n != b.cells[c].n {
						edits = append(edits, edit{c, n})
						ratios = append(ratios, b.x[c]/v)
					}
				}
			}
		}
	}
	if len(edits) == 0 || len(edits) < len(printed(stc.efficiency)) {
		return
	}
	// cells cover 0.83 to 0.97 of a module (design/domain.md 7.4), so theirs is 1.03 to 1.2 times the module's
	z := (median(ratios) - 1.11) / 0.045
	density := resolution / 0.045 / math.Sqrt(2*math.Pi) * math.Exp(-z*z/2)
	propose(correction{mistake: CellEfficiency, edits: edits, prior: chance(CellEfficiency, 1) + math.Log(density+1e-30)})
}
