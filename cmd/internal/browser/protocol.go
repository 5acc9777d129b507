package browser

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/websocket"
)

// listen takes the browser's messages apart until the connection closes.
func (p *Page) listen() {
	for {
		var m message
		if err := websocket.JSON.Receive(p.conn, &m); err != nil {
			return
		}
		p.mu.Lock()
		if answer := p.waiting[m.ID]; m.ID > 0 && answer != nil {
			delete(p.waiting, m.ID)
			answer <- m
		}
		p.note(m)
		p.mu.Unlock()
	}
}

// note keeps what the tests ask about.
func (p *Page) note(m message) {
	switch m.Method {
	case "Page.loadEventFired":
		select {
		case p.loaded <- struct{}{}:
		default:
		}
	case "Runtime.consoleAPICalled", "Runtime.exceptionThrown", "Log.entryAdded":
		p.seen.Console = append(p.seen.Console, string(m.Params))
	case "Network.requestWillBeSent":
		var sent struct{ Request struct{ URL string } }
		if json.Unmarshal(m.Params, &sent) == nil && !strings.HasPrefix(sent.Request.URL, "data:") {
			p.seen.Requests = append(p.seen.Requests, sent.Request.URL)
		}
	}
}

// Seen is what the page did so far.
func (p *Page) Seen() Seen {
	p.mu.Lock()
	defer p.mu.Unlock()
	return Seen{append([]string(nil), p.seen.Console...), append([]string(nil), p.seen.Requests...)}
}

func (p *Page) do(t testing.TB, method string, params any) json.RawMessage {
	t.Helper()
	if params == nil {
		params = struct{}{}
	}
	raw, err := json.Marshal(params)
	if err != nil {
		t.Fatal(err)
	}
	p.mu.Lock()
	p.next++
	id, answer := p.next, make(chan message, 1)
	p.waiting[id] = answer
	p.mu.Unlock()
	if err := websocket.JSON.Send(p.conn, message{ID: id, Method: method, Params: raw, Session: p.session}); err != nil {
		t.Fatalf("%s: %v", method, err)
	}
	select {
	case m := <-answer:
		if m.Error != nil {
			t.Fatalf("%s: %s", method, m.Error.Message)
		}
		return m.Result
	case <-time.After(patience):
		t.Fatalf("%s: no answer", method)
	}
	return nil
}

func (p *Page) into(t testing.TB, method string, params, result any) {
	t.Helper()
	if err := json.Unmarshal(p.do(t, method, params), result); err != nil {
		t.Fatalf("%s: %v", method, err)
	}
}
