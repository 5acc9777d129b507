package schema

import (
	"fmt"
	"reflect"
	"strings"
)

// At is the printed number a JSON Pointer (RFC 6901) names, and whether there is one: false where the field is absent,
// is no number, or lies outside the record. Evidence is reached through the Evidence map, not through At.
func (s *Sheet) At(pointer string) (Number, bool) {
	if n, _ := s.number(pointer); n != nil && !n.IsZero() {
		return *n, true
	}
	return Number{}, false
}

// Set puts a number where pointer says; the zero Number takes the value away. The objects and list entries on the way must be
// there already: Set never adds a model.
func (s *Sheet) Set(pointer string, n Number) error {
	at, entry := s.number(pointer)
	switch {
	case at == nil:
		return fmt.Errorf("could not set %q: the record has no number there", shown(pointer, 200))
	case entry && n.IsZero():
		return fmt.Errorf("could not set %q: an entry of a list cannot be taken away", shown(pointer, 200))
	}
	*at = n
	return nil
}

// HalfStep is half the width of the interval a printed value stands for: the evidence's half_step where a conversion gave one,
// else half a unit of the last printed digit (37.2 gives 0.05, 1500 gives 0.5). It is 0 where pointer names no number.
func (s *Sheet) HalfStep(pointer string) float64 {
	n, ok := s.At(pointer)
	if !ok {
		return 0
	}
	if e, ok := s.Evidence[pointer]; ok && !e.HalfStep.IsZero() {
		return e.HalfStep.Float()
	}
	return n.HalfStep()
}

// number finds the Number at pointer, present or not, and says whether it is an entry of a list; nil where the record has no place for one.
func (s *Sheet) number(pointer string) (n *Number, entry bool) {
	object, l := reflect.ValueOf(s).Elem(), sheetLayout
	for {
		name, rest, ok := nextSegment(pointer)
		if !ok {
			return nil, false
		}
		i, known := l.byName[name]
		if !known {
			return nil, false
		}
		f := &l.fields[i]
		v := in(object, f.index)
		switch f.kind {
		case kindNumber:
			if rest != "" {
				return nil, false
			}
			return v.Addr().Interface().(*Number), false
		case kindNumbers:
			list := *v.Addr().Interface().(*[]Number)
			i, rest, ok := nextIndex(rest, len(list))
			if !ok || rest != "" {
				return nil, false
			}
			return &list[i], true
		case kindObject:
			object, l, pointer = v, f.inner, rest
		case kindObjects:
			i, rest, ok := nextIndex(rest, v.Len())
			if !ok {
				return nil, false
			}
			object, l, pointer = v.Index(i), f.inner, rest
		default:
			return nil, false
		}
	}
}

// nextSegment cuts the first reference token off a pointer and undoes its escapes.
func nextSegment(pointer string) (name, rest string, ok bool) {
	if pointer == "" || pointer[0] != '/' {
		return "", "", false
	}
	name = pointer[1:]
	if i := strings.IndexByte(name, '/'); i >= 0 {
		name, rest = name[:i], name[i:]
	}
	return unescape(name), rest, true
}

// nextIndex cuts an array index below n off a pointer: digits without a leading zero (RFC 6901, section 4).
func nextIndex(pointer string, n int) (i int, rest string, ok bool) {
	name, rest, ok := nextSegment(pointer)
	if !ok || name == "" || len(name) > 9 || (name[0] == '0' && name != "0") {
		return 0, "", false
	}
	for _, c := range []byte(name) {
		if c < '0' || c > '9' {
			return 0, "", false
		}
		i = i*10 + int(c-'0')
	}
	return i, rest, i < n
}

var (
	escaper   = strings.NewReplacer("~", "~0", "/", "~1")
	unescaper = strings.NewReplacer("~1", "/", "~0", "~")
)

// escape makes a key a reference token.
func escape(name string) string {
	if !strings.ContainsAny(name, "~/") {
		return name
	}
	return escaper.Replace(name)
}

func unescape(token string) string {
	if strings.IndexByte(token, '~') < 0 {
		return token
	}
	return unescaper.Replace(token)
}

// comparePointers orders pointers token by token; two tokens of digits compare as numbers, so that /models/2 comes before /models/10.
func comparePointers(a, b string) int {
	for a != "" && b != "" {
		var x, y string
		x, a = cutToken(a)
		y, b = cutToken(b)
		if c := compareTokens(x, y); c != 0 {
			return c
		}
	}
	return len(a) - len(b)
}

func cutToken(pointer string) (token, rest string) {
	if i := strings.IndexByte(pointer[1:], '/'); i >= 0 {
		return pointer[:i+1], pointer[i+1:]
	}
	return pointer, ""
}

// compareTokens puts tokens of digits first, by number, then the others.
func compareTokens(a, b string) int {
	switch p, q := digits(a[1:]), digits(b[1:]); {
	case p != q && p:
		return -1
	case p != q:
		return 1
	case p:
		x, y := strings.TrimLeft(a[1:], "0"), strings.TrimLeft(b[1:], "0")
		if c := len(x) - len(y); c != 0 {
			return c
		}
		if c := strings.Compare(x, y); c != 0 {
			return c
		}
	}
	return strings.Compare(a, b)
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }
