package child

import (
	"bytes"
	"context"
	"errors"
	"os"
	"runtime"
	"strings"
	"testing"
	"time"
)

// The test binary is its own helper.
func init() {
	Serve(Work{Kind: "test", Do: work, MaxRequest: 1 << 20, MaxMemory: 200 << 20, MaxCPU: time.Minute})
}

func work(m Message) Message {
	switch string(m.Head) {
	case "sleep":
		time.Sleep(time.Hour)
	case "loop":
		for i := 0; ; i++ {
			os.Getpid()
		}
	case "die":
		panic("broken\nsecond line")
	case "eat":
		for all := [][]byte{}; ; time.Sleep(time.Millisecond) {
			all = append(all, bytes.Repeat([]byte{1}, 16<<20))
			runtime.KeepAlive(all)
		}
	case "print":
		os.Stdout.WriteString("noise of a library\n")
	case "pid":
		return Message{Head: []byte(time.Now().String())}
	case "big":
		return Message{Body: make([]byte, 4<<20)}
	}
	return Message{Head: m.Head, Body: m.Body}
}

func TestDo(t *testing.T) {
	pool := &Pool{Kind: "test", Max: 2, MaxAnswer: 1 << 20}
	defer pool.Close()
	tests := []struct {
		name  string
		want  string // the answer
		err   error
		words string // of the error
	}{
		{name: "echo", want: "echo"},
		{name: "sleep", err: context.DeadlineExceeded},
		{name: "loop", err: context.DeadlineExceeded},
		{name: "die", err: ErrDied, words: "broken"},
		{name: "eat", err: ErrDied, words: "memory"},
		{name: "print", want: "print"},
		{name: "big", err: ErrDied, words: "limit"},
		{name: "after all that", want: "after all that"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			limit := 10 * time.Second
			if tt.err == context.DeadlineExceeded {
				limit = 200 * time.Millisecond
			}
			got, err := pool.Do(context.Background(), limit, Message{Head: []byte(tt.name), Body: []byte("body")})
			if !errors.Is(err, tt.err) || err != nil && !strings.Contains(err.Error(), tt.words) {
				t.Fatalf("got %v, want %v with %q", err, tt.err, tt.words)
			}
			if tt.err == nil && (string(got.Head) != tt.want || string(got.Body) != "body") {
				t.Errorf("got %q %q, want %q with its body", got.Head, got.Body, tt.want)
			}
		})
	}
}

func TestCancel(t *testing.T) {
	pool := &Pool{Kind: "test", Max: 1, MaxAnswer: 1 << 20}
	defer pool.Close()
	ctx, cancel := context.WithCancel(context.Background())
	time.AfterFunc(100*time.Millisecond, cancel)
	if _, err := pool.Do(ctx, time.Minute, Message{Head: []byte("sleep")}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want the context's error", err)
	}
	if _, err := pool.Do(ctx, time.Minute, Message{Head: []byte("echo")}); !errors.Is(err, context.Canceled) {
		t.Errorf("with an ended context: got %v, want its error", err)
	}
}

// More callers than helpers wait for each other.
func TestMany(t *testing.T) {
	pool := &Pool{Kind: "test", Max: 2, MaxAnswer: 1 << 20}
	defer pool.Close()
	const callers = 12
	done := make(chan error, callers)
	for range callers {
		go func() {
			got, err := pool.Do(context.Background(), time.Minute, Message{Head: []byte("x")})
			if err == nil && string(got.Head) != "x" {
				err = errors.New("another answer")
			}
			done <- err
		}()
	}
	for range callers {
		if err := <-done; err != nil {
			t.Error(err)
		}
	}
	if n := len(pool.idle); n > 2 {
		t.Errorf("%d helpers were started, want at most 2", n)
	}
}

func TestReadMessage(t *testing.T) {
	tests := []struct {
		name, data string
		ok         bool
	}{
		{"whole", "\x01\x00\x00\x00\x02\x00\x00\x00abc", true},
		{"cut", "\x01\x00\x00\x00\x02\x00\x00\x00ab", false},
		{"too long", "\xff\xff\xff\xff\xff\xff\xff\xffab", false},
		{"nothing", "", false},
	}
	for _, tt := range tests {
		if _, err := readMessage(strings.NewReader(tt.data), 1<<10); (err == nil) != tt.ok {
			t.Errorf("%s: got %v", tt.name, err)
		}
	}
}
