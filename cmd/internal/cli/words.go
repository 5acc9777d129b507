package cli

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"

	"pvtally/cmd/internal/report"
)

// seen writes every word with its place, one a line, columns separated by tabs: made for grep and for spreadsheets. What the reader made
// of them, its rows and tables, follows in lines that begin with #.
func (opt *reading) seen(ctx context.Context, r *run, w io.Writer, args []string) error {
	if _, err := io.WriteString(w, "file\tpage\tx0\ty0\tx1\ty1\tsize\trotation\tby\thidden\ttext\n"); err != nil {
		return err
	}
	for in := range each(ctx, r, args, nothing) {
		var b bytes.Buffer
		for _, p := range in.pages {
			for _, word := range p.Words {
				fmt.Fprintf(&b, "%s\t%d\t%.1f\t%.1f\t%.1f\t%.1f\t%.1f\t%d\t%s\t%s\t%s\n", report.Plain(in.name), p.Number,
					word.Box.X0, word.Box.Y0, word.Box.X1, word.Box.Y1, word.Size, word.Rotation, word.By, word.Hidden, report.Plain(word.Text))
			}
		}
		for line := range strings.Lines(in.view) {
			fmt.Fprintf(&b, "# %s\n", report.Plain(strings.TrimSuffix(line, "\n")))
		}
		if _, err := w.Write(b.Bytes()); err != nil {
			return err
		}
	}
	return nil
}
