package draw

import (
	"html/template"
	"strings"
)

// Chart is lines and points over two axes, Width by Height in its own units; the page scales it, letters and all. Classes are of the page's style sheet: a line's class gives it colour and dashes, a mark's its
// colour. What a chart says must stand in words beside it as well: Desc is for those who do not see it.
type Chart struct {
	ID, Title, Desc string
	Width, Height   float64
	X, Y            Axis
	Lines           []Line
	Marks           []Mark
}

// Line goes through points.
type Line struct {
	Class  string
	Points []Point
}

// Point is a place on the chart, in the axes' units.
type Point struct{ X, Y float64 }

// Mark is a point of its own, with a label where Label is not empty.
type Mark struct {
	Point
	Shape Shape
	Class string
	Label string
	Title string // what a pointer that rests on it is told
}

// The margins round the axes.
const left, right, top, foot = 66.0, 14.0, 14.0, 46.0

// SVG draws the chart.
func (c *Chart) SVG() template.HTML {
	var s SVG
	s.Open("svg", "class", "chart", "viewBox", "0 0 "+Short(c.Width)+" "+Short(c.Height), "role", "img", "aria-labelledby", c.ID+"-t", "aria-describedby", c.ID+"-d")
	s.Text("title", c.Title, "id", c.ID+"-t")
	s.Text("desc", c.Desc, "id", c.ID+"-d")
	c.axes(&s)
	for _, l := range c.Lines {
		var path strings.Builder
		for i, p := range l.Points {
			path.WriteString(map[bool]string{true: "M", false: "L"}[i == 0])
			path.WriteString(Short(c.x(p.X)) + " " + Short(c.y(p.Y)))
		}
		s.Empty("path", "class", "line "+l.Class, "d", path.String())
	}
	for _, m := range c.Marks {
		x, y := c.x(m.X), c.y(m.Y)
		s.Open("g", "class", "mark "+m.Class)
		if m.Title != "" {
			s.Text("title", m.Title)
		}
		m.Shape.draw(&s, x, y)
		if m.Label != "" {
			c.label(&s, x, y, m.Label)
		}
		s.Close("g")
	}
	s.Close("svg")
	return s.HTML()
}

// label stands beside its mark, on the side that has room.
func (c *Chart) label(s *SVG, x, y float64, text string) {
	dx, anchor := 9.0, "start"
	if x > c.Width*0.62 {
		dx, anchor = -9, "end"
	}
	dy := -7.0
	if y < top+22 {
		dy = 17
	}
	s.Text("text", text, "class", "label", "x", x+dx, "y", y+dy, "text-anchor", anchor)
}

func (c *Chart) x(v float64) float64 {
	return left + (c.Width-left-right)*share(v, c.X)
}

func (c *Chart) y(v float64) float64 {
	return c.Height - foot - (c.Height-top-foot)*share(v, c.Y)
}

func share(v float64, a Axis) float64 {
	if a.Hi <= a.Lo {
		return 0
	}
	return min(max((v-a.Lo)/(a.Hi-a.Lo), -0.05), 1.05)
}

func (c *Chart) axes(s *SVG) {
	bottom := c.Height - foot
	at, text := c.X.ticks()
	for i, v := range at {
		x := c.x(v)
		s.Empty("path", "class", "grid", "d", "M"+Short(x)+" "+Short(top)+"V"+Short(bottom))
		s.Text("text", text[i], "class", "tick", "x", x, "y", bottom+16, "text-anchor", "middle")
	}
	at, text = c.Y.ticks()
	for i, v := range at {
		y := c.y(v)
		s.Empty("path", "class", "grid", "d", "M"+Short(left)+" "+Short(y)+"H"+Short(c.Width-right))
		s.Text("text", text[i], "class", "tick", "x", left-7, "y", y+4, "text-anchor", "end")
	}
	s.Empty("path", "class", "axis", "d", "M"+Short(left)+" "+Short(top)+"V"+Short(bottom)+"H"+Short(c.Width-right))
	s.Text("text", c.X.Label, "class", "name", "x", (left+c.Width-right)/2, "y", c.Height-8, "text-anchor", "middle")
	s.Text("text", c.Y.Label, "class", "name", "x", 0, "y", 0, "text-anchor", "middle",
		"transform", "translate(13 "+Short((top+bottom)/2)+") rotate(-90)")
}
