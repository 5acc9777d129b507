package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"pvtally/cmd/internal/report"
	"pvtally/schema"
)

// reading is what the read command was asked for.
type reading struct {
	work
	into  string
	table string
	words bool
	lined bool
}

func (c Command) readCommand() *cobra.Command {
	var opt reading
	cmd := &cobra.Command{
		Use:   "read FILE…",
		Short: "Turn datasheets into records, every value traced to its page",
		Long: `read turns datasheets into sheet records. One record prints as one JSON document, several as JSON Lines.
A value is stored as it is printed, wrong or not; what could not be decided stands under "unresolved".`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := opt.validate(c, cmd.Flags()); err != nil {
				return err
			}
			r := &run{Command: c, work: opt.work, words: opt.words}
			if opt.into != "" {
				return opt.folder(cmd.Context(), r, args)
			}
			return opt.write(cmd.Context(), r, args)
		},
	}
	opt.flags(cmd)
	cmd.Flags().StringVar(&opt.into, "into", "", "write NAME.json, NAME.2.json … into this `folder`, which is made where it is not there")
	cmd.Flags().StringVar(&opt.table, "table", "", "one row per power class instead of records, in this `format`: csv or xlsx")
	cmd.Flags().BoolVar(&opt.words, "words", false, "print what the reader saw: every word with its page and box")
	cmd.Flags().BoolVar(&opt.lined, "values", false, "one printed value a line, named without positions: for comparing line by line")
	return cmd
}

func (opt *reading) validate(c Command, flags *pflag.FlagSet) error {
	for _, names := range [][]string{{"into", "table", "words", "values"}, {"into", "out"}} {
		if err := apart(flags, names...); err != nil {
			return err
		}
	}
	if opt.table != "" && tables[opt.table] == nil {
		return fmt.Errorf("--table %q: csv or xlsx", opt.table)
	}
	if opt.table == "xlsx" && opt.out == "" && isTerminal(c.Stdout) {
		return errors.New("--table xlsx is not for a terminal: add --out FILE")
	}
	return opt.work.validate()
}

// write sends everything to one place.
func (opt *reading) write(ctx context.Context, r *run, args []string) error {
	o, err := r.open(ctx, opt.out)
	if err != nil {
		return outcome{Unread, err}
	}
	form := opt.records
	switch {
	case opt.words:
		form = opt.seen
	case opt.table != "":
		form = opt.classes
	case opt.lined:
		form = opt.values
	}
	if err := o.finish(errors.Join(form(ctx, r, o, args), ctx.Err())); err != nil && ctx.Err() == nil {
		return outcome{Unread, err}
	}
	return r.result(ctx, nil)
}

// records writes one record as one document, several as JSON Lines: the first waits until it is known whether another follows.
func (opt *reading) records(ctx context.Context, r *run, w io.Writer, args []string) error {
	var first *schema.Sheet
	n := 0
	for in := range each(ctx, r, args, nothing) {
		for _, sheet := range in.sheets {
			place(in.input, sheet, filepath.Dir(opt.out))
			if n++; n == 1 {
				first = sheet
				continue
			}
			if n == 2 {
				if err := printSheet(w, schema.EncodeLine, first); err != nil {
					return err
				}
			}
			if err := printSheet(w, schema.EncodeLine, sheet); err != nil {
				return err
			}
		}
	}
	if n == 1 {
		return printSheet(w, schema.Encode, first)
	}
	return nil
}

func printSheet(w io.Writer, encode func(*schema.Sheet) ([]byte, error), sheet *schema.Sheet) error {
	data, err := encode(sheet)
	if err == nil {
		_, err = w.Write(report.SafeJSON(data))
	}
	return err
}

// place makes source.file relative to the folder of the record, so that the two can be moved together.
func place(in input, sheet *schema.Sheet, folder string) {
	source := in.path
	if in.kind == record {
		source = filepath.FromSlash(sheet.Source.File) // relative to where the record came from
		if source != "" && !filepath.IsAbs(source) {
			source = filepath.Join(filepath.Dir(in.path), source)
		}
	}
	if source != "" {
		source = relative(folder, source)
	}
	sheet.Source.File = source
}

// folder writes one file a record.
func (opt *reading) folder(ctx context.Context, r *run, args []string) error {
	if err := os.MkdirAll(opt.into, 0o755); err != nil {
		return outcome{Unread, fmt.Errorf("could not make folder %q: %s", opt.into, cause(err))}
	}
	taken := map[string]string{} // by whom
	for in := range each(ctx, r, args, nothing) {
		for i, sheet := range in.sheets {
			name := recordName(in.input, i+1)
			if by := taken[name]; by != "" {
				r.refuse(&report.Unread{File: in.name, Problem: fmt.Sprintf("its record %q would overwrite that of %q", name, by),
					Remedy: "read the two into different folders"})
				continue
			}
			taken[name] = in.name
			place(in.input, sheet, opt.into)
			data, err := schema.Encode(sheet)
			if err == nil {
				err = r.save(filepath.Join(opt.into, name), report.SafeJSON(data))
			}
			if err != nil {
				return outcome{Unread, err}
			}
		}
	}
	return r.result(ctx, nil)
}
