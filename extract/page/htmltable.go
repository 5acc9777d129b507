package page

import (
	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
)

func set(atoms ...atom.Atom) map[atom.Atom]bool {
	m := map[atom.Atom]bool{}
	for _, a := range atoms {
		m[a] = true
	}
	return m
}

var (
	// skipped elements hold nothing that a reader sees as text of the page.
	skipped = set(atom.Script, atom.Style, atom.Noscript, atom.Template, atom.Head, atom.Svg, atom.Math, atom.Object, atom.Iframe,
		atom.Select, atom.Textarea, atom.Button, atom.Canvas, atom.Video, atom.Audio)
	// blocks begin and end a line.
	blocks = set(atom.P, atom.Div, atom.Section, atom.Article, atom.Header, atom.Footer, atom.Main, atom.Nav, atom.Aside, atom.Ul,
		atom.Ol, atom.Li, atom.Dl, atom.Dt, atom.Dd, atom.H1, atom.H2, atom.H3, atom.H4, atom.H5, atom.H6, atom.Pre, atom.Blockquote,
		atom.Figure, atom.Figcaption, atom.Address, atom.Fieldset, atom.Form, atom.Hr, atom.Table, atom.Tr, atom.Caption, atom.Details,
		atom.Summary, atom.Body)
	strong = set(atom.B, atom.Strong, atom.Th, atom.H1, atom.H2, atom.H3, atom.H4, atom.H5, atom.H6)
)

// tableRows gives a table's cells by rows, its caption as a row over all columns. A table inside a cell becomes lines of that cell.
func tableRows(table *html.Node, depth int) [][]cell {
	var rows [][]cell
	var visit func(n *html.Node, depth int)
	visit = func(n *html.Node, depth int) {
		if depth > maxNesting || unseen(n) {
			return
		}
		switch n.DataAtom {
		case atom.Tr:
			rows = append(rows, rowCells(n, depth))
		case atom.Caption:
			rows = append(rows, []cell{cellOf(n, depth)})
		case atom.Table, atom.Thead, atom.Tbody, atom.Tfoot:
			for c := n.FirstChild; c != nil; c = c.NextSibling {
				visit(c, depth+1)
			}
		}
	}
	visit(table, depth)
	return rows
}

func rowCells(row *html.Node, depth int) []cell {
	var cells []cell
	for c := row.FirstChild; c != nil; c = c.NextSibling {
		if (c.DataAtom == atom.Td || c.DataAtom == atom.Th) && !unseen(c) {
			one := cellOf(c, depth+1)
			one.cols, one.rows = spanOf(c, "colspan"), spanOf(c, "rowspan")
			cells = append(cells, one)
		}
	}
	return cells
}

func cellOf(n *html.Node, depth int) cell {
	f := &flow{}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		f.walk(c, n.DataAtom == atom.Th, depth+1)
	}
	f.end()
	return cell{lines: f.lines}
}

// termRows gives a list of terms and descriptions as a table of two columns.
func termRows(list *html.Node, depth int) [][]cell {
	var rows [][]cell
	var visit func(n *html.Node, depth int)
	visit = func(n *html.Node, depth int) {
		for c := n.FirstChild; c != nil && depth <= maxNesting; c = c.NextSibling {
			if unseen(c) {
				continue
			}
			switch c.DataAtom {
			case atom.Dt:
				rows = append(rows, []cell{cellOf(c, depth)})
			case atom.Dd:
				if n := len(rows); n > 0 && len(rows[n-1]) == 1 {
					rows[n-1] = append(rows[n-1], cellOf(c, depth))
				} else {
					rows = append(rows, []cell{{}, cellOf(c, depth)})
				}
			case atom.Div: // groups of terms
				visit(c, depth+1)
			}
		}
	}
	visit(list, depth)
	return rows
}
