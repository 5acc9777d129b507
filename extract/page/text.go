package page

import (
	"bytes"
	"regexp"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// Text lays plain text or Markdown out: columns stand where spaces put them, lines with tabs and Markdown's tables become tables. A
// form feed begins a new page. Errors are of type *Error.
func Text(name string, data []byte) ([]Page, error) {
	if len(data) > maxTextBytes {
		return nil, tooLongText(name)
	}
	var pages []Page
	for _, part := range strings.Split(decodeText(data), "\f") {
		if len(pages) > 0 && strings.TrimSpace(part) == "" {
			continue
		}
		g := &grid{by: ByText, y: gridMargin}
		if err := g.text(strings.Split(strings.ReplaceAll(part, "\r\n", "\n"), "\n")); err != nil {
			return nil, tooLongText(name)
		}
		pages = append(pages, g.page(len(pages)+1))
	}
	return pages, nil
}

func tooLongText(name string) error {
	return &Error{File: name, Problem: "the text is too long for a datasheet: " + errTooLong.Error(), Remedy: "give the datasheet's part alone"}
}

// decodeText makes UTF-8 of what text files come in: UTF-8, UTF-16 with its mark, else the code page of Western Windows.
func decodeText(data []byte) string {
	switch {
	case bytes.HasPrefix(data, []byte{0xFE, 0xFF}), bytes.HasPrefix(data, []byte{0xFF, 0xFE}):
		if plain, err := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewDecoder().Bytes(data); err == nil {
			return string(plain)
		}
	case utf8.Valid(data):
		return strings.TrimPrefix(string(data), "\uFEFF")
	}
	plain, err := charmap.Windows1252.NewDecoder().Bytes(data)
	if err != nil {
		return strings.ToValidUTF8(string(data), string(hole))
	}
	return string(plain)
}

const tabWidth = 8

// text adds lines; those with cells in them are gathered to tables.
func (g *grid) text(lines []string) error {
	for i := 0; i < len(lines); {
		split := splitterOf(lines, i)
		if split == nil {
			if err := g.line(plainLine(lines[i])); err != nil {
				return err
			}
			i++
			continue
		}
		var rows [][]cell
		for ; i < len(lines); i++ {
			parts, is := split(lines[i])
			if !is {
				break
			}
			if parts != nil {
				rows = append(rows, textCells(parts))
			}
		}
		if err := g.table(rows); err != nil {
			return err
		}
	}
	return nil
}

func textCells(parts []string) []cell {
	row := make([]cell, len(parts))
	for i, p := range parts {
		row[i] = cell{lines: [][]run{plainLine(strings.TrimSpace(p))}}
	}
	return row
}

// splitter gives a line's cells, nil for a line that only draws, and whether the line belongs to a table at all.
type splitter func(line string) (parts []string, is bool)

// splitterOf tells how the lines from i on are parted into cells; nil where they are none.
func splitterOf(lines []string, i int) splitter {
	if _, is := splitTabs(lines[i]); is {
		return splitTabs
	}
	if i+1 < len(lines) && strings.Contains(lines[i], "|") && markdownLine.MatchString(lines[i+1]) && strings.Contains(lines[i+1], "|") {
		return splitPipes
	}
	return nil
}

// splitTabs parts a line with a tab between two texts; tabs that only indent stay white space.
func splitTabs(line string) ([]string, bool) {
	trimmed := strings.TrimSpace(line)
	return strings.Split(trimmed, "\t"), strings.Contains(trimmed, "\t")
}

// markdownLine is the line below a Markdown table's head.
var markdownLine = regexp.MustCompile(`^\s*\|?\s*:?-+:?\s*(\|\s*:?-+:?\s*)*\|?\s*$`)

func splitPipes(line string) ([]string, bool) {
	if markdownLine.MatchString(line) {
		return nil, true
	}
	line = strings.TrimSpace(line)
	if !strings.Contains(line, "|") {
		return nil, false
	}
	const escaped = "\x00"
	line = strings.ReplaceAll(line, `\|`, escaped)
	parts := strings.Split(strings.TrimSuffix(strings.TrimPrefix(line, "|"), "|"), "|")
	for i := range parts {
		parts[i] = strings.ReplaceAll(parts[i], escaped, "|")
	}
	return parts, true
}

var (
	heading  = regexp.MustCompile(`^\s{0,3}#{1,6}\s+(.*?)\s*#*\s*$`)
	emphasis = regexp.MustCompile(`(\*\*|__)(\S(?:.*?\S)?)(\*\*|__)`)
)

// plainLine takes Markdown's signs off a line.
func plainLine(line string) []run {
	if m := heading.FindStringSubmatch(line); m != nil {
		return textRuns(m[1], true)
	}
	bold := false
	if m := emphasis.FindString(line); m != "" {
		bold = len(m) == len(strings.TrimSpace(line))
		line = emphasis.ReplaceAllString(line, "$2")
	}
	return textRuns(expandTabs(line), bold)
}

// expandTabs replaces tabs by spaces up to the next stop.
func expandTabs(line string) string {
	if !strings.Contains(line, "\t") {
		return line
	}
	var b strings.Builder
	column := 0
	for _, c := range line {
		if c == '\t' {
			n := tabWidth - column%tabWidth
			b.WriteString(strings.Repeat(" ", n))
			column += n
			continue
		}
		b.WriteRune(c)
		column += columns(c)
	}
	return b.String()
}
