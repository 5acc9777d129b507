package page

import (
	"context"
	"runtime"
	"sync"
)

// budget bounds what is under way at the same time, over all documents, in units of whatever is scarce.
type budget struct {
	taking sync.Mutex // one takes at a time: two that each have half of what they need would wait for ever
	units  chan struct{}
}

func newBudget(units int) *budget { return &budget{units: make(chan struct{}, units)} }

// take waits until so many units are free, or all of them where more are asked for, and gives what puts them back.
func (b *budget) take(ctx context.Context, n int) (giveBack func(), err error) {
	b.taking.Lock()
	defer b.taking.Unlock()
	n = min(max(n, 1), cap(b.units))
	for taken := range n {
		select {
		case b.units <- struct{}{}:
		case <-ctx.Done():
			b.free(taken)
			return nil, ctx.Err()
		}
	}
	return sync.OnceFunc(func() { b.free(n) }), nil
}

func (b *budget) free(n int) {
	for range n {
		<-b.units
	}
}

// A page whose lettering is looked for takes 8 to 20 bytes a pixel; one whose lines are being read, 2.
const canvasMegapixels = 18 // two sheets of A4

var (
	canvasBudget = newBudget(canvasMegapixels)
	pageBudget   = newBudget(runtime.GOMAXPROCS(0) + 1)
)

// megapixels is what parts of a page, or all of it where none are named, take of the canvas budget.
func (p *Page) megapixels(parts []Box) int {
	scale := dpiFor(p.Width, p.Height) / pointsPerInch
	area := 0.0
	for _, b := range parts {
		area += b.W() * b.H()
	}
	if len(parts) == 0 {
		area = p.Width * p.Height
	}
	return int(area*scale*scale/1e6) + 1
}
