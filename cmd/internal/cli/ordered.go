package cli

import (
	"context"
	"iter"
	"sync"
)

// ahead is how many results per worker may wait for an earlier, slower one: it bounds memory in a stream of any length.
const ahead = 8

// ordered applies do to every item on n goroutines and yields the results in the order of the items, so that the output is the
// same whatever n is. It takes items only as results leave. When ctx ends, or the caller stops, no further item is taken.
func ordered[I, O any](ctx context.Context, n int, items iter.Seq[I], do func(context.Context, I) O) iter.Seq[O] {
	type slot struct {
		item I
		out  chan O
	}
	return func(yield func(O) bool) {
		outer := ctx
		ctx, cancel := context.WithCancel(outer)
		work := make(chan slot)
		queue := make(chan chan O, n*ahead)
		var workers sync.WaitGroup
		defer func() {
			cancel()
			if outer.Err() == nil { // an interrupt does not wait: a worker may hang in a pipe that nobody writes to
				workers.Wait()
			}
		}()

		go func() { // not waited for: it may be blocked in a read of standard input that nothing can end
			defer close(queue)
			defer close(work)
			for item := range items {
				s := slot{item, make(chan O, 1)}
				select {
				case queue <- s.out:
				case <-ctx.Done():
					return
				}
				select {
				case work <- s:
				case <-ctx.Done():
					close(s.out)
					return
				}
			}
		}()
		for range n {
			workers.Go(func() {
				for {
					select {
					case s, more := <-work:
						if !more {
							return
						}
						s.out <- do(ctx, s.item)
					case <-ctx.Done():
						return
					}
				}
			})
		}
		for {
			select {
			case out, more := <-queue:
				if !more {
					return
				}
				result, done := <-out
				if !done || !yield(result) {
					return
				}
			case <-ctx.Done():
				return
			}
		}
	}
}
