package schema

import (
	"fmt"
	"strings"
)

// What a message says is allowed. The decoder and the JSON Schema's validation take the same words from here.
const (
	allowedPlace = `the JSON Pointer of a value, such as "/models/0/stc/voc_v", or a note (a key that begins with "_")`
	allowedNote  = "at most 32 levels"
	foundUnknown = "an unknown key"
)

func foundMissing(f *field) string { return fmt.Sprintf("no %q", f.name) }

func (f *field) tooMany() string { return fmt.Sprintf("more than %d entries", f.limit) }

// allowed lists an object's keys.
func (l *layout) allowed() string {
	names := make([]string, len(l.fields))
	for i, f := range l.fields {
		names[i] = f.name
	}
	return strings.Join(names, ", ") + ` or a note (a key that begins with "_")`
}

// allowed says what the key may hold.
func (f *field) allowed() string {
	switch f.kind {
	case kindNumbers, kindTexts:
		return "a list, each " + f.element()
	case kindObjects:
		if f.limit > 0 {
			return fmt.Sprintf("a list of at most %d objects", f.limit)
		}
		return "a list of objects"
	case kindBox:
		return "a list of four numbers: left, top, right, bottom in points"
	}
	return f.element()
}

// element says what the key, or one entry of its list, may hold.
func (f *field) element() string {
	switch f.kind {
	case kindNumber, kindNumbers:
		if f.min0 {
			return "a number not below 0"
		}
		return "a number"
	case kindCount:
		return fmt.Sprintf("a whole number from 1 to %d", maxCount)
	case kindBox:
		return fmt.Sprintf("a number of points between -%d and %d", maxLength, maxLength)
	case kindText, kindTexts:
		switch {
		case f.text != nil:
			return f.text.allowed
		case f.must:
			return "a text"
		}
		return "a text that is not empty"
	}
	return "an object"
}
