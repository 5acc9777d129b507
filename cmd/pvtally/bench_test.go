package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// The benchmarks compare a check with `jq -c .`, which reads and writes the same JSON and judges nothing, in one run:
//
//	go test ./cmd/pvtally -run '^$' -bench . -benchtime 5x

// BenchmarkCatalogue checks a folder of 10,000 records made of the open list.
func BenchmarkCatalogue(b *testing.B) {
	folder := b.TempDir()
	makeRecords(b, nil, "10000", folder)
	files, err := filepath.Glob(filepath.Join(folder, "*", "*.json"))
	if err != nil || len(files) != 10000 {
		b.Fatalf("%d records, %v", len(files), err)
	}
	compare(b, func() *exec.Cmd { return exec.Command("jq", append([]string{"-c", "."}, files...)...) },
		func(program string) *exec.Cmd { return exec.Command(program, "check", "--fail-on", "never", folder) })
}

// BenchmarkStream sends 10,000 records through as JSON Lines.
func BenchmarkStream(b *testing.B) {
	var records bytes.Buffer
	makeRecords(b, &records, "10000", "-")
	in := func(cmd *exec.Cmd) *exec.Cmd {
		cmd.Stdin = bytes.NewReader(records.Bytes())
		return cmd
	}
	compare(b, func() *exec.Cmd { return in(exec.Command("jq", "-c", ".")) },
		func(program string) *exec.Cmd {
			return in(exec.Command(program, "check", "--output", "jsonl", "--fail-on", "never", "-"))
		})
}

// BenchmarkStart starts the program for one small record.
func BenchmarkStart(b *testing.B) {
	program := linkProgram(b)
	for b.Loop() {
		cmd := exec.Command(program, "check", "--output", "jsonl", "--fail-on", "never", "-")
		cmd.Stdin = bytes.NewReader([]byte(`{"format": "pvtally.sheet/1"}`))
		if out, err := cmd.CombinedOutput(); err != nil {
			b.Fatalf("%v\n%s", err, out)
		}
	}
}

func makeRecords(b *testing.B, to io.Writer, args ...string) {
	b.Helper()
	cmd := exec.Command("go", append([]string{"run", "../../testdata/open/catalogue"}, args...)...)
	cmd.Stdout, cmd.Stderr = to, os.Stderr
	if err := cmd.Run(); err != nil {
		b.Fatal(err)
	}
}

// compare runs both in turn, so that whatever else the machine does meets both alike.
func compare(b *testing.B, jq func() *exec.Cmd, own func(program string) *exec.Cmd) {
	if _, err := exec.LookPath("jq"); err != nil {
		b.Skip("jq is not installed")
	}
	program := linkProgram(b)
	var theirs, ours, theirsCPU, oursCPU time.Duration
	var memory int64
	for b.Loop() {
		t, c, _ := measure(b, jq())
		theirs, theirsCPU = theirs+t, theirsCPU+c
		t, c, m := measure(b, own(program))
		ours, oursCPU, memory = ours+t, oursCPU+c, max(memory, m)
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(theirs.Seconds()/float64(b.N), "jq-s")
	b.ReportMetric(ours.Seconds()/float64(b.N), "pvtally-s")
	b.ReportMetric(ours.Seconds()/theirs.Seconds(), "×jq")
	b.ReportMetric(oursCPU.Seconds()/theirsCPU.Seconds(), "×jq-cpu")
	b.ReportMetric(float64(memory)/1000, "pvtally-MB")
}

func measure(b *testing.B, cmd *exec.Cmd) (wall, cpu time.Duration, kilobytes int64) {
	b.Helper()
	var errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = io.Discard, &errs
	start := time.Now()
	if err := cmd.Run(); err != nil {
		b.Fatalf("%v\n%s", err, errs.Bytes())
	}
	return time.Since(start), cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime(), peak(cmd.ProcessState)
}
