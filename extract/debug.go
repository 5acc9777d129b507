package extract

import (
	"fmt"
	"io"

	"pvtally/extract/page"
)

// Explain prints what the reader made of the pages: rows with label, concept and values, then the electrical tables. It is for finding out why a value was
// missed or refused.
func Explain(w io.Writer, pages []page.Page) {
	d := read(pages)
	for _, v := range d.views {
		fmt.Fprintf(w, "page %d: %d lines, %d rows\n", v.page.Number, len(v.lines), len(v.rows))
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
	for _, b := range d.blocks {
		fmt.Fprintf(w, "table on page %d, condition %q, title %q\n", b.page, b.cond, b.title)
		for _, c := range b.columns {
			fmt.Fprintf(w, "   %q", c.name)
			if c.cond != unknownCondition {
				fmt.Fprintf(w, " at %s", c.cond)
			}
			if c.gain != nil {
				fmt.Fprintf(w, " gain %s", c.gain.term().Literal)
			}
			for _, k := range electricalOrder {
				if v, ok := c.values[k]; ok {
					fmt.Fprintf(w, " %s=%s", k, v.term().Literal)
				}
				for _, v := range c.doubt[k] {
					fmt.Fprintf(w, " %s?%s", k, v.term().Literal)
				}
			}
			fmt.Fprintln(w)
		}
	}
	for _, k := range d.classes {
		fmt.Fprintf(w, "class %g W %q\n", k.watts, k.name)
	}
}
