package diagnose

import "math"

// glazed holds when the module weighs its glass and what else is in a laminate with a frame.
type glazed struct{ mass, front, rear, length, width int }

// Soda-lime glass weighs 2.5 kg per m2 and mm; cells, encapsulant, frame and box some 3 kg per m2 (rule body/mass-area).
const (
	glassPerMM = 2.5
	otherMass  = 3.0
)

// glazed relates mass, glass and area, and glass to the thicknesses that are made.
func (b *board) glazed(length, width int) {
	g := &glazed{b.single("body", "mass_kg"), b.single("body", "front_glass_mm"), b.single("body", "rear_glass_mm"), length, width}
	if g.mass != none && g.front != none && length != none && width != none {
		b.relate("the module weighs its glass and the rest of a laminate", g)
	}
	for _, c := range []int{g.front, g.rear} {
		if c != none {
			b.relate("", &product{terms: []term{{c, 1}}, is: math.Log(2.5), scatter: scatter{lo: 0.3, hi: 0.3, wild: 0.01}})
		}
	}
}

func (g *glazed) cells() []int { return []int{g.mass, g.front, g.rear, g.length, g.width} }

func (g *glazed) misfit(b *board) float64 {
	glass := b.x[g.front] + known(b.x[g.rear], 0)
	r := math.Log(b.x[g.mass] / (b.x[g.length] * b.x[g.width] * 1e-6 * (glassPerMM*glass + otherMass)))
	if math.IsNaN(r) || math.IsInf(r, 0) {
		return 0
	}
	return scatter{lo: 0.1, hi: 0.13, wild: 0.02}.misfit(r, 0)
}

func (g *glazed) solve(*board, int) (float64, bool) { return 0, false }
