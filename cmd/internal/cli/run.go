package cli

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"runtime"
	"slices"

	"github.com/spf13/cobra"

	"pvtally/cmd/internal/report"
)

// work are the flags of every command that reads inputs.
type work struct {
	jobs    int
	out     string
	noCache bool
}

func (w *work) flags(cmd *cobra.Command) {
	cmd.Flags().IntVar(&w.jobs, "jobs", runtime.GOMAXPROCS(0), "how many inputs are worked on at once; the output is the same whatever it is")
	cmd.Flags().StringVar(&w.out, "out", "", "write to this `file` instead of standard output")
	cmd.Flags().BoolVar(&w.noCache, "no-cache", false, "neither use nor fill the cache of what was read")
	cmd.Args = func(_ *cobra.Command, args []string) error {
		if len(args) == 0 {
			return errors.New("name at least one file, folder or - (standard input)")
		}
		return nil
	}
}

func (w *work) validate() error {
	if w.jobs < 1 {
		return fmt.Errorf("--jobs %d: at least 1", w.jobs)
	}
	return nil
}

// run is one pass over the inputs: what could not be read is said on standard error as it comes up, and counted.
type run struct {
	Command
	work   work
	words  bool    // the words of datasheets are wanted, not their records
	drawn  bool    // their pages are wanted besides, to draw them
	list   []input // what the arguments name, where it is known before
	bar    *progress
	unread int
}

// each loads every input on several goroutines, applies do there too, and yields what became of it in input order.
func each[T any](ctx context.Context, r *run, args []string, do func(loaded) T) iter.Seq2[loaded, T] {
	type done struct {
		loaded
		result T
	}
	return func(yield func(loaded, T) bool) {
		list := r.list
		if list == nil {
			list = expand(args)
		}
		l := loader{cache: !r.work.noCache, words: r.words, drawn: r.drawn, pictures: r.drawn}
		if hasDatasheets(list) && !r.words {
			list = slices.Collect(r.spread(list)) // a stream's records may name the datasheets, so they come first
			l.known = sources(ctx, r.work.jobs, list)
		}
		r.bar = newProgress(r.Stderr, list)
		r.Stderr = r.bar.over(r.Stderr)
		l.progress = r.bar
		defer r.bar.stop()

		folders := map[int]bool{} // that held something of ours
		again := 0
		for d := range ordered(ctx, r.work.jobs, r.spread(list), func(ctx context.Context, in input) done {
			out := l.load(ctx, in)
			return done{out, do(out)}
		}) {
			switch {
			case d.kind == folderEnd && !folders[d.folder]:
				d.unread = &report.Unread{File: d.name, Problem: "nothing in this folder can be read", Remedy: "it is searched for " + searched}
			case d.found && !d.foreign:
				folders[d.folder] = true
			}
			if d.aside != "" {
				r.warn("%s: passed over: %s", d.name, d.aside)
			}
			if d.again {
				again++
			}
			if d.unread != nil {
				r.refuse(d.unread)
			}
			if !yield(d.loaded, d.result) {
				return
			}
		}
		if again > 0 {
			r.warn("%d passed over: datasheets whose records are in this run", again)
		}
	}
}

// nothing is for commands that do no work of their own on the goroutines.
func nothing(loaded) struct{} { return struct{}{} }

// open is the output of the run. What goes to standard output takes the bar off the screen first. After an interrupt nothing more is
// written, so that no report that looks whole is left of a part.
func (r *run) open(ctx context.Context, path string) (*output, error) {
	o, err := r.create(path)
	if err == nil && o.file == nil {
		o.Writer = writer(func(b []byte) (int, error) {
			if err := ctx.Err(); err != nil {
				return 0, err
			}
			return r.bar.over(r.Stdout).Write(b)
		})
	}
	return o, err
}

// refuse says and counts what could not be done with an input.
func (r *run) refuse(u *report.Unread) {
	r.unread++
	r.warn("%s", u)
}

// result is how a run ends: interrupted, something unread, or as found.
func (r *run) result(ctx context.Context, found error) error {
	switch {
	case ctx.Err() != nil:
		return outcome{Unread, errors.New("interrupted: the work is not complete")}
	case r.unread > 0:
		return outcome{Unread, errSaid}
	}
	return found
}
