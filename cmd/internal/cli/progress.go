package cli

import (
	"io"
	"os"
	"sync"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// patience is how long the work may take before a progress bar appears.
const patience = time.Second

// steps is the fineness of one input on the bar: its pages move the bar before it is finished.
const steps = 100

// progress is a bar on standard error. The nil *progress shows nothing.
type progress struct {
	mu        sync.Mutex
	timer     *time.Timer
	bar       *progressbar.ProgressBar // nil until patience is over
	done, all int
}

// newProgress starts the clock of a bar over the inputs; nil where standard error is no terminal. Records in a stream do not
// count: nobody knows how many follow.
func newProgress(w io.Writer, list []input) *progress {
	if !isTerminal(w) {
		return nil
	}
	p := &progress{}
	for _, in := range list {
		if counts(in) {
			p.all += steps
		}
	}
	if p.all == 0 {
		return nil
	}
	p.timer = time.AfterFunc(patience, func() {
		p.mu.Lock()
		defer p.mu.Unlock()
		p.bar = progressbar.NewOptions(p.all, progressbar.OptionSetWriter(w), progressbar.OptionSetDescription("reading"),
			progressbar.OptionSetWidth(30), progressbar.OptionSetPredictTime(true), progressbar.OptionClearOnFinish())
		p.bar.Set(p.done)
	})
	return p
}

func counts(in input) bool { return in.path != "" && in.fault == nil }

// share is one input's part of the bar: pages moves it, end completes it.
func (p *progress) share(in input) (pages func(done, total int), end func()) {
	if p == nil || !counts(in) {
		return nil, func() {}
	}
	at := 0
	to := func(step int) {
		p.mu.Lock()
		defer p.mu.Unlock()
		if step <= at {
			return
		}
		p.done += step - at
		at = step
		if p.bar != nil {
			p.bar.Set(p.done)
		}
	}
	return func(done, total int) { to(steps * min(done, total) / max(total, 1)) }, func() { to(steps) }
}

// over takes the bar off the screen before anything is written to w; the next step of the work draws it again.
func (p *progress) over(w io.Writer) io.Writer {
	if p == nil {
		return w
	}
	return writer(func(b []byte) (int, error) {
		p.mu.Lock()
		defer p.mu.Unlock()
		if p.bar != nil {
			p.bar.Clear()
		}
		return w.Write(b)
	})
}

// stop ends the clock and takes the bar off the screen.
func (p *progress) stop() {
	if p == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.timer.Stop()
	if p.bar != nil {
		p.bar.Clear()
	}
}

type writer func([]byte) (int, error)

func (w writer) Write(b []byte) (int, error) { return w(b) }

func isTerminal(stream any) bool {
	f, ok := stream.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}
