package cli

import (
	"bytes"
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pvtally/cmd/internal/policy"
	"pvtally/cmd/internal/report"
)

// querying is what the query command was asked for.
type querying struct {
	checking
	language string
}

func (c Command) queryCommand() *cobra.Command {
	var opt querying
	cmd := &cobra.Command{
		Use:   "query FILE…",
		Short: "Write the letter to the maker: one answerable question for each number that does not tally",
		Long: `query checks records or datasheets and writes, for each, the letter to its maker: one numbered question for each suspect, or for each
warning and error without one, with the page, the row and column, the printed values, the arithmetic and what would tally. Where the
reading is in doubt it says so first: check the page before the maker is asked. Exit code: 0 done, 2 the command line or a policy
file is wrong, 3 an input could not be read.`,
	}
	opt.flags(cmd)
	cmd.Flags().StringVar(&opt.language, "language", "en", "the letter's `language`: "+strings.Join(report.LetterLanguages, ", "))
	cmd.Flags().StringVar(&opt.output, "output", "markdown", "`format`: markdown or text")
	cmd.Flags().StringVar(&opt.policy, "policy", "", "the policy `file`; without it "+policy.FileName+" is looked for from the inputs' folder upwards")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := opt.validate(args); err != nil {
			return err
		}
		return opt.run(cmd.Context(), &run{Command: c, work: opt.work}, args)
	}
	return cmd
}

func (opt *querying) validate(args []string) error {
	if opt.output != "markdown" && opt.output != "text" {
		return fmt.Errorf("--output %q: markdown or text", opt.output)
	}
	if !slices.Contains(report.LetterLanguages, opt.language) {
		return fmt.Errorf("--language %q: one of %s", opt.language, strings.Join(report.LetterLanguages, ", "))
	}
	opt.format = report.Format{Stream: true} // each sheet for itself: a letter has one maker
	var err error
	if opt.law, err = newLaw(opt.policy, "", false, args); err != nil {
		return err
	}
	return opt.work.validate()
}

// run writes the letters one after the other, with a rule between them.
func (opt *querying) run(ctx context.Context, r *run, args []string) error {
	o, err := r.open(ctx, opt.out)
	if err != nil {
		return unwritten(err)
	}
	markdown := opt.output == "markdown"
	between := map[bool]string{true: "\n---\n\n", false: "\n" + strings.Repeat("-", 78) + "\n\n"}[markdown]
	letters := 0
	for e := range opt.entries(ctx, r, args) {
		if e.Sheet == nil || err != nil {
			continue
		}
		var b bytes.Buffer
		if letters > 0 {
			b.WriteString(between)
		}
		var n int
		if n, err = report.WriteLetter(&b, e.Sheet, opt.language, markdown); err == nil && n > 0 {
			letters++
			_, err = o.Write(b.Bytes())
		} else if err == nil {
			r.warn("%s: nothing to ask", e.Sheet.File)
		}
	}
	if err = o.finish(err); err != nil && ctx.Err() == nil {
		return unwritten(err)
	}
	return r.result(ctx, nil)
}
