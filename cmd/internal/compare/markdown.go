package compare

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"pvtally/cmd/internal/report"
)

// writeMarkdown is for a mail or a page of notes: the answer in bold, then the same tables with the arithmetic beside them.
func writeMarkdown(w io.Writer, d *Doc) error {
	var b bytes.Buffer
	md := report.MarkdownText
	fmt.Fprintf(&b, "**%s**\n\n", md(d.Answer))
	for _, o := range d.Options {
		fmt.Fprintf(&b, "- **%s**: %s\n", o.ID, md(o.about()))
		for _, n := range o.Notes {
			fmt.Fprintf(&b, "  - %s\n", md(n))
		}
	}
	for _, u := range d.LeftOut {
		fmt.Fprintf(&b, "- left out: %s\n", md(u.String()))
	}
	b.WriteByte('\n')
	for _, m := range d.More {
		fmt.Fprintf(&b, "%s\n\n", md(m))
	}
	b.WriteString("### The site\n\n| | | origin |\n| --- | --- | --- |\n")
	for _, g := range d.Site {
		fmt.Fprintf(&b, "| %s | %s | %s |\n", md(g.Label), md(g.words()), md(g.Origin))
	}
	for i := range d.Sections {
		markdownSection(&b, d, &d.Sections[i])
	}
	_, err := w.Write(b.Bytes())
	return err
}

func markdownSection(b *bytes.Buffer, d *Doc, s *Section) {
	md := report.MarkdownText
	fmt.Fprintf(b, "\n### %s\n\n", md(s.Title))
	if len(s.Rows) > 0 {
		head := "| |"
		for i, o := range d.Options {
			head += " " + o.ID + " |"
			if i > 0 {
				head += " against A |"
			}
		}
		fmt.Fprintf(b, "%s arithmetic |\n|%s\n", head, strings.Repeat(" --- |", strings.Count(head, "|")))
		for _, r := range s.Rows {
			line := "| " + md(r.title()) + " |"
			for i, c := range r.Cells {
				line += " " + md(c.words()) + " |"
				if i > 0 {
					line += " " + md(c.against()) + " |"
				}
			}
			fmt.Fprintf(b, "%s %s |\n", line, md(r.How))
		}
	}
	for _, n := range s.Notes {
		fmt.Fprintf(b, "\n%s\n", md(n))
	}
	if s.Caution != "" {
		fmt.Fprintf(b, "\n**Caution:** %s\n", md(s.Caution))
	}
}

// title is a row's label with its unit.
func (r *Row) title() string {
	if r.Unit == "" {
		return r.Label
	}
	return r.Label + ", " + r.Unit
}

// against is a cell's difference to the first option's with the verdict on it, "" where there is none.
func (c *Cell) against() string {
	switch d := c.Difference; {
	case d == nil:
		return ""
	case d.Verdict == Same:
		return Same
	case d.Verdict == "":
		return d.words()
	default:
		return d.words() + ": " + d.Verdict
	}
}
