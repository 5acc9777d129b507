package changes

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"pvtally/cmd/internal/report"
	"pvtally/rules/revision"
)

// maxMarkdown bounds the report: comment fields of code hosts take some 65,000 characters.
const maxMarkdown = 60_000

// writeMarkdown is for a comment on a change.
func writeMarkdown(w io.Writer, d *Doc, _ bool) error {
	md := report.MarkdownText
	var b bytes.Buffer
	fmt.Fprintf(&b, "### %s → %s\n\n%s\n", md(d.Old), md(d.New), md(d.answer()))
	for i := range d.Sheets {
		markdownSheet(&b, &d.Sheets[i], len(d.Sheets) > 1)
	}
	left := d.Left
	if len(d.Text) > 0 {
		b.WriteString("\n#### Text that moved\n\n| page | old | new |\n| --- | --- | --- |\n")
	}
	for _, m := range d.Text {
		row := fmt.Sprintf("| %d | %s | %s |\n", m.Page, md(m.Old), md(m.New))
		if b.Len()+len(row) > maxMarkdown {
			left++
			continue
		}
		b.WriteString(row)
	}
	if left > 0 {
		fmt.Fprintf(&b, "\nNo room here for %s more.\n", plural(left, "place"))
	}
	if d.Caution != "" {
		fmt.Fprintf(&b, "\n**Caution:** %s\n", md(d.Caution))
	}
	_, err := w.Write(b.Bytes())
	return err
}

func markdownSheet(b *bytes.Buffer, s *Sheet, named bool) {
	md := report.MarkdownText
	if s.Only != "" {
		fmt.Fprintf(b, "\n%s\n", md(s.only()))
		return
	}
	if len(s.Changes)+len(s.Classes) == 0 {
		return
	}
	if named {
		fmt.Fprintf(b, "\n#### %s\n", md(s.Series))
	}
	if s.Silent {
		fmt.Fprintf(b, "\n%s\n", silent)
	}
	rows := 0
	for _, e := range revision.Effects {
		for _, c := range s.with(e) {
			row := fmt.Sprintf("| %s | %s | %s | %s | %s | %s |\n", e, md(c.Name), md(c.value(c.Old)), md(c.value(c.New)), md(c.size()), md(c.Why))
			if rows++; b.Len()+len(row) > maxMarkdown {
				continue
			}
			if rows == 1 {
				b.WriteString("\n| effect | value | old | new | change | so |\n| --- | --- | --- | --- | --- | --- |\n")
			}
			b.WriteString(row)
		}
	}
	if len(s.Classes) > 0 {
		var list []string
		for _, c := range s.Classes {
			list = append(list, md(c.says()))
		}
		fmt.Fprintf(b, "\nPower classes: %s.\n", strings.Join(list, ", "))
	}
	for i := range s.Strings {
		line := &s.Strings[i]
		fmt.Fprintf(b, "\n- **strings get shorter**: %s up to %s: %s", md(line.Model), line.limit(), md(strings.Join(line.falls(), "; ")))
	}
	if len(s.Strings) > 0 {
		b.WriteByte('\n')
	}
}
