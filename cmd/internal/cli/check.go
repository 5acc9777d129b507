package cli

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"os"

	"github.com/spf13/cobra"

	"pvtally/cmd/internal/report"
	"pvtally/rules"
)

// checking is what the check command was asked for.
type checking struct {
	work
	output string
	failOn string
	format report.Format
	limit  rules.Level
}

func (c Command) checkCommand() *cobra.Command {
	var opt checking
	cmd := &cobra.Command{
		Use:   "check FILE…",
		Short: "Check that the numbers of records or datasheets tally",
		Long: `check judges records, or datasheets, which it reads first. Exit code: 0 nothing at or above --fail-on,
1 findings at or above it, 2 the command line is wrong, 3 an input could not be read.`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := opt.validate(c); err != nil {
				return err
			}
			return opt.run(cmd.Context(), &run{Command: c, work: opt.work}, args)
		},
	}
	opt.flags(cmd)
	cmd.Flags().StringVar(&opt.output, "output", "text", "`format`: "+report.Names())
	cmd.Flags().StringVar(&opt.failOn, "fail-on", "error", "the `level` from which findings fail the check: error, warning, note or never")
	return cmd
}

// never is a level that no finding reaches.
const never = rules.Error + 1

func (opt *checking) validate(c Command) error {
	var ok bool
	if opt.format, ok = report.Lookup(opt.output); !ok {
		return fmt.Errorf("--output %q: one of %s", opt.output, report.Names())
	}
	if opt.format.Binary && opt.out == "" && isTerminal(c.Stdout) {
		return fmt.Errorf("--output %s is not for a terminal: add --out FILE", opt.output)
	}
	var err error
	if opt.limit, err = rules.ParseLevel(opt.failOn); err != nil {
		if opt.failOn != "never" {
			return fmt.Errorf("--fail-on %q: error, warning, note or never", opt.failOn)
		}
		opt.limit = never
	}
	return opt.work.validate()
}

func (opt *checking) run(ctx context.Context, r *run, args []string) error {
	o, err := r.create(opt.out)
	if err != nil {
		return outcome{Unread, err}
	}
	worst := rules.Level(0)
	err = opt.format.Write(o, report.Run{
		Version: version(),
		Colour:  opt.out == "" && isTerminal(r.Stdout) && os.Getenv("NO_COLOR") == "",
		Limit:   opt.limit,
		Rules:   rules.All(),
		Entries: opt.entries(ctx, r, args, &worst),
	})
	if err = o.finish(errors.Join(err, ctx.Err())); err != nil && ctx.Err() == nil {
		return outcome{Unread, err}
	}
	if worst >= opt.limit {
		return r.result(ctx, outcome{Found, errSaid})
	}
	return r.result(ctx, nil)
}

// entries judges every record where it is loaded and hands the results on in input order.
func (opt *checking) entries(ctx context.Context, r *run, args []string, worst *rules.Level) iter.Seq[report.Entry] {
	return func(yield func(report.Entry) bool) {
		for in, judged := range each(ctx, r, args, judge) {
			if in.unread != nil && !yield(report.Entry{Unread: in.unread}) {
				return
			}
			for _, sheet := range judged {
				for _, f := range sheet.Findings {
					*worst = max(*worst, f.Level)
				}
				if !yield(report.Entry{Sheet: sheet}) {
					return
				}
			}
		}
	}
}

func judge(in loaded) []*report.Sheet {
	var list []*report.Sheet
	for _, sheet := range in.sheets {
		list = append(list, &report.Sheet{File: in.name, Record: sheet, Findings: rules.Check(sheet, rules.Options{}), Locate: locator(in)})
	}
	return list
}
