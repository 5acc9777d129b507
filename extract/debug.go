package extract

import (
	"context"
	"fmt"
	"io"

	"pvtally/extract/page"
)

// Explain prints the rows the reader made of a page: label, concept and values. It is the view of tables that `read --words` ends with.
func Explain(ctx context.Context, w io.Writer, pages []page.Page) {
	for i := range pages {
		v := newView(&pages[i])
		fmt.Fprintf(w, "page %d: %d lines, %d rows, edges %v\n", pages[i].Number, len(v.lines), len(v.rows), v.edges)
		for _, r := range v.rows {
			fmt.Fprintf(w, "%6.1f %-14s %q:", r.base, r.concept, r.text())
			for _, c := range r.values {
				fmt.Fprintf(w, " [%.0f|%q]", c.box.X0, c.text)
			}
			fmt.Fprintln(w)
		}
		for _, c := range v.loose {
			fmt.Fprintf(w, "%6.1f loose [%.0f|%q]\n", c.base, c.box.X0, c.text)
		}
	}
}
