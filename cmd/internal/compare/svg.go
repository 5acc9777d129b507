package compare

import (
	"fmt"
	"html"
	"strings"

	"pvtally/cmd/internal/report"
	"pvtally/schema"
)

// hues are the options' colours: dark enough for white letters on them, apart from each other for colour-blind eyes as well (a test holds
// them to both). After the last they begin again, with other dashes and markers.
var hues = []string{"#14507a", "#c73d00", "#0b0b1b", "#996765", "#902dff", "#511500"}

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

// draw makes a picture of a plot's data.
func draw(p *Plot) string {
	switch {
	case len(p.Roofs) > 0:
		return drawRoofs(p)
	case len(p.Bars) > 0:
		return drawBars(p)
	}
	return drawLines(p)
}

// svg collects a picture.
type svg struct{ strings.Builder }

func (s *svg) open(p *Plot, width, height float64) {
	fmt.Fprintf(s, `<svg viewBox="0 0 %.0f %.0f" role="img" aria-label="%s">`, width, height, escape(p.Title+". "+p.Note))
}

func (s *svg) shut() string { return s.String() + "</svg>" }

func (s *svg) line(x1, y1, x2, y2 float64, attributes string) {
	fmt.Fprintf(s, `<line x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f" %s/>`, x1, y1, x2, y2, attributes)
}

func (s *svg) rect(x, y, w, h float64, attributes string) {
	fmt.Fprintf(s, `<rect x="%.1f" y="%.1f" width="%.1f" height="%.1f" %s/>`, x, y, w, h, attributes)
}

func (s *svg) text(x, y float64, anchor, attributes, words string) {
	fmt.Fprintf(s, `<text x="%.1f" y="%.1f" text-anchor="%s" %s>%s</text>`, x, y, anchor, attributes, escape(words))
}

func (s *svg) path(points [][2]float64, attributes string) {
	s.WriteString(`<polyline fill="none" points="`)
	for _, p := range points {
		fmt.Fprintf(s, "%.1f,%.1f ", p[0], p[1])
	}
	fmt.Fprintf(s, `" %s/>`, attributes)
}

// marker is a filled point whose shape differs from option to option.
func (s *svg) marker(x, y float64, id string) {
	fill := fmt.Sprintf(`fill="%s" stroke="#fff" stroke-width="1"`, hue(id))
	switch index(id) % 3 {
	case 0:
		fmt.Fprintf(s, `<circle cx="%.1f" cy="%.1f" r="5" %s/>`, x, y, fill)
	case 1:
		s.rect(x-4.5, y-4.5, 9, 9, fill)
	default:
		fmt.Fprintf(s, `<polygon points="%.1f,%.1f %.1f,%.1f %.1f,%.1f" %s/>`, x, y-6, x+6, y+5, x-6, y+5, fill)
	}
}

func escape(text string) string { return html.EscapeString(report.Plain(text)) }

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
