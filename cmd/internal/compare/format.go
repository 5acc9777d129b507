package compare

import (
	"io"
	"strings"

	"pvtally/cmd/internal/report"
)

// Form is one way to show a comparison.
type Form struct {
	Name   string
	Binary bool // not for a terminal
	Write  func(io.Writer, *Doc) error
}

// forms in the order in which they are listed.
var forms = []Form{
	{Name: "text", Write: writeText},
	{Name: "json", Write: func(w io.Writer, d *Doc) error { return report.EncodeJSON(w, d) }},
	{Name: "markdown", Write: writeMarkdown},
	{Name: "csv", Write: writeCSV},
	{Name: "xlsx", Write: writeXLSX, Binary: true},
	{Name: "html", Write: writeHTML},
}

// Lookup finds a form by its name.
func Lookup(name string) (Form, bool) {
	for _, f := range forms {
		if f.Name == name {
			return f, true
		}
	}
	return Form{}, false
}

// Names lists the forms for a message.
func Names() string {
	var names []string
	for _, f := range forms {
		names = append(names, f.Name)
	}
	return strings.Join(names, ", ")
}
