package cli

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"pvtally/cmd/internal/changes"
	"pvtally/cmd/internal/report"
)

// differing is what the changes command was asked for.
type differing struct {
	output, out string
	noCache     bool
	exitCode    bool
	form        changes.Form
}

func (c Command) changesCommand() *cobra.Command {
	var opt differing
	cmd := &cobra.Command{
		Use:   "changes OLD NEW",
		Short: "What became of a sheet's values in its next edition, and what that means for the buyer",
		Long: `changes compares two editions of a datasheet or of its record: value by value, with the size of each change, whether it helps or hurts
the buyer, and whether strings of modules that used to fit no longer do; then the text that moved. OLD and NEW are files, or
REV:PATH as git calls a file of a revision. Exit code: 0 compared (1 with --exit-code when something changed), 2 the command line is
wrong, 3 an edition could not be read.`,
		Args: words(2, 2, "name the old edition and the new one"),
		RunE: func(cmd *cobra.Command, args []string) error {
			var ok bool
			if opt.form, ok = changes.Lookup(opt.output); !ok {
				return fmt.Errorf("--output %q: one of %s", opt.output, changes.Names())
			}
			return opt.run(cmd.Context(), c, args[0], args[1])
		},
	}
	cmd.Flags().StringVar(&opt.output, "output", "text", "`format`: "+changes.Names())
	cmd.Flags().StringVar(&opt.out, "out", "", "write to this `file` instead of standard output")
	cmd.Flags().BoolVar(&opt.noCache, "no-cache", false, "neither use nor fill the cache of what was read")
	cmd.Flags().BoolVar(&opt.exitCode, "exit-code", false, "end with 1 when something changed")
	return cmd
}

func (opt *differing) run(ctx context.Context, c Command, old, new string) error {
	r := &run{Command: c, work: work{jobs: 1, noCache: opt.noCache}}
	before, after := r.edition(ctx, old), r.edition(ctx, new)
	if err := r.result(ctx, nil); err != nil {
		return err
	}
	d := changes.Build(version(), before, after)
	o, err := c.create(opt.out)
	if err != nil {
		return unwritten(err)
	}
	colour := opt.out == "" && isTerminal(c.Stdout) && os.Getenv("NO_COLOR") == ""
	if err := o.finish(opt.form.Write(o, d, colour)); err != nil {
		return unwritten(err)
	}
	if opt.exitCode && d.Summary.Any() {
		return outcome{Found, errSaid}
	}
	return nil
}

// edition reads one side. What cannot be read is said and counted.
func (r *run) edition(ctx context.Context, name string) changes.Edition {
	e := changes.Edition{Name: name}
	if name == os.DevNull { // how git calls the side of a file that was added or taken away
		return e
	}
	in := input{name: name, path: name, kind: stream}
	from := r.Command
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		r.refuse(&report.Unread{File: name, Problem: "it is a folder", Remedy: "name the file of the edition"})
		return e
	} else if err != nil && strings.Contains(name, ":") {
		data, err := blob(ctx, name)
		if err != nil {
			r.refuse(&report.Unread{File: name, Problem: err.Error(), Remedy: "give a file, or REV:PATH of a git repository"})
			return e
		}
		in.path, from.Stdin = "", strings.NewReader(data)
	} else if name == "-" {
		in.path = ""
	}
	l := loader{cache: !r.work.noCache, drawn: true}
	for part := range from.stream(in) {
		out := l.load(ctx, part)
		if out.unread != nil {
			r.refuse(out.unread)
			continue
		}
		e.Sheets = append(e.Sheets, out.sheets...)
		e.Pages = append(e.Pages, out.drawn...)
	}
	return e
}

// blob is a file of a git revision, REV:PATH.
func blob(ctx context.Context, name string) (string, error) {
	if strings.HasPrefix(name, "-") {
		return "", fmt.Errorf("%q is no file and no REV:PATH", name)
	}
	size, err := git(ctx, ".", "cat-file", "-s", name)
	if err != nil {
		return "", err
	}
	if n, err := strconv.Atoi(strings.TrimSpace(size)); err != nil || n > maxDatasheet {
		return "", fmt.Errorf("it is larger than %d MiB", maxDatasheet>>20)
	}
	return git(ctx, ".", "cat-file", "blob", name)
}
