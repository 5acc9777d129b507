package cli

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"os"

	"github.com/spf13/cobra"

	"pvtally/cmd/internal/policy"
	"pvtally/cmd/internal/report"
	"pvtally/rules"
)

// checking is what the check command was asked for.
type checking struct {
	work
	output, failOn   string
	policy, baseline string
	since            string
	writeBaseline    bool
	format           report.Format
	law              *law
	limit            rules.Level
}

func (c Command) checkCommand() *cobra.Command {
	var opt checking
	cmd := &cobra.Command{
		Use:   "check FILE…",
		Short: "Check that the numbers of records or datasheets tally",
		Long: `check judges records, or datasheets, which it reads first. Exit code: 0 nothing at or above --fail-on,
1 findings at or above it, 2 the command line or a policy file is wrong, 3 an input could not be read.`,
	}
	opt.flags(cmd)
	cmd.Flags().StringVar(&opt.output, "output", "text", "`format`: "+report.Names())
	cmd.Flags().StringVar(&opt.failOn, "fail-on", "error", "the `level` from which findings fail the check: error, warning, note or never")
	cmd.Flags().StringVar(&opt.policy, "policy", "", "the policy `file`; without it "+policy.FileName+" is looked for from the inputs' folder upwards")
	cmd.Flags().StringVar(&opt.baseline, "baseline", "", "a `file` of findings that are known and not shown")
	cmd.Flags().BoolVar(&opt.writeBaseline, "write-baseline", false, "write the findings of this run to the baseline, instead of a report")
	cmd.Flags().StringVar(&opt.since, "changed-since", "", "only inputs that git counts as changed since this `revision`")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := opt.validate(c, args, cmd.Flags().Changed("fail-on")); err != nil {
			return err
		}
		r := &run{Command: c, work: opt.work, drawn: opt.format.Pages && !opt.writeBaseline}
		if opt.since != "" {
			var err error
			if r.list, err = changedSince(cmd.Context(), opt.since, args, expand(args)); err != nil {
				return err
			}
		}
		if opt.writeBaseline {
			return opt.newBaseline(cmd.Context(), r, args)
		}
		return opt.run(cmd.Context(), r, args)
	}
	return cmd
}

// never is a level that no finding reaches.
const never = rules.Error + 1

func (opt *checking) validate(c Command, args []string, limited bool) error {
	var ok bool
	if opt.format, ok = report.Lookup(opt.output); !ok {
		return fmt.Errorf("--output %q: one of %s", opt.output, report.Names())
	}
	if opt.format.Binary && opt.out == "" && isTerminal(c.Stdout) {
		return fmt.Errorf("--output %s is not for a terminal: add --out FILE", opt.output)
	}
	switch {
	case opt.writeBaseline && opt.baseline == "":
		return errors.New("--write-baseline needs --baseline FILE")
	case opt.writeBaseline && (opt.out != "" || opt.output != "text"):
		return errors.New("--write-baseline writes no report: leave out --output and --out")
	}
	var err error
	if opt.law, err = newLaw(opt.policy, opt.baseline, opt.writeBaseline, args); err != nil {
		return err
	}
	if opt.limit, err = opt.law.limit(opt.failOn, limited); err != nil {
		return err
	}
	return opt.work.validate()
}

func (opt *checking) run(ctx context.Context, r *run, args []string) error {
	o, err := r.open(ctx, opt.out)
	if err != nil {
		return unwritten(err)
	}
	worst := rules.Level(0)
	of := report.Run{
		Version: version(),
		Colour:  opt.out == "" && isTerminal(r.Stdout) && os.Getenv("NO_COLOR") == "",
		Limit:   opt.limit,
		Rules:   append(rules.All(), policy.Required),
		Entries: func(yield func(report.Entry) bool) {
			for e := range opt.entries(ctx, r, args) {
				if e.Sheet != nil {
					for _, f := range e.Sheet.Findings {
						worst = max(worst, f.Level)
					}
				}
				if !yield(e) {
					return
				}
			}
		},
	}
	if opt.law.policy != nil || opt.baseline != "" {
		of.Silenced = opt.law.silenced
	}
	err = opt.format.Write(o, of)
	if err = o.finish(errors.Join(err, ctx.Err())); err != nil && ctx.Err() == nil {
		return unwritten(err)
	}
	for _, s := range opt.law.silenced().Stale {
		r.warn("%s", s)
	}
	if worst >= opt.limit {
		return r.result(ctx, outcome{Found, errSaid})
	}
	return r.result(ctx, nil)
}

// entries are the judged records and the unread inputs in input order, without what policy and baseline accept.
func (opt *checking) entries(ctx context.Context, r *run, args []string) iter.Seq[report.Entry] {
	return func(yield func(report.Entry) bool) {
		list := opt.judged(ctx, r, args)
		if !opt.format.Stream {
			list = opt.law.across(list)
		}
		for j := range list {
			if j.Sheet != nil {
				opt.law.keep(j.input, j.Sheet, j.diagnosis)
				opt.law.accuse(j.Sheet, j.diagnosis)
			}
			if !yield(j.Entry) {
				return
			}
		}
	}
}

// judged is one entry with what only the command knows of it.
type judged struct {
	report.Entry
	input     input
	trace     traced // the datasheet that the record names
	diagnosis diagnosis
}

// judged judges every record where it is loaded.
func (opt *checking) judged(ctx context.Context, r *run, args []string) iter.Seq[judged] {
	tracer := tracer{again: !opt.law.options.Off["catalogue/drift"], pages: opt.format.Pages, cache: !opt.noCache}
	judge := func(in loaded) []judged {
		var list []judged
		for _, sheet := range in.sheets {
			j := judged{input: in.input, Entry: report.Entry{Sheet: &report.Sheet{
				File: in.name, Record: sheet, Findings: opt.law.checker.Check(sheet), Pages: in.drawn}}}
			if opt.format.Lines {
				j.Sheet.Locate = locator(in)
			}
			j.input.data = nil // the whole run is held at once where rules look across records
			j.diagnosis = opt.law.diagnose(j.Sheet)
			if !opt.format.Stream {
				j.trace = tracer.trace(ctx, in.input, sheet)
				if j.Sheet.Pages == nil {
					j.Sheet.Pages = j.trace.pages
				}
			}
			list = append(list, j)
		}
		return list
	}
	return func(yield func(judged) bool) {
		for in, list := range each(ctx, r, args, judge) {
			if in.unread != nil {
				list = []judged{{Entry: report.Entry{Unread: in.unread}}}
			}
			for _, j := range list {
				if j.trace.fault != "" {
					r.warn("%s: its datasheet could not be read again: %s", j.Sheet.File, j.trace.fault)
				}
				if !yield(j) {
					return
				}
			}
		}
	}
}
