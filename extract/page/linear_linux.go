package page

import (
	"context"
	"sync"
	"syscall"

	"github.com/tetratelabs/wazero/experimental"
)

// linear is the sandbox's memory, at a fixed place: an array that Go grows is copied each time, and lies twice and thrice in the heap
// until it is collected. Only what the sandbox touches takes memory.
type linear struct {
	all  []byte
	used uint64
}

// freed keeps the places of sandboxes that are done. They are used again and never unmapped, so that a late look into one finds
// zeros and no fault.
var freed struct {
	sync.Mutex
	list []*linear
}

// newLinear finds a place for a sandbox.
func newLinear(_, most uint64) experimental.LinearMemory {
	freed.Lock()
	defer freed.Unlock()
	for i, l := range freed.list {
		if uint64(len(l.all)) == most {
			freed.list = append(freed.list[:i:i], freed.list[i+1:]...)
			return l
		}
	}
	all, err := syscall.Mmap(-1, 0, int(most), syscall.PROT_READ|syscall.PROT_WRITE, syscall.MAP_PRIVATE|syscall.MAP_ANON|syscall.MAP_NORESERVE)
	if err != nil {
		all = make([]byte, most) // what is not touched takes no memory either
	}
	return &linear{all: all}
}

// Reallocate implements experimental.LinearMemory.
func (l *linear) Reallocate(size uint64) []byte {
	if size > uint64(len(l.all)) {
		return nil
	}
	l.used = max(l.used, size)
	return l.all[:size:size]
}

// Free implements experimental.LinearMemory: the system takes the memory back and gives zeros in its place.
func (l *linear) Free() {
	if syscall.Madvise(l.all[:l.used], syscall.MADV_DONTNEED) != nil {
		return // whatever is left in there must not come to another document
	}
	l.used = 0
	freed.Lock()
	defer freed.Unlock()
	freed.list = append(freed.list, l)
}

// ownMemory has sandboxes of the context use linear memory.
func ownMemory(ctx context.Context) context.Context {
	return experimental.WithMemoryAllocator(ctx, experimental.MemoryAllocatorFunc(newLinear))
}
