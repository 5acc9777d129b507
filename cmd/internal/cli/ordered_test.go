package cli

import (
	"context"
	"iter"
	"runtime"
	"slices"
	"sync/atomic"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func numbers(n int, taken *atomic.Int64) iter.Seq[int] {
	return func(yield func(int) bool) {
		for i := range n {
			taken.Add(1)
			if !yield(i) {
				return
			}
		}
	}
}

func TestOrderedKeepsTheOrder(t *testing.T) {
	for _, jobs := range []int{1, 2, 7} {
		var taken atomic.Int64
		slow := make(chan struct{})
		got := slices.Collect(ordered(t.Context(), jobs, numbers(100, &taken), func(_ context.Context, i int) int {
			if i == 3 && jobs > 1 {
				<-slow // the fourth ends after the fifth
			}
			if i == 4 && jobs > 1 {
				close(slow)
			}
			return i * i
		}))
		var want []int
		for i := range 100 {
			want = append(want, i*i)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%d jobs: -want +got\n%s", jobs, diff)
		}
	}
}

func TestOrderedHoldsABoundedWindow(t *testing.T) {
	const jobs, all = 3, 100_000
	var taken atomic.Int64
	n := 0
	for range ordered(t.Context(), jobs, numbers(all, &taken), func(_ context.Context, i int) int { return i }) {
		n++
		if held := taken.Load() - int64(n); held > jobs*ahead+jobs+2 {
			t.Fatalf("%d items held after %d results", held, n)
		}
	}
	if n != all {
		t.Errorf("%d results, want %d", n, all)
	}
}

func TestOrderedStops(t *testing.T) {
	t.Run("when the caller has enough", func(t *testing.T) {
		before := runtime.NumGoroutine()
		var taken atomic.Int64
		for range ordered(t.Context(), 4, numbers(1_000_000, &taken), func(_ context.Context, i int) int { return i }) {
			break
		}
		for range 1000 {
			runtime.Gosched()
		}
		if n := taken.Load(); n > 4*ahead+8 {
			t.Errorf("%d items taken for one result", n)
		}
		if after := runtime.NumGoroutine(); after > before+1 { // the source's own goroutine may still be ending
			t.Errorf("%d goroutines before, %d after", before, after)
		}
	})
	t.Run("when the source blocks and the context ends", func(t *testing.T) {
		ctx, cancel := context.WithCancel(t.Context())
		defer cancel()
		never := make(chan struct{})
		defer close(never)
		blocked := func(yield func(int) bool) {
			if yield(1) {
				<-never
			}
		}
		n := 0
		for range ordered(ctx, 2, blocked, func(_ context.Context, i int) int { return i }) {
			n++
			cancel()
		}
		if n != 1 {
			t.Errorf("%d results, want 1", n)
		}
	})
}
