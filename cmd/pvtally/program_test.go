package main

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// linkProgram is the program itself: the test's own executable under the name by which TestMain knows it.
func linkProgram(t testing.TB) string {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	program := filepath.Join(t.TempDir(), "pvtally")
	if err := os.Link(self, program); err != nil {
		if data, err := os.ReadFile(self); err != nil || os.WriteFile(program, data, 0o755) != nil {
			t.Fatal("could not copy the test's program")
		}
	}
	return program
}

// peak is the most memory a process held, in kB; 0 where the system does not say.
func peak(state *os.ProcessState) int64 {
	if use, ok := state.SysUsage().(*syscall.Rusage); ok {
		return int64(use.Maxrss)
	}
	return 0
}
