package page

import (
	"context"
	"errors"
	"sync"
	"sync/atomic"
	"testing"
)

func TestBudget(t *testing.T) {
	b := newBudget(5)
	var now, most atomic.Int64
	var wait sync.WaitGroup
	for i := range 60 {
		wait.Go(func() {
			n := 1 + i%7 // more than there are, too
			giveBack, err := b.take(context.Background(), n)
			if err != nil {
				t.Error(err)
				return
			}
			most.Store(max(most.Load(), now.Add(int64(min(n, 5)))))
			now.Add(-int64(min(n, 5)))
			giveBack()
			giveBack() // once more makes no difference
		})
	}
	wait.Wait()
	if most.Load() > 5 || len(b.units) != 0 {
		t.Errorf("%d units were taken at a time, %d are still", most.Load(), len(b.units))
	}
	all, err := b.take(context.Background(), 5)
	if err != nil {
		t.Fatal(err)
	}
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := b.take(ended, 2); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want the context's error", err)
	}
	all()
	if len(b.units) != 0 {
		t.Errorf("%d units are still taken", len(b.units))
	}
}
