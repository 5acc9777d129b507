package report

import (
	"fmt"
	"html/template"
	"math"
	"slices"
	"strings"

	"pvtally/cmd/internal/draw"
	"pvtally/rules"
	"pvtally/schema"
)

// classLine is one quantity over the power classes, with the line that most of them lie on.
type classLine struct {
	Title string
	SVG   template.HTML
	Off   []string // what lies off it, in words
}

// classLines draws voltage and current at STC over power, where three classes or more print them: two points always lie on a line.
func (v *htmlSheet) classLines(s *Sheet) (list []classLine) {
	for _, q := range []struct {
		field string
		of    func(*schema.Electrical) schema.Number
	}{
		{"vmp_v", func(e *schema.Electrical) schema.Number { return e.Vmp }}, {"imp_a", func(e *schema.Electrical) schema.Number { return e.Imp }},
		{"voc_v", func(e *schema.Electrical) schema.Number { return e.Voc }}, {"isc_a", func(e *schema.Electrical) schema.Number { return e.Isc }},
	} {
		var points []linePoint
		for i := range s.Record.Models {
			e := &s.Record.Models[i].STC
			if n := q.of(e); !n.IsZero() && !e.Pmax.IsZero() {
				points = append(points, linePoint{class: i, pointer: fmt.Sprintf("/models/%d/stc/%s", i, q.field), at: draw.Point{X: e.Pmax.Float(), Y: n.Float()}, text: n.String()})
			}
		}
		if line, ok := v.classLine(s, q.field, points); ok {
			list = append(list, line)
		}
	}
	return list
}

type linePoint struct {
	class   int
	pointer string
	at      draw.Point
	text    string
}

func (v *htmlSheet) classLine(s *Sheet, field string, points []linePoint) (out classLine, ok bool) {
	slope, height, ok := middleLine(points)
	if !ok {
		return out, false
	}
	d, _ := schema.Describe("/models/0/stc/" + field)
	out.Title = fmt.Sprintf("%s over power", d.Title)
	c := draw.Chart{ID: v.ID + "-line-" + strings.ReplaceAll(field, "_", "-"), Title: out.Title + " at STC", Width: 310, Height: 240, X: draw.Axis{Label: "Pmax (W)"}, Y: draw.Axis{Label: d.Title + " (" + d.Unit + ")"}}
	var xs, ys []float64
	for _, p := range points {
		xs, ys = append(xs, p.at.X), append(ys, p.at.Y, slope*p.at.X+height)
	}
	wouldBe := v.corrections(s)
	for _, p := range points {
		if n, ok := wouldBe[p.pointer]; ok {
			ys = append(ys, n.Float())
		}
	}
	c.X, c.Y = draw.Around(c.X.Label, xs...), draw.Around(c.Y.Label, ys...)
	c.Lines = []draw.Line{{Class: "through", Points: []draw.Point{{X: c.X.Lo, Y: slope*c.X.Lo + height}, {X: c.X.Hi, Y: slope*c.X.Hi + height}}}}
	for _, p := range points {
		name := Plain(className(s.Record, p.class))
		m := draw.Mark{Point: p.at, Shape: draw.Dot, Class: "right", Title: name + ": " + p.text + " " + d.Unit}
		if v.stands(p.pointer) {
			m.Shape, m.Class, m.Label = draw.Diamond, "wrong", p.text
			says := fmt.Sprintf("%s: printed %s %s, the line gives %s", name, p.text, d.Unit, fixed(slope*p.at.X+height, decimalsOf(p.text)))
			if n, ok := wouldBe[p.pointer]; ok {
				says += fmt.Sprintf(", the suspect would be %s", signed(n))
				c.Marks = append(c.Marks, draw.Mark{Point: draw.Point{X: p.at.X, Y: n.Float()}, Shape: draw.Ring, Class: "wouldbe", Title: name + " would be " + n.String() + " " + d.Unit})
			}
			out.Off = append(out.Off, says)
		}
		c.Marks = append(c.Marks, m)
	}
	c.Desc = strings.Join(out.Off, "; ")
	if c.Desc == "" {
		c.Desc = fmt.Sprintf("All %d classes, from %s to %s %s; none is in question.", len(points), points[0].text, points[len(points)-1].text, d.Unit)
	}
	out.SVG = c.SVG()
	return out, true
}

// stands tells that a value is in question: a suspect, or what a warning or an error judges.
func (v *htmlSheet) stands(pointer string) bool {
	m := v.marks[pointer]
	return m != nil && (m.suspect > 0 || m.judged && m.level >= rules.Warning)
}

// corrections are what the suspects would be, by pointer.
func (v *htmlSheet) corrections(s *Sheet) map[string]schema.Number {
	all := map[string]schema.Number{}
	for _, suspect := range slices.Backward(s.Suspects) { // the likeliest has the last word
		for _, c := range suspect.Cells {
			if !c.WouldBe.IsZero() {
				all[c.Field] = c.WouldBe
			}
		}
	}
	return all
}

// middleLine is the line with the median of the slopes between any two points, at the median height: up to a third of the points may lie
// anywhere without moving it much. Source: Sen, J. Am. Stat. Assoc. 63 (1968) 1379, DOI 10.1080/01621459.1968.10480934. It is for the
// eye; what lies off the line is judged by the rules.
func middleLine(points []linePoint) (slope, height float64, ok bool) {
	if len(points) < 3 || len(points) > 200 {
		return 0, 0, false
	}
	var slopes, heights []float64
	for i, a := range points {
		for _, b := range points[:i] {
			if a.at.X != b.at.X {
				slopes = append(slopes, (a.at.Y-b.at.Y)/(a.at.X-b.at.X))
			}
		}
	}
	if len(slopes) == 0 {
		return 0, 0, false
	}
	slope = median(slopes)
	for _, p := range points {
		heights = append(heights, p.at.Y-slope*p.at.X)
	}
	height = median(heights)
	return slope, height, !math.IsNaN(height) && !math.IsInf(height, 0)
}

func median(list []float64) float64 {
	slices.Sort(list)
	n := len(list)
	if n%2 == 1 {
		return list[n/2]
	}
	return (list[n/2-1] + list[n/2]) / 2
}

func decimalsOf(literal string) int {
	n, err := schema.ParseNumber(literal)
	if err != nil {
		return 2
	}
	return min(n.Decimals(), 4)
}
