package page

import "math"

// matrix is PDF's affine map: x' = a·x + c·y + e, y' = b·x + d·y + f (ISO 32000-1, 8.3.3).
type matrix struct{ a, b, c, d, e, f float64 }

var identity = matrix{a: 1, d: 1}

// then applies m first and n afterwards.
func (m matrix) then(n matrix) matrix {
	return matrix{
		a: m.a*n.a + m.b*n.c, b: m.a*n.b + m.b*n.d,
		c: m.c*n.a + m.d*n.c, d: m.c*n.b + m.d*n.d,
		e: m.e*n.a + m.f*n.c + n.e, f: m.e*n.b + m.f*n.d + n.f,
	}
}

func (m matrix) point(x, y float64) (float64, float64) {
	return m.a*x + m.c*y + m.e, m.b*x + m.d*y + m.f
}

// scale is the factor by which the map enlarges lengths, averaged over directions.
func (m matrix) scale() float64 { return math.Sqrt(math.Abs(m.a*m.d - m.b*m.c)) }

// readMatrix takes the FS_MATRIX that a call left in the scratch block.
func (g *guest) readMatrix(n uint32) matrix {
	return matrix{g.readF32(n), g.readF32(n + 4), g.readF32(n + 8), g.readF32(n + 12), g.readF32(n + 16), g.readF32(n + 20)}
}
