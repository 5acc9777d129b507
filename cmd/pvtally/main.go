// Command pvtally asks whether the numbers of a photovoltaic module's datasheet tally.
package main

import (
	"os"

	"pvtally/cmd/internal/cli"
)

func main() {
	os.Exit(cli.Command{Stdin: os.Stdin, Stdout: os.Stdout, Stderr: os.Stderr}.Main(os.Args[1:]))
}
