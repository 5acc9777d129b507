// Package draw makes inline SVG for the program's pages: small charts and signs that take their colours from the page's style sheet,
// name themselves to a screen reader and escape whatever text they are given. It knows nothing of modules. It stands here instead of a
// plotting library because a library draws pictures: with fonts, colours and sizes of its own, and silent.
package draw

import (
	"fmt"
	"html"
	"html/template"
	"math"
	"strconv"
	"strings"
)

// SVG is a drawing under construction. Text and attributes are escaped on the way in.
type SVG struct{ b strings.Builder }

// Open begins an element. Attributes are names and values in turn; a value that is a number is written short.
func (s *SVG) Open(name string, attributes ...any) {
	s.tag(name, attributes)
	s.b.WriteByte('>')
}

// Empty is an element without content.
func (s *SVG) Empty(name string, attributes ...any) {
	s.tag(name, attributes)
	s.b.WriteString("/>")
}

// Close ends an element.
func (s *SVG) Close(name string) { fmt.Fprintf(&s.b, "</%s>", name) }

// Text is an element with a text.
func (s *SVG) Text(name, text string, attributes ...any) {
	s.Open(name, attributes...)
	s.b.WriteString(html.EscapeString(text))
	s.Close(name)
}

func (s *SVG) tag(name string, attributes []any) {
	s.b.WriteString("<" + name)
	for i := 0; i+1 < len(attributes); i += 2 {
		var value string
		switch v := attributes[i+1].(type) {
		case float64:
			value = Short(v)
		case string:
			value = v
		default:
			value = fmt.Sprint(v)
		}
		fmt.Fprintf(&s.b, ` %s="%s"`, attributes[i], html.EscapeString(value))
	}
}

// HTML is the drawing, for a template.
func (s *SVG) HTML() template.HTML { return template.HTML(s.b.String()) }

// Short writes a coordinate with one decimal at most; what is no number is 0, so that a drawing stays one.
func Short(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "0"
	}
	return strconv.FormatFloat(math.Round(v*10)/10+0, 'f', -1, 64)
}
