// Package child runs work on untrusted documents in helper processes of the same executable. A helper that hangs, eats memory or
// dies takes nobody with it: the parent kills it, reports an error for that one document and starts another for the next.
//
// A program offers work by calling Serve from an init function; an environment variable tells the helper from its parent, so that
// the arrangement works from every executable that links the package, test binaries among them. It knows nothing of documents.
package child

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"runtime"
	"sync"
	"time"
)

// kindVariable names the environment variable that makes an executable a helper; its value is the kind of work.
const kindVariable = "PVTALLY_HELPER"

// ErrStart says that no helper could be started; the caller may do the work itself.
var ErrStart = errors.New("could not start a helper process")

// ErrDied says that the helper ended before it answered.
var ErrDied = errors.New("the helper process broke off")

// Pool hands work of one kind to at most Max helpers at a time (0: as many as there are cores). Helpers start when they are needed
// and are kept for the next piece of work. The zero Pool with a Kind is ready; it may be used from several goroutines.
type Pool struct {
	Kind      string
	Max       int
	MaxAnswer int // bytes of an answer

	once  sync.Once
	slots chan struct{}
	mu    sync.Mutex
	idle  []*helper
}

// Do sends a request and gives the answer. The work may take limit, counted from when a helper is free. Do returns the context's
// error when that ends first (the helper is killed), context.DeadlineExceeded after limit, or an error that wraps ErrStart or
// ErrDied.
func (p *Pool) Do(ctx context.Context, limit time.Duration, request Message) (Message, error) {
	p.once.Do(func() {
		if p.Max <= 0 {
			p.Max = runtime.GOMAXPROCS(0)
		}
		p.slots = make(chan struct{}, p.Max)
	})
	select {
	case p.slots <- struct{}{}:
		defer func() { <-p.slots }()
	case <-ctx.Done():
		return Message{}, ctx.Err()
	}
	h, err := p.take()
	if err != nil {
		return Message{}, err
	}
	ctx, cancel := context.WithTimeout(ctx, limit)
	defer cancel()
	answer, err := h.do(ctx, request, p.MaxAnswer)
	if err != nil {
		h.kill()
		return Message{}, err
	}
	p.give(h)
	return answer, nil
}

func (p *Pool) take() (*helper, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if n := len(p.idle); n > 0 {
		h := p.idle[n-1]
		p.idle = p.idle[:n-1]
		return h, nil
	}
	return start(p.Kind)
}

func (p *Pool) give(h *helper) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.idle = append(p.idle, h)
}

// Close ends the idle helpers. Those of a program that exits end by themselves, when their input closes.
func (p *Pool) Close() {
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, h := range p.idle {
		h.kill()
	}
	p.idle = nil
}

// helper is the parent's end of one helper process.
type helper struct {
	cmd  *exec.Cmd
	in   io.WriteCloser
	out  io.Reader
	last *tail
	end  sync.Once
}

func start(kind string) (*helper, error) {
	path, err := executable()
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrStart, err)
	}
	h := &helper{cmd: exec.Command(path), last: &tail{}}
	h.cmd.Env = append(os.Environ(), kindVariable+"="+kind)
	h.cmd.Stderr = h.last
	if h.in, err = h.cmd.StdinPipe(); err == nil {
		if h.out, err = h.cmd.StdoutPipe(); err == nil {
			err = h.cmd.Start()
		}
	}
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrStart, err)
	}
	return h, nil
}

// executable is this program's file. On Linux the link stays good when an update replaces the file.
func executable() (string, error) {
	if runtime.GOOS == "linux" {
		return "/proc/self/exe", nil
	}
	return os.Executable()
}

func (h *helper) do(ctx context.Context, request Message, maxAnswer int) (Message, error) {
	type result struct {
		answer Message
		err    error
	}
	done := make(chan result, 1)
	go func() {
		if err := request.write(h.in); err != nil {
			done <- result{err: err}
			return
		}
		answer, err := readMessage(h.out, maxAnswer)
		done <- result{answer, err}
	}()
	select {
	case <-ctx.Done():
		h.kill()
		<-done
		return Message{}, ctx.Err()
	case r := <-done:
		if r.err != nil {
			h.kill()
			return Message{}, fmt.Errorf("%w: %w%s", ErrDied, r.err, h.last)
		}
		return r.answer, nil
	}
}

func (h *helper) kill() {
	h.end.Do(func() {
		_ = h.cmd.Process.Kill()
		_ = h.cmd.Wait()
	})
}

// tail keeps the first bytes of what a helper wrote to its error stream: the message of a crash stands at the top.
type tail struct {
	mu   sync.Mutex
	text []byte
}

const tailBytes = 300

func (t *tail) Write(b []byte) (int, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if room := tailBytes - len(t.text); room > 0 {
		t.text = append(t.text, b[:min(room, len(b))]...)
	}
	return len(b), nil
}

func (t *tail) String() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	line, _, _ := bytes.Cut(bytes.TrimSpace(t.text), []byte("\n"))
	if len(line) == 0 {
		return ""
	}
	return ": " + string(line)
}
