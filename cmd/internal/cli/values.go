package cli

import (
	"bytes"
	"context"
	"fmt"
	"io"

	"pvtally/cmd/internal/report"
	"pvtally/schema"
)

// values writes one printed value a line, named without positions and without its place: made for comparing line by line, as git does.
func (opt *reading) values(ctx context.Context, r *run, w io.Writer, args []string) error {
	for in := range each(ctx, r, args, nothing) {
		for _, sheet := range in.sheets {
			var b bytes.Buffer
			put := func(pointer, text string) {
				fmt.Fprintf(&b, "%s\t%s\n", report.Plain(schema.Key(sheet, pointer)), report.Plain(text))
			}
			sheet.WalkText(put)
			sheet.Walk(func(pointer string, n schema.Number) { put(pointer, n.String()) })
			if _, err := w.Write(b.Bytes()); err != nil {
				return err
			}
		}
	}
	return nil
}
