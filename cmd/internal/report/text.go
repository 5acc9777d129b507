package report

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/rivo/uniseg"

	"pvtally/rules"
)

// maxRows is how many printed rows a finding quotes, maxCell how many characters of a cell: enough to find the place on the page.
const (
	maxRows = 4
	maxCell = 40
)

// style is how a terminal sets text off; the zero style leaves it plain.
type style struct{ start, end string }

func (s style) of(text string) string { return s.start + text + s.end }

type styles struct {
	error, warning, note, strong, underline style
}

// palette uses the terminal's own colours, and never colour alone: the level is a word, the place has an underline.
func palette(colour bool) styles {
	if !colour {
		return styles{}
	}
	const off = "\x1b[0m"
	return styles{error: style{"\x1b[1;31m", off}, warning: style{"\x1b[1;33m", off}, note: style{"\x1b[1;36m", off},
		strong: style{"\x1b[1m", off}, underline: style{"\x1b[1;4m", off}}
}

func (s styles) level(l rules.Level) style {
	return map[rules.Level]style{rules.Error: s.error, rules.Warning: s.warning, rules.Note: s.note}[l]
}

// writeText is for a person: the sheets that have findings, each finding with the rows it is about, and one line that sums up.
func writeText(w io.Writer, run Run) error {
	var sum summary
	var cautions []string
	verdicts := map[string]int{}
	look := palette(run.Colour)
	for e := range run.Entries {
		sum.add(e)
		if e.Unread != nil {
			continue
		}
		verdicts[e.Sheet.Verdict()]++
		if len(e.Sheet.Findings) == 0 {
			continue
		}
		var b bytes.Buffer
		look.sheet(&b, e.Sheet)
		for _, f := range e.Sheet.Findings {
			if f.Caution != "" && !slices.Contains(cautions, f.Caution) {
				cautions = append(cautions, f.Caution)
			}
		}
		if _, err := w.Write(b.Bytes()); err != nil {
			return err
		}
	}
	var b bytes.Buffer
	for _, c := range cautions {
		fmt.Fprintf(&b, "%s %s\n", look.strong.of("caution:"), Plain(c))
	}
	fmt.Fprintf(&b, "%s, %s: %d clear, %d query, %d reject; %s, %s, %s; %d unread\n", plural(sum.Sheets, "sheet"), plural(sum.Models, "model"),
		verdicts["clear"], verdicts["query"], verdicts["reject"],
		plural(sum.Errors, "error"), plural(sum.Warnings, "warning"), plural(sum.Notes, "note"), sum.Unread)
	if run.Silenced != nil {
		s := run.Silenced()
		fmt.Fprintf(&b, "not shown: %s\n", Plain(s.sources()))
	}
	_, err := w.Write(b.Bytes())
	return err
}

func (look styles) sheet(b *bytes.Buffer, s *Sheet) {
	fmt.Fprintf(b, "%s: %s", look.strong.of(Plain(s.File)), look.strong.of(s.Verdict()))
	if about := s.about(); about != "" {
		fmt.Fprintf(b, " (%s)", Plain(about))
	}
	b.WriteByte('\n')
	for _, x := range s.Suspects {
		look.suspect(b, s, x)
	}
	for _, f := range s.graveFirst() {
		look.finding(b, s, f)
	}
	b.WriteByte('\n')
}

func (look styles) finding(b *bytes.Buffer, s *Sheet, f rules.Finding) {
	fmt.Fprintf(b, "  %s  %s", look.level(f.Level).of(fmt.Sprintf("%-7s", f.Level)), look.strong.of(Plain(f.Rule)))
	if f.Model != "" {
		fmt.Fprintf(b, "  %s", Plain(f.Model))
	}
	fmt.Fprintf(b, "\n    %s\n", Plain(f.Message))
	rows := printedRows(s.Record, f.Fields)
	for _, r := range rows[:min(len(rows), maxRows)] {
		look.row(b, r)
	}
	if more := len(rows) - maxRows; more > 0 {
		fmt.Fprintf(b, "      and %s more\n", plural(more, "row"))
	}
}

// row quotes a printed row and underlines the values meant: with a line of carets where there is no terminal to underline for us.
func (look styles) row(b *bytes.Buffer, r row) {
	line, carets := "      ", ""
	if r.Page > 0 {
		line += fmt.Sprintf("page %d  ", r.Page)
	}
	line += shorten(Plain(r.Label))
	width := uniseg.StringWidth(line)
	for i, cell := range r.Cells {
		cell = shorten(Plain(cell))
		own := uniseg.StringWidth(cell)
		if slices.Contains(r.Marked, i) {
			carets += strings.Repeat(" ", width+2-len(carets)) + strings.Repeat("^", own)
			cell = look.underline.of(cell)
		}
		line += "  " + cell
		width += 2 + own
	}
	b.WriteString(line + "\n")
	if look.underline == (style{}) {
		b.WriteString(carets + "\n")
	}
}

func shorten(text string) string {
	if r := []rune(text); len(r) > maxCell {
		return string(r[:maxCell-1]) + "…"
	}
	return text
}

func plural(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return fmt.Sprintf("%d %s", n, noun)
}
