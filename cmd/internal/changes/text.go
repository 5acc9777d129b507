package changes

import (
	"bytes"
	"fmt"
	"io"

	"pvtally/cmd/internal/report"
	"pvtally/rules/revision"
)

// writeText is for a person at a terminal. Effects are words; colour only repeats them.
func writeText(w io.Writer, d *Doc, colour bool) error {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s → %s\n%s\n", report.Plain(d.Old), report.Plain(d.New), d.answer())
	for i := range d.Sheets {
		textSheet(&b, &d.Sheets[i], len(d.Sheets) > 1, colour)
	}
	if len(d.Text) > 0 {
		b.WriteString("\ntext that moved\n")
	}
	for _, m := range d.Text {
		at := fmt.Sprintf("page %d", m.Page)
		for _, side := range []struct{ sign, text string }{{"-", m.Old}, {"+", m.New}} {
			if side.text != "" {
				fmt.Fprintf(&b, "  %-8s %s %s\n", at, side.sign, report.Plain(side.text))
				at = ""
			}
		}
	}
	if d.Left > 0 {
		fmt.Fprintf(&b, "  and %s more\n", plural(d.Left, "place"))
	}
	if d.Caution != "" {
		fmt.Fprintf(&b, "\ncaution: %s\n", d.Caution)
	}
	_, err := w.Write(b.Bytes())
	return err
}

func textSheet(b *bytes.Buffer, s *Sheet, named, colour bool) {
	if s.Only != "" {
		fmt.Fprintf(b, "\n%s\n", report.Plain(s.only()))
		return
	}
	if len(s.Changes)+len(s.Classes) == 0 {
		return
	}
	b.WriteByte('\n')
	if named {
		fmt.Fprintf(b, "%s\n", report.Plain(s.Series))
	}
	if s.Silent {
		b.WriteString(silent + "\n")
	}
	for _, e := range revision.Effects {
		for _, c := range s.with(e) {
			fmt.Fprintf(b, "  %s  %s: %s → %s", inked(e, colour), report.Plain(c.Name), report.Plain(c.value(c.Old)), report.Plain(c.value(c.New)))
			if size := c.size(); size != "" {
				fmt.Fprintf(b, " (%s)", size)
			}
			b.WriteByte('\n')
			if c.Why != "" {
				fmt.Fprintf(b, "           %s\n", c.Why)
			}
		}
	}
	for _, c := range s.Classes {
		fmt.Fprintf(b, "  class    %s\n", report.Plain(c.says()))
	}
	for i := range s.Strings {
		line := &s.Strings[i]
		fmt.Fprintf(b, "  %s  %s in strings up to %s\n", inked("strings", colour), report.Plain(line.Model), line.limit())
		for _, f := range line.falls() {
			fmt.Fprintf(b, "           %s\n", f)
		}
	}
}

// inked is an effect's word in a column, coloured on a terminal.
func inked(e revision.Effect, colour bool) string {
	word := fmt.Sprintf("%-7s", e)
	ink := map[revision.Effect]string{revision.Hurts: "\x1b[1;31m", "strings": "\x1b[1;31m", revision.Depends: "\x1b[1;33m", revision.Helps: "\x1b[1;36m"}[e]
	if !colour || ink == "" {
		return word
	}
	return ink + word + "\x1b[0m"
}
