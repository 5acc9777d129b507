package compare

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"github.com/rivo/uniseg"

	"pvtally/cmd/internal/report"
)

// writeText is for a person at a terminal: the answer, then who is who, then the tables.
func writeText(w io.Writer, d *Doc) error {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s\n\n", report.Plain(d.Answer))
	for _, o := range d.Options {
		fmt.Fprintf(&b, "%s  %s\n", o.ID, report.Plain(o.about()))
		for _, n := range o.Notes {
			fmt.Fprintf(&b, "   note: %s\n", report.Plain(n))
		}
	}
	for _, u := range d.LeftOut {
		fmt.Fprintf(&b, "left out: %s\n", report.Plain(u.String()))
	}
	b.WriteByte('\n')
	for _, m := range d.More {
		fmt.Fprintf(&b, "%s\n", report.Plain(m))
	}
	textGiven(&b, d.Site)
	for i := range d.Sections {
		textSection(&b, d, &d.Sections[i])
	}
	_, err := w.Write(b.Bytes())
	return err
}

// about is an option in one line.
func (o *Option) about() string {
	text := o.Name
	for _, more := range []string{o.Series, o.Maker} {
		if more != "" && !strings.HasPrefix(text, more) {
			text += ", " + more
		}
	}
	return fmt.Sprintf("%s (%s): %s", text, o.File, o.Verdict)
}

func textGiven(b *bytes.Buffer, list []Given) {
	rows := [][]string{{"\nThe site", "", ""}}
	for _, g := range list {
		rows = append(rows, []string{"  " + g.Label, report.Plain(g.words()), g.Origin})
	}
	textTable(b, rows)
}

// words are a given thing's text, or number and unit.
func (g *Given) words() string {
	if g.Text != "" {
		return g.Text
	}
	return withUnit(g.Value, g.Unit)
}

func textSection(b *bytes.Buffer, d *Doc, s *Section) {
	if len(s.Rows) == 0 {
		fmt.Fprintf(b, "\n%s\n", s.Title)
	} else {
		head := []string{"\n" + s.Title}
		for _, o := range d.Options {
			head = append(head, o.ID)
		}
		rows := [][]string{head}
		reasons := reasons{}
		for _, r := range s.Rows {
			label := "  " + r.Label
			if r.Unit != "" {
				label += ", " + r.Unit
			}
			row := []string{label}
			for _, c := range r.Cells {
				row = append(row, report.Plain(reasons.words(&c)))
			}
			rows = append(rows, row)
		}
		textTable(b, rows)
		for i, why := range reasons.list {
			fmt.Fprintf(b, "  [%d] %s\n", i+1, report.Plain(why))
		}
	}
	for _, n := range s.Notes {
		fmt.Fprintf(b, "  note: %s\n", report.Plain(n))
	}
	if s.Caution != "" {
		fmt.Fprintf(b, "  caution: %s\n", s.Caution)
	}
}

// words are a cell in one line: the value, its interval, how it stands to the first option's.
func (c *Cell) words() string {
	if c.Why != "" || c.Text != "" {
		return firstOf(c.Text, c.Why)
	}
	text := c.Value.String()
	if !c.Low.IsZero() {
		text += fmt.Sprintf(" (%s to %s)", c.Low, c.High)
	}
	return text
}

// reasons number the reasons for missing values, each once, so that columns stay narrow.
type reasons struct{ list []string }

func (r *reasons) words(c *Cell) string {
	if c.Why == "" {
		return c.words()
	}
	for i, why := range r.list {
		if why == c.Why {
			return fmt.Sprintf("- [%d]", i+1)
		}
	}
	r.list = append(r.list, c.Why)
	return fmt.Sprintf("- [%d]", len(r.list))
}

// textTable writes columns as wide as their widest cell.
func textTable(b *bytes.Buffer, rows [][]string) {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], uniseg.StringWidth(strings.TrimPrefix(cell, "\n")))
		}
	}
	for _, row := range rows {
		line := ""
		for i, cell := range row {
			line += cell + strings.Repeat(" ", widths[i]-uniseg.StringWidth(strings.TrimPrefix(cell, "\n"))+2)
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}
