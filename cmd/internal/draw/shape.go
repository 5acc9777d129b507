package draw

import (
	"math"
	"strings"
)

// Shape is how a mark looks: told apart without colour.
type Shape int

// The shapes.
const (
	Dot Shape = iota
	Square
	Triangle
	Diamond
	Ring
)

// size is the half width of a mark.
const size = 4.5

func (m Shape) draw(s *SVG, x, y float64) {
	switch m {
	case Dot:
		s.Empty("circle", "cx", x, "cy", y, "r", size)
	case Ring:
		s.Empty("circle", "class", "hollow", "cx", x, "cy", y, "r", size+1.5)
	case Square:
		s.Empty("rect", "x", x-size, "y", y-size, "width", 2*size, "height", 2*size)
	case Triangle:
		s.Empty("path", "d", polygon(x, y+1, size+2, 3, -90))
	case Diamond:
		s.Empty("path", "d", polygon(x, y, size+3, 4, -90))
	}
}

// polygon is a regular one round a centre, its first corner at an angle in degrees.
func polygon(x, y, r float64, n int, first float64) string {
	var b strings.Builder
	for i := range n {
		a := (first + 360*float64(i)/float64(n)) * math.Pi / 180
		b.WriteString(map[bool]string{true: "M", false: "L"}[i == 0])
		b.WriteString(Short(x+r*math.Cos(a)) + " " + Short(y+r*math.Sin(a)))
	}
	b.WriteByte('Z')
	return b.String()
}
