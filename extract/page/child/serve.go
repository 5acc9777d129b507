package child

import (
	"fmt"
	"os"
	"runtime/debug"
	"runtime/metrics"
	"time"
)

// Work is what a helper of one kind does.
type Work struct {
	Kind       string
	Do         func(Message) Message
	MaxRequest int   // bytes
	MaxMemory  int64 // bytes of the process; above it the helper ends itself
	MaxCPU     time.Duration
}

// Is tells whether this process is a helper.
func Is() bool { return os.Getenv(kindVariable) != "" }

// Serve does nothing in an ordinary process. In a helper of the work's kind it answers requests until its input closes, and then
// ends the process: it never returns. Call it from an init function, since main belongs to somebody else (a test's runner, too).
func Serve(w Work) {
	if os.Getenv(kindVariable) != w.Kind {
		return
	}
	in, out := os.Stdin, os.Stdout
	os.Stdout = os.Stderr // what a library prints must not stand among the answers
	debug.SetMemoryLimit(w.MaxMemory * 3 / 4)
	go watchMemory(w.MaxMemory)
	requests := make(chan Message)
	go func() {
		// Reading ahead notices that the parent is gone while work runs on.
		for {
			request, err := readMessage(in, w.MaxRequest)
			if err != nil {
				os.Exit(0)
			}
			requests <- request
		}
	}()
	for request := range requests {
		limitCPU(w.MaxCPU)
		if err := w.Do(request).write(out); err != nil {
			os.Exit(1)
		}
		if held() > idleMemory {
			debug.FreeOSMemory()
		}
	}
}

const (
	watchEvery = 20 * time.Millisecond
	idleMemory = 96 << 20 // bytes that a helper without work may keep
)

// watchMemory ends the process when it holds more than limit bytes: the collector's own limit only makes it try harder.
func watchMemory(limit int64) {
	for range time.Tick(watchEvery) {
		if held() > limit {
			fmt.Fprintf(os.Stderr, "more than %d MB of memory used\n", limit>>20)
			os.Exit(2)
		}
	}
}

// held is how much memory the Go runtime has from the system.
func held() int64 {
	sample := []metrics.Sample{{Name: "/memory/classes/total:bytes"}, {Name: "/memory/classes/heap/released:bytes"}}
	metrics.Read(sample)
	return int64(sample[0].Value.Uint64()) - int64(sample[1].Value.Uint64())
}
