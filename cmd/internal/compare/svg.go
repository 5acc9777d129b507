package compare

import (
	"fmt"
	"html/template"
	"strings"

	"pvtally/cmd/internal/draw"
	"pvtally/cmd/internal/report"
	"pvtally/schema"
)

// hues are the options' colours: dark enough for white letters on them, apart from each other for colour-blind eyes as well (a test holds
// them to both). After the last they begin again, with other dashes and markers.
var hues = []string{"#0a5380", "#c73d00", "#0b0b1b", "#996765", "#902dff", "#511500"}

// shades are the parts of a bar, from dark to light: told apart by lightness alone.
var shades = []string{"#123a5a", "#2a6a9c", "#6b9fc6", "#a9c8de", "#d3e3ee", "#f1f6f9"}

// dashes tell lines apart without colour.
var dashes = []string{"", "9 4", "2 4", "12 4 2 4", "6 6", "14 6"}

func hue(id string) string { return hues[index(id)%len(hues)] }

func dash(id string) string {
	i := index(id)
	return dashes[(i+i/len(hues))%len(dashes)]
}

// index is an option's place by its letter.
func index(id string) int {
	if id == "" || id[0] < 'A' {
		return 0
	}
	return int(id[0] - 'A')
}

// picture makes a picture of a plot's data.
func picture(p *Plot) template.HTML {
	var s svg
	switch {
	case len(p.Roofs) > 0:
		s.roofs(p)
	case len(p.Bars) > 0:
		s.bars(p)
	default:
		s.lines(p)
	}
	s.Close("svg")
	return s.HTML()
}

// svg is a picture under construction.
type svg struct{ draw.SVG }

func (s *svg) open(p *Plot, width, height float64) {
	label := p.Title
	if p.Note != "" {
		label += ". " + p.Note
	}
	s.Open("svg", "viewBox", fmt.Sprintf("0 0 %.0f %.0f", width, height), "role", "img", "aria-label", report.Plain(label))
}

func (s *svg) line(x1, y1, x2, y2 float64, look ...any) {
	s.Empty("line", append([]any{"x1", x1, "y1", y1, "x2", x2, "y2", y2}, look...)...)
}

func (s *svg) rect(x, y, w, h float64, look ...any) {
	s.Empty("rect", append([]any{"x", x, "y", y, "width", w, "height", h}, look...)...)
}

func (s *svg) words(x, y float64, anchor, words string, look ...any) {
	s.Text("text", report.Plain(words), append([]any{"x", x, "y", y, "text-anchor", anchor}, look...)...)
}

// upright is a text that is read from below.
func (s *svg) upright(x, y float64, words string) {
	s.words(0, 0, "middle", words, "transform", fmt.Sprintf("translate(%.1f %.1f) rotate(-90)", x, y))
}

func (s *svg) path(points [][2]float64, look ...any) {
	var at []string
	for _, p := range points {
		at = append(at, draw.Short(p[0])+","+draw.Short(p[1]))
	}
	s.Empty("polyline", append([]any{"fill", "none", "points", strings.Join(at, " ")}, look...)...)
}

// marker is a filled point whose shape differs from option to option.
func (s *svg) marker(x, y float64, id string) {
	look := []any{"fill", hue(id), "stroke", "#fff", "stroke-width", 1}
	switch index(id) % 3 {
	case 0:
		s.Empty("circle", append([]any{"cx", x, "cy", y, "r", 5}, look...)...)
	case 1:
		s.rect(x-4.5, y-4.5, 9, 9, look...)
	default:
		s.Empty("polygon", append([]any{"points", fmt.Sprintf("%.1f,%.1f %.1f,%.1f %.1f,%.1f", x, y-6, x+6, y+5, x-6, y+5)}, look...)...)
	}
}

// The pictures' own inks: frames and soft words, grids, grounds.
const (
	softInk   = "#475563"
	darkInk   = "#15202b"
	gridInk   = "#dfe5ea"
	roofPaint = "#e6eaee"
)

var bold = []any{"font-weight", 700}

// scale maps an axis to the screen.
type scale struct{ lo, hi, from, to float64 }

func (a *Axis) scale(from, to float64) scale {
	return scale{a.Ticks[0].Float(), a.Ticks[len(a.Ticks)-1].Float(), from, to}
}

func (s scale) at(v float64) float64 { return s.from + (v-s.lo)/(s.hi-s.lo)*(s.to-s.from) }

func (s scale) of(n schema.Number) float64 { return s.at(n.Float()) }

func (a *Axis) title() string {
	if a.Unit == "" {
		return a.Label
	}
	return a.Label + ", " + a.Unit
}
