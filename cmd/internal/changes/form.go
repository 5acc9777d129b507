package changes

import (
	"io"
	"strings"

	"pvtally/cmd/internal/report"
)

// Form is one way to show what changed.
type Form struct {
	Name  string
	Write func(w io.Writer, d *Doc, colour bool) error
}

// forms in the order in which they are listed.
var forms = []Form{
	{"text", writeText},
	{"json", func(w io.Writer, d *Doc, _ bool) error { return report.EncodeJSON(w, d) }},
	{"markdown", writeMarkdown},
	{"html", writeHTML},
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
