package rules

import (
	"fmt"
	"strings"
)

var paperUnresolved = &Rule{
	ID:      "paper/unresolved",
	Title:   "nothing on the sheet was left undecided",
	Why:     "What the reader saw and would not decide is no value: somebody has to look at the page and settle it.",
	Formula: "unresolved = ∅",
	Sources: []Source{{"The reader's own refusals", "common practice"}},
	Levels:  []Threshold{{Note, "a field is unresolved"}},
	Needs:   []string{"unresolved[]"},
	Check: func(p *Pass) {
		for i := range p.Sheet.Unresolved {
			u := &p.Sheet.Unresolved[i]
			text := fmt.Sprintf("%q could not be decided: %s", u.Label, u.Why)
			if u.Label == "" {
				text = u.Field + " could not be decided: " + u.Why
			}
			if len(u.Candidates) > 0 {
				text += " (" + strings.Join(u.Candidates, ", ") + ")"
			}
			if u.Page > 0 {
				text += fmt.Sprintf(", page %d", u.Page)
			}
			p.Report(Note, Finding{Message: text, Fields: []string{u.Field}})
		}
	},
}
