package compare

import (
	"io"

	"pvtally/cmd/internal/report"
)

// Form is one way to show a comparison.
type Form struct {
	Name   string
	Binary bool // not for a terminal
	Write  func(io.Writer, *Doc) error
}

// String is the form's name.
func (f Form) String() string { return f.Name }

// forms in the order in which they are listed.
var forms = report.Forms[Form]{
	{Name: "text", Write: writeText},
	{Name: "json", Write: func(w io.Writer, d *Doc) error { return report.EncodeJSON(w, d) }},
	{Name: "markdown", Write: writeMarkdown},
	{Name: "csv", Write: writeCSV},
	{Name: "xlsx", Write: writeXLSX, Binary: true},
	{Name: "html", Write: writeHTML},
}

// Lookup finds a form by its name.
func Lookup(name string) (Form, bool) { return forms.Lookup(name) }

// Names lists the forms for a message.
func Names() string { return forms.Names() }
