package main

import (
	"errors"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"pvtally": main})
}

// TestScripts runs the sessions of testdata/cli on the built program.
func TestScripts(t *testing.T) {
	data, err := filepath.Abs(filepath.Join("..", "..", "testdata"))
	if err != nil {
		t.Fatal(err)
	}
	cache := t.TempDir() // one for all sessions: it holds the compiled PDF reader, and nothing of an earlier state of the code
	testscript.Run(t, testscript.Params{
		Dir: filepath.Join(data, "cli"),
		Setup: func(env *testscript.Env) error {
			env.Setenv("DATA", data)
			env.Setenv("HOME", env.WorkDir)
			env.Setenv("XDG_CACHE_HOME", cache)
			program, _, _ := strings.Cut(env.Getenv("PATH"), string(filepath.ListSeparator))
			env.Setenv("PROGRAM", program) // the folder that holds nothing but the built program
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exits": exits},
	})
}

// exits runs a command and demands its exit code: exits 3 pvtally check nowhere.json
func exits(ts *testscript.TestScript, negated bool, args []string) {
	if negated || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND…")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("could not run %q: %v", args[1], err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}
