package compare

import (
	"bytes"
	_ "embed"
	"html/template"
	"io"

	"pvtally/cmd/internal/report"
)

//go:embed page.html
var pageHTML string

//go:embed page.css
var pageCSS string

// page is the one page; its texts come from the document, escaped by the template.
var page = template.Must(template.New("page").Funcs(template.FuncMap{
	"plain":   report.Plain,
	"css":     func() template.CSS { return template.CSS(pageCSS) },
	"draw":    func(p Plot) template.HTML { return picture(&p) },
	"about":   func(o Option) string { return o.about() },
	"words":   func(g Given) string { return g.words() },
	"against": func(c Cell) string { return c.against() },
	"title":   func(r Row) string { return r.title() },
	"hue":     hue,
}).Parse(pageHTML))

// writeHTML writes one self-contained page: no network, no scripts.
func writeHTML(w io.Writer, d *Doc) error {
	var b bytes.Buffer
	if err := page.Execute(&b, d); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}
