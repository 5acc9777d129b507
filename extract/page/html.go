package page

import (
	"bytes"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
	"golang.org/x/net/html/charset"
)

// HTML lays a web page out as one Page: tables with their spans, lists of terms as tables, all else as lines of text. Scripts, styles
// and what is marked hidden are left out. Errors are of type *Error.
func HTML(name string, data []byte) ([]Page, error) {
	if len(data) > maxTextBytes {
		return nil, tooLongText(name)
	}
	reader, err := charset.NewReader(bytes.NewReader(data), "text/html")
	if err != nil {
		return nil, &Error{File: name, Problem: "the page's character set is unknown", Remedy: "save it as UTF-8", Cause: err}
	}
	root, err := html.Parse(reader)
	if err != nil {
		return nil, &Error{File: name, Problem: "the HTML is damaged", Remedy: "save the page anew from a browser", Cause: err}
	}
	f := &flow{grid: &grid{by: ByHTML, y: gridMargin}}
	f.walk(root, false, 0)
	f.end()
	if f.err != nil {
		return nil, tooLongText(name)
	}
	return []Page{f.grid.page(1)}, nil
}

// flow turns a tree into lines and tables. With a grid it writes them there; without one it gathers lines, for a cell.
type flow struct {
	grid  *grid
	now   []run   // the line that is being gathered
	lines [][]run // finished lines of a cell
	err   error
}

// maxNesting bounds the depth of elements.
const maxNesting = 400

func (f *flow) walk(n *html.Node, bold bool, depth int) {
	if f.err != nil || depth > maxNesting {
		return
	}
	switch n.Type {
	case html.TextNode:
		f.text(n.Data, bold)
		return
	case html.ElementNode:
		if skipped[n.DataAtom] || unseen(n) {
			return
		}
	case html.CommentNode, html.DoctypeNode:
		return
	}
	switch n.DataAtom {
	case atom.Br:
		f.end()
		return
	case atom.Sup, atom.Sub:
		f.script(n, bold)
		return
	case atom.Table:
		if f.grid != nil {
			f.end()
			f.keep(f.grid.table(tableRows(n, depth)))
			return
		}
	case atom.Dl:
		if f.grid != nil {
			f.end()
			f.keep(f.grid.table(termRows(n, depth)))
			return
		}
	}
	bold = bold || strong[n.DataAtom]
	if blocks[n.DataAtom] {
		f.end()
		defer f.end()
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		f.walk(c, bold, depth+1)
	}
}

func (f *flow) keep(err error) {
	if f.err == nil {
		f.err = err
	}
}

// text adds text; white space of any length is one space.
func (f *flow) text(data string, bold bool) {
	var b strings.Builder
	space := len(f.now) == 0 || strings.HasSuffix(f.now[len(f.now)-1].text, " ")
	for _, c := range data {
		if unicode.IsSpace(c) {
			if !space {
				b.WriteByte(' ')
			}
			space = true
			continue
		}
		b.WriteRune(c)
		space = false
	}
	if b.Len() > 0 {
		f.now = append(f.now, run{text: b.String(), bold: bold})
	}
}

// script adds a raised or lowered text. A digit beside a digit is a footnote's mark, not a part of the number; "V" and "oc", "m" and "2"
// belong together.
func (f *flow) script(n *html.Node, bold bool) {
	text := strings.Join(strings.Fields(textOf(n, 0)), " ")
	if text == "" {
		return
	}
	apart := false
	if len(f.now) > 0 {
		last, _ := utf8.DecodeLastRuneInString(f.now[len(f.now)-1].text)
		first, _ := utf8.DecodeRuneInString(text)
		apart = unicode.IsDigit(last) && unicode.IsDigit(first)
	}
	f.now = append(f.now, run{text: text, bold: bold, script: apart})
}

// end finishes the line.
func (f *flow) end() {
	line := f.now
	f.now = nil
	if n := len(line); n > 0 {
		line[n-1].text = strings.TrimRight(line[n-1].text, " ")
	}
	if runsWidth(line) == 0 {
		return
	}
	if f.grid == nil {
		f.lines = append(f.lines, line)
		return
	}
	f.keep(f.grid.line(line))
}

func textOf(n *html.Node, depth int) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	if depth > maxNesting || skipped[n.DataAtom] || unseen(n) {
		return ""
	}
	var b strings.Builder
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		b.WriteString(textOf(c, depth+1))
	}
	return b.String()
}

// unseen tells whether an element hides itself.
func unseen(n *html.Node) bool {
	for _, a := range n.Attr {
		switch a.Key {
		case "hidden":
			return true
		case "style":
			style := strings.ToLower(strings.ReplaceAll(a.Val, " ", ""))
			if strings.Contains(style, "display:none") || strings.Contains(style, "visibility:hidden") {
				return true
			}
		}
	}
	return false
}

// spanOf reads colspan or rowspan.
func spanOf(n *html.Node, key string) int {
	for _, a := range n.Attr {
		if a.Key == key {
			if v, err := strconv.Atoi(strings.TrimSpace(a.Val)); err == nil {
				return v
			}
		}
	}
	return 1
}
