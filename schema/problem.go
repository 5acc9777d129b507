package schema

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Problem is one thing in a record that the format does not allow.
type Problem struct {
	Pointer string // where, as a JSON Pointer (RFC 6901); empty for the document as a whole
	Found   string // what stands there
	Allowed string // what may stand there
	Line    int    // 1 is the first; 0 where there is no place
}

// String is one line: `/models/0/stc/voc_v: found "37.2" (string), allowed: a number`. What a terminal could obey is shown escaped.
func (p Problem) String() string {
	where := "the document"
	if p.Pointer != "" {
		where = shown(p.Pointer, 200)
	}
	return fmt.Sprintf("%s: found %s, allowed: %s", where, p.Found, p.Allowed)
}

// Error is String with the line before it.
func (p Problem) Error() string {
	if p.Line == 0 {
		return p.String()
	}
	return fmt.Sprintf("line %d: %s", p.Line, p.String())
}

// sortProblems puts them in the order of the document, then of the pointers, and drops repetitions.
func sortProblems(problems []Problem) []Problem {
	slices.SortFunc(problems, func(a, b Problem) int {
		if c := a.Line - b.Line; c != 0 {
			return c
		}
		if c := comparePointers(a.Pointer, b.Pointer); c != 0 {
			return c
		}
		if c := strings.Compare(a.Found, b.Found); c != 0 {
			return c
		}
		return strings.Compare(a.Allowed, b.Allowed)
	})
	return slices.Compact(problems)
}

// describe says what a piece of JSON is: `"37.2" (string)`.
func describe(raw string) string {
	if raw == "" {
		return "nothing"
	}
	switch c := raw[0]; {
	case c == '{':
		return "an object"
	case c == '[':
		return "an array"
	case c == '"':
		return shown(raw, 60) + " (string)"
	case c == 'n':
		return "null (a key without a value is left out)"
	case c == 't' || c == 'f':
		return raw + " (boolean)"
	}
	return shown(raw, 60) + " (number)"
}

// shown is a text for one line of a message: at most limit runes, nothing in it that a terminal could obey.
func shown(s string, limit int) string {
	var b strings.Builder
	n := 0
	for _, r := range s {
		if n++; n > limit {
			b.WriteString("…")
			break
		}
		switch {
		case unicode.IsPrint(r):
			b.WriteRune(r)
		case r > 0xffff:
			fmt.Fprintf(&b, `\U%08x`, r)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return b.String()
}
