package report

import (
	"fmt"
	"strings"
)

// Forms is a table of the forms in which a command shows its results, in the order in which they are listed; String is a form's name.
type Forms[F fmt.Stringer] []F

// Lookup finds a form by its name.
func (list Forms[F]) Lookup(name string) (f F, ok bool) {
	for _, f := range list {
		if f.String() == name {
			return f, true
		}
	}
	return f, false
}

// Names lists the forms for a message.
func (list Forms[F]) Names() string {
	var names []string
	for _, f := range list {
		names = append(names, f.String())
	}
	return strings.Join(names, ", ")
}
