package schema

import (
	"testing"
)

func TestWalk(t *testing.T) {
	s := mustDecode(t, kestrel).Sheet
	var last, at = -1, 0
	seen := map[string]bool{}
	doc := mustDecode(t, kestrel)
	visit := func(pointer string) {
		if seen[pointer] {
			t.Errorf("%s twice", pointer)
		}
		seen[pointer] = true
		offset, _, ok := doc.Position(pointer)
		if !ok || offset <= last {
			t.Errorf("%s at %d after %d: not in the order of the text", pointer, offset, last)
		}
		last = offset
		at++
	}
	s.Walk(func(pointer string, n Number) {
		visit(pointer)
		if got, ok := s.At(pointer); !ok || got != n {
			t.Errorf("%s: Walk says %v, At %v", pointer, n, got)
		}
	})
	last = -1
	s.WalkText(func(pointer, text string) {
		visit(pointer)
		start, end, _ := doc.Span(pointer)
		if unquoted(doc.src[start:end]) != text {
			t.Errorf("%s: Walk says %q, the text %s", pointer, text, doc.src[start:end])
		}
	})
	for _, pointer := range []string{"/body/cable_length_mm/1", "/models/0/low/pmax_w", "/models/0/rear_ratio/0/ratio_pct", "/models/1/name", "/models/0/aliases/0", "/certificates/1", "/maker"} {
		if !seen[pointer] {
			t.Errorf("%s was not visited", pointer)
		}
	}
	for _, pointer := range []string{"/format", "/source/pages", "/also/0/value", "/models/0/noct/pmax_w"} {
		if seen[pointer] {
			t.Errorf("%s was visited", pointer)
		}
	}
}

func BenchmarkWalk(b *testing.B) {
	s := mustDecode(b, small).Sheet
	b.ReportAllocs()
	for b.Loop() {
		s.Walk(func(string, Number) {})
	}
}

func BenchmarkAt(b *testing.B) {
	s := mustDecode(b, kestrel).Sheet
	b.ReportAllocs()
	for b.Loop() {
		s.At("/models/1/stc/voc_v")
	}
}
