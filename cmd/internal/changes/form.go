package changes

import (
	"io"

	"pvtally/cmd/internal/report"
)

// Form is one way to show what changed.
type Form struct {
	Name  string
	Write func(w io.Writer, d *Doc, colour bool) error
}

// String is the form's name.
func (f Form) String() string { return f.Name }

// forms in the order in which they are listed.
var forms = report.Forms[Form]{
	{"text", writeText},
	{"json", func(w io.Writer, d *Doc, _ bool) error { return report.EncodeJSON(w, d) }},
	{"markdown", writeMarkdown},
	{"html", writeHTML},
}

// Lookup finds a form by its name.
func Lookup(name string) (Form, bool) { return forms.Lookup(name) }

// Names lists the forms for a message.
func Names() string { return forms.Names() }
