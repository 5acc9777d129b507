package child

import (
	"syscall"
	"time"
)

// limitCPU lets the process use so much more processor time; then the system ends it. It is for the helper that outlives its parent
// in the middle of an endless loop: the parent's own clock is stricter.
func limitCPU(more time.Duration) {
	var used syscall.Rusage
	var limit syscall.Rlimit
	if syscall.Getrusage(syscall.RUSAGE_SELF, &used) != nil || syscall.Getrlimit(syscall.RLIMIT_CPU, &limit) != nil {
		return
	}
	soft := uint64(used.Utime.Sec+used.Stime.Sec) + uint64(more/time.Second) + 1
	limit.Cur = min(soft, limit.Max)
	_ = syscall.Setrlimit(syscall.RLIMIT_CPU, &limit)
}
