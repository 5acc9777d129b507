// Package browser opens the program's pages in headless Chromium, for tests: what a page says on its console, what it asks of the
// network, how it looks, what an accessibility check finds. It speaks the DevTools protocol
// (https://chromedevtools.github.io/devtools-protocol/) and is no part of the program.
package browser

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"

	"golang.org/x/net/websocket"
)

// programs are the names under which Chromium is installed.
var programs = []string{"chromium", "chromium-browser", "google-chrome-stable", "google-chrome"}

// patience bounds one command, start bounds the browser's own start on a slow machine.
const (
	patience = 60 * time.Second
	start    = 60 * time.Second
)

// Page is one tab of a browser that ends with the test.
type Page struct {
	conn    *websocket.Conn
	session string
	mu      sync.Mutex
	next    int
	waiting map[int]chan message
	seen    Seen
	loaded  chan struct{}
}

// Seen is what a page did since it was opened.
type Seen struct {
	Console  []string // messages and uncaught errors
	Requests []string // addresses asked for, the page's own included
}

type message struct {
	ID     int             `json:"id,omitempty"`
	Method string          `json:"method,omitempty"`
	Params json.RawMessage `json:"params,omitempty"`
	Result json.RawMessage `json:"result,omitempty"`
	Error  *struct {
		Message string `json:"message"`
	} `json:"error,omitempty"`
	Session string `json:"sessionId,omitempty"`
}

// Open starts a browser and opens an address. Without Chromium the test is skipped; with CI set it fails.
func Open(t testing.TB, address string) *Page {
	t.Helper()
	program := ""
	for _, name := range programs {
		if path, err := exec.LookPath(name); err == nil {
			program = path
			break
		}
	}
	if program == "" {
		if os.Getenv("CI") != "" {
			t.Fatal("Chromium is not installed")
		}
		t.Skip("Chromium is not installed (Debian package chromium)")
	}
	p, err := launch(t, program)
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range []string{"Page.enable", "Runtime.enable", "Log.enable", "Network.enable"} {
		p.do(t, step, nil)
	}
	p.do(t, "Page.navigate", map[string]any{"url": address})
	select {
	case <-p.loaded:
	case <-time.After(patience):
		t.Fatalf("%s did not load", address)
	}
	return p
}

func launch(t testing.TB, program string) (*Page, error) {
	profile, err := os.MkdirTemp("", "pvtally-browser-")
	if err != nil {
		return nil, err
	}
	ctx, cancel := context.WithCancel(context.Background())
	cmd := exec.CommandContext(ctx, program, "--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-dev-shm-usage", "--disable-sync", "--disable-default-apps", "--hide-scrollbars", "--force-color-profile=srgb",
		"--remote-debugging-port=0", "--remote-allow-origins=*", "--user-data-dir="+profile, "about:blank")
	cmd.WaitDelay = 5 * time.Second
	errs, err := cmd.StderrPipe()
	if err != nil {
		cancel()
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		cancel()
		return nil, fmt.Errorf("could not start %q: %w", program, err)
	}
	t.Cleanup(func() {
		cancel()
		cmd.Wait()
		for range 20 { // its other processes end a little later, and write until then
			if os.RemoveAll(profile) == nil {
				return
			}
			time.Sleep(50 * time.Millisecond)
		}
	})
	address := make(chan string, 1)
	go func() {
		lines := bufio.NewScanner(errs)
		for lines.Scan() {
			if _, at, ok := strings.Cut(lines.Text(), "DevTools listening on "); ok {
				address <- at
			}
		}
		close(address)
	}()
	select {
	case at, ok := <-address:
		if !ok {
			return nil, errors.New("the browser ended before it listened")
		}
		return connect(t, at)
	case <-time.After(start):
		return nil, errors.New("the browser did not start")
	}
}

func connect(t testing.TB, address string) (*Page, error) {
	conn, err := websocket.Dial(address, "", "http://localhost")
	if err != nil {
		return nil, fmt.Errorf("could not connect to the browser: %w", err)
	}
	conn.MaxPayloadBytes = 256 << 20
	t.Cleanup(func() { conn.Close() })
	p := &Page{conn: conn, waiting: map[int]chan message{}, loaded: make(chan struct{}, 1)}
	go p.listen()
	var target struct{ TargetID string }
	p.into(t, "Target.createTarget", map[string]any{"url": "about:blank"}, &target)
	var attached struct{ SessionID string }
	p.into(t, "Target.attachToTarget", map[string]any{"targetId": target.TargetID, "flatten": true}, &attached)
	p.session = attached.SessionID
	return p, nil
}
