package report

import (
	"bytes"
	"fmt"
	"io"
	"strings"
)

// maxMarkdown bounds the report: comment fields of code hosts take some 65,000 characters.
const maxMarkdown = 60_000

// writeMarkdown is for a comment on a change: what the run came to, then a table of findings for each sheet that has some.
func writeMarkdown(w io.Writer, run Run) error {
	var sum summary
	var body bytes.Buffer
	left := 0 // sheets for which there was no room
	for e := range run.Entries {
		sum.add(e)
		var part string
		switch {
		case e.Unread != nil:
			part = fmt.Sprintf("\n**%s** could not be read: %s\n", mdText(e.Unread.File), mdText(e.Unread.detail()))
		case len(e.Sheet.Findings) > 0:
			part = mdSheet(e.Sheet)
		}
		if body.Len()+len(part) > maxMarkdown {
			left++
			continue
		}
		body.WriteString(part)
	}
	if left > 0 {
		fmt.Fprintf(&body, "\nNo room here for %s more.\n", plural(left, "input"))
	}
	_, err := fmt.Fprintf(w, "### pvtally: %s, %s, %s in %s%s\n%s", plural(sum.Errors, "error"), plural(sum.Warnings, "warning"),
		plural(sum.Notes, "note"), plural(sum.Sheets, "sheet"), map[bool]string{true: fmt.Sprintf(", %d unread", sum.Unread)}[sum.Unread > 0], body.Bytes())
	return err
}

func mdSheet(s *Sheet) string {
	var b strings.Builder
	fmt.Fprintf(&b, "\n**%s**: %s", mdText(s.File), s.Verdict())
	if about := s.about(); about != "" {
		fmt.Fprintf(&b, " (%s)", mdText(about))
	}
	b.WriteString("\n\n| level | rule | class | what does not tally | page |\n| --- | --- | --- | --- | --- |\n")
	for _, f := range s.problems() {
		page := ""
		if at := s.placeOf(f.cells()); at.Page > 0 {
			page = fmt.Sprint(at.Page)
		}
		fmt.Fprintf(&b, "| %s | %s | %s | %s | %s |\n", f.Level, mdText(f.Rule), mdText(f.Model), mdText(f.Message), page)
	}
	return b.String()
}

// mdEscapes makes every character that Markdown, the HTML in it, or a code host's own marks (mentions, references, bare links) give a
// meaning stand for itself.
var mdEscapes = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "{", `\{`, "}", `\}`, "[", `\[`, "]", `\]`, "(", `\(`, ")", `\)`,
	"#", `\#`, "!", `\!`, "|", `\|`, "~", `\~`, "<", "&lt;", ">", "&gt;", "&", "&amp;", "@", "&#64;", "://", "&#58;//", "www.", "www&#46;", "$", `\$`)

func mdText(text string) string { return mdEscapes.Replace(Plain(text)) }
