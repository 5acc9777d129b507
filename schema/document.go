package schema

import (
	"bytes"
	"strings"
	"sync"

	"github.com/go-json-experiment/json/jsontext"
)

// Document is a decoded record together with the text it came from, so that every value's place can be told.
type Document struct {
	Sheet *Sheet
	src   string
}

// Position is where the value at a JSON Pointer begins: byte offset and line, the first being 0 and 1.
// It is false where the document holds nothing there. One call reads the text as far as the value.
func (d *Document) Position(pointer string) (offset, line int, ok bool) {
	start, _, ok := d.Span(pointer)
	if !ok {
		return 0, 0, false
	}
	return start, lineAt(d.src, start), true
}

// Span is the byte range of the value at a JSON Pointer, its end excluded.
func (d *Document) Span(pointer string) (start, end int, ok bool) { return span(d.src, pointer) }

// span finds a value by a scan that skips what is not on the way; src must be JSON as far as the value.
func span(src, pointer string) (start, end int, ok bool) {
	dec := scanner(src)
	defer dec.free()
	for pointer != "" {
		name, rest, ok := nextSegment(pointer)
		if !ok {
			return 0, 0, false
		}
		switch dec.PeekKind() {
		case '{':
			ok = dec.enterObject(name)
		case '[':
			ok = dec.enterArray(pointer)
		default:
			ok = false
		}
		if !ok {
			return 0, 0, false
		}
		pointer = rest
	}
	raw, err := dec.ReadValue()
	if err != nil {
		return 0, 0, false
	}
	end = int(dec.InputOffset())
	return end - len(raw), end, true
}

// scan is a pooled JSON reader: making one costs more than reading a small record.
type scan struct {
	jsontext.Decoder
	name []byte
}

var scans = sync.Pool{New: func() any { return new(scan) }}

func scanner(src string) *scan {
	s := scans.Get().(*scan)
	s.Reset(bytes.NewBufferString(src))
	return s
}

func (s *scan) free() {
	s.Reset(bytes.NewBuffer(nil))
	scans.Put(s)
}

// enterObject moves to the value of a key of the object that comes next.
func (s *scan) enterObject(key string) bool {
	if _, err := s.ReadToken(); err != nil {
		return false
	}
	for s.PeekKind() == '"' {
		raw, err := s.ReadValue()
		if err != nil {
			return false
		}
		if s.name, err = jsontext.AppendUnquote(s.name[:0], raw); err == nil && string(s.name) == key {
			return true
		}
		if s.SkipValue() != nil {
			return false
		}
	}
	return false
}

// enterArray moves to the element of the array that comes next which the first token of pointer names.
func (s *scan) enterArray(pointer string) bool {
	want, _, ok := nextIndex(pointer, int(^uint(0)>>1))
	if _, err := s.ReadToken(); !ok || err != nil {
		return false
	}
	for range want {
		if s.PeekKind() == ']' || s.SkipValue() != nil {
			return false
		}
	}
	k := s.PeekKind()
	return k != ']' && k != jsontext.KindInvalid
}

func lineAt(src string, offset int) int {
	return 1 + strings.Count(src[:min(max(offset, 0), len(src))], "\n")
}
