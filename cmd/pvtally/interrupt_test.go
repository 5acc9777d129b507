package main

import (
	"bufio"
	"bytes"
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"

	"pvtally/cmd/internal/cli"
)

// TestInterrupt ends a run in the middle of a stream: what was done is there, the exit code says that it is not all.
func TestInterrupt(t *testing.T) {
	program := linkProgram(t)
	cmd := exec.Command(program, "check", "--output", "jsonl", "-")
	var errs bytes.Buffer
	cmd.Stderr = &errs
	in, err1 := cmd.StdinPipe()
	out, err2 := cmd.StdoutPipe()
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	if _, err := io.WriteString(in, `{"format":"pvtally.sheet/1","series":"KR"}`+"\n"); err != nil {
		t.Fatal(err)
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil || !strings.Contains(line, `"file":"-:1"`) {
		t.Fatalf("%q, %v\n%s", line, err, errs.Bytes())
	}
	if err := cmd.Process.Signal(os.Interrupt); err != nil { // standard input stays open: the program waits for more
		t.Fatal(err)
	}
	cmd.Wait()
	if code := cmd.ProcessState.ExitCode(); code != cli.Unread || !strings.Contains(errs.String(), "interrupted") {
		t.Errorf("%v, want exit code %d and a word about it; standard error: %s", cmd.ProcessState, cli.Unread, errs.Bytes())
	}
}
