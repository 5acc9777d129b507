// Command pvtally asks whether the numbers of a photovoltaic module's datasheet tally.
package main

import (
	"os"
	"runtime/debug"

	"pvtally/cmd/internal/cli"
)

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400) // records are small and soon done with: a third of the time goes into collecting them sooner
	}
	os.Exit(cli.Command{Stdin: os.Stdin, Stdout: os.Stdout, Stderr: os.Stderr}.Main(os.Args[1:]))
}
