// Command generate makes the envelope's data and the repository's nameless part of the open list from the pvlib package's wheel:
//
//	pip download --no-deps pvlib==0.16.1
//	go run ./rules/envelope/generate pvlib-0.16.1-py3-none-any.whl
//
// The wheel (BSD-3-Clause) carries the California Energy Commission's list of lab-rated modules. Names of makers and modules stay in it.
package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "generate:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("name the wheel of the pvlib package, and nothing else")
	}
	rows, err := readWheel(args[0])
	if err != nil {
		return err
	}
	_, self, _, _ := runtime.Caller(0)
	envelope := filepath.Dir(filepath.Dir(self))
	open := filepath.Join(envelope, "..", "..", "testdata", "open")
	ranges, err := ranges(rows, filepath.Join(envelope, "bounds.csv"))
	if err != nil {
		return err
	}
	for _, out := range []struct {
		path string
		rows [][]string
	}{
		{filepath.Join(envelope, "ranges.csv"), ranges},
		{filepath.Join(envelope, "likeness.csv"), likeness(rows)},
		{filepath.Join(envelope, "slopes.csv"), slopes(rows)},
		{filepath.Join(open, "modules.csv"), cut(rows)},
	} {
		if err := writeCSV(out.path, out.rows); err != nil {
			return err
		}
	}
	return nil
}

func writeCSV(path string, rows [][]string) error {
	f, err := os.Create(path)
	if err != nil {
		return fmt.Errorf("could not write %q: %w", path, err)
	}
	defer f.Close()
	if err := encode(f, rows); err != nil {
		return fmt.Errorf("could not write %q: %w", path, err)
	}
	return f.Close()
}

func encode(w io.Writer, rows [][]string) error {
	c := csv.NewWriter(w)
	return c.WriteAll(rows)
}
