package site

import "math"

// Area is a plane that takes modules, in m: Width along the eaves, Depth up the slope, and the strips along its edges that stay free.
type Area struct {
	Width, Depth              float64
	Eaves, Ridge, Left, Right float64
}

// Inner is what the strips leave, in m; not positive where they leave nothing.
func (a Area) Inner() (width, depth float64) {
	return a.Width - a.Left - a.Right, a.Depth - a.Eaves - a.Ridge
}

// Racking is how modules are put together: gaps in m between neighbours in a row and between rows, rails under each row, how far they
// stand out at each end in m, their mass in kg/m.
type Racking struct {
	Gap, RowGap  float64
	RailsPerRow  int
	Overhang     float64
	MassPerMetre float64
}

// Layout is modules of one orientation in rows along the eaves. Lengths in m.
type Layout struct {
	Landscape bool
	Along, Up float64 // one module's sides along the row and up the slope
	Columns   int     // that fit into a row; 0 where no area is given
	Rows      int     // that fit above each other; 0 where no area is given
	Counts    []int   // modules in each row used, from the eaves up
	Rail      float64 // length of all rails
}

// Fits is how many modules the area takes so.
func (l Layout) Fits() int { return l.Columns * l.Rows }

// Used is how many modules lie.
func (l Layout) Used() int {
	n := 0
	for _, c := range l.Counts {
		n += c
	}
	return n
}

// Size is what the rows cover, in m.
func (l Layout) Size(r Racking) (width, depth float64) {
	if len(l.Counts) == 0 {
		return 0, 0
	}
	widest := float64(l.Counts[0])
	rows := float64(len(l.Counts))
	return widest*l.Along + (widest-1)*r.Gap, rows*l.Up + (rows-1)*r.RowGap
}

// maxFit bounds how many modules a layout counts: beyond it no roof is meant.
const maxFit = 1e7

// fit is a layout's grid on an area; l and w are the module's sides in m.
func fit(l, w float64, landscape bool, a Area, r Racking) Layout {
	lay := Layout{Landscape: landscape, Along: w, Up: l}
	if landscape {
		lay.Along, lay.Up = l, w
	}
	width, depth := a.Inner()
	lay.Columns = int(min(max(down((width+r.Gap)/(lay.Along+r.Gap)), 0), maxFit))
	lay.Rows = int(min(max(down((depth+r.RowGap)/(lay.Up+r.RowGap)), 0), maxFit))
	return lay
}

// fill lays n modules, at most as many as fit, in the fewest rows and these as equal as they can be.
func (l Layout) fill(n int, r Racking) Layout {
	n = min(n, l.Fits())
	if n < 1 {
		return l
	}
	rows := int(up(float64(n) / float64(l.Columns)))
	l.Counts = make([]int, rows)
	for i := range l.Counts {
		l.Counts[i] = n / rows
		if i < n%rows {
			l.Counts[i]++
		}
	}
	l.Rail = rail(l.Counts, l.Along, r)
	return l
}

func rail(counts []int, along float64, r Racking) float64 {
	sum := 0.0
	for _, c := range counts {
		sum += float64(r.RailsPerRow) * (float64(c)*along + float64(c-1)*r.Gap + 2*r.Overhang)
	}
	return sum
}

// Lay lays n modules on an area in portrait (the long side up the slope) and in landscape. best is the one to take: the one that takes
// more of them, of two alike the one with less rail.
func (m *Module) Lay(n int, a Area, r Racking) (best, portrait, landscape Layout, why string) {
	if why = Missing(m.Length, m.Width); why != "" {
		return best, portrait, landscape, why
	}
	l, w := m.Length.V/1000, m.Width.V/1000
	if !(l > 0 && w > 0) {
		return best, portrait, landscape, "a side of the module is printed as nothing"
	}
	portrait = fit(l, w, false, a, r).fill(n, r)
	landscape = fit(l, w, true, a, r).fill(n, r)
	best = portrait
	if p, q := portrait.Used(), landscape.Used(); q > p || q == p && landscape.Rail < portrait.Rail {
		best = landscape
	}
	return best, portrait, landscape, ""
}

// Row lays n modules in one row in portrait, for when no area is given.
func (m *Module) Row(n int, r Racking) (Layout, string) {
	if why := Missing(m.Length, m.Width); why != "" {
		return Layout{}, why
	}
	lay := Layout{Along: m.Width.V / 1000, Up: m.Length.V / 1000, Counts: []int{n}}
	lay.Rail = rail(lay.Counts, lay.Along, r)
	return lay, ""
}

// Needed is the whole count of modules that reach a target in W.
func (m *Module) Needed(target float64) Value {
	if !m.Pmax.Known() {
		return m.Pmax
	}
	if !(m.Pmax.V > 0) || !(target > 0) || math.IsInf(target, 0) {
		return None("a target of %g W and modules of %g W make no count", target, m.Pmax.V)
	}
	n := up(target / m.Pmax.V)
	if n > maxFit {
		return None("a target of %g W is beyond what this program counts", target)
	}
	return Exactly(max(n, 1))
}
