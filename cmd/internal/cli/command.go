// Package cli is the command line of pvtally: it finds the inputs, has them read and judged, writes the results in input order,
// and turns what happened into an exit code. It is the only package that knows files, flags and terminals.
package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"

	"github.com/spf13/cobra"

	"pvtally/cmd/internal/report"
)

// Command is one run of the program on the given streams. A stream that is an *os.File may turn out to be a terminal, which then
// gets colours (standard output) or a progress bar (standard error).
type Command struct {
	Stdin  io.Reader
	Stdout io.Writer
	Stderr io.Writer
}

// Main runs the command line args (without the program's name) and returns the exit code.
func (c Command) Main(args []string) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second interrupt ends the process at once

	root := c.root()
	root.SetArgs(args)
	root.SetIn(c.Stdin)
	root.SetOut(c.Stdout)
	root.SetErr(c.Stderr)
	ran, err := root.ExecuteContextC(ctx)
	code := exitCode(err)
	if err != nil && !errors.Is(err, errSaid) {
		c.warn("%v", err)
	}
	if code == Usage {
		c.warn("'%s --help' shows what is possible", ran.CommandPath())
	}
	return code
}

func (c Command) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "pvtally",
		Short: "Do the numbers of this PV sheet tally?",
		Long: `pvtally reads photovoltaic modules' datasheets into records in which every value is traced to its page,
and checks that the printed numbers tally with each other, with physics and with the trade's practice.

Inputs are files, folders or - (standard input). A folder is searched for datasheets and records.`,
		Version:           version(),
		SilenceErrors:     true,
		SilenceUsage:      true,
		CompletionOptions: cobra.CompletionOptions{HiddenDefaultCmd: true},
	}
	orHelp(root)
	root.SetFlagErrorFunc(flagError)
	root.SetVersionTemplate("{{.Name}} {{.Version}}\n")
	root.AddCommand(c.readCommand(), c.checkCommand(), c.compareCommand(), c.changesCommand(), c.queryCommand(), c.rulesCommand(), c.schemaCommand())
	return root
}

// warn says one line on standard error. What it says may quote a hostile file, so control characters are made visible.
func (c Command) warn(format string, args ...any) {
	fmt.Fprintf(c.Stderr, "pvtally: %s\n", report.Plain(fmt.Sprintf(format, args...)))
}

// version is the module's version as the build recorded it.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return info.Main.Version
	}
	return "(devel)"
}
