package schema

import (
	"reflect"
	"strconv"
)

// Walk visits every printed number in canonical order with its JSON Pointer. What speaks about values rather than being one
// (source, also, unresolved, evidence) is not visited.
func (s *Sheet) Walk(visit func(pointer string, n Number)) {
	walker{number: visit}.walk(reflect.ValueOf(s).Elem(), sheetLayout, "")
}

// WalkText visits every printed text in canonical order with its JSON Pointer, except the format key and what Walk leaves out.
func (s *Sheet) WalkText(visit func(pointer, text string)) {
	walker{text: visit}.walk(reflect.ValueOf(s).Elem(), sheetLayout, "")
}

type walker struct {
	number func(pointer string, n Number)
	text   func(pointer, text string)
}

// notValues are the top-level keys that hold no printed value of the module.
var notValues = map[string]bool{"format": true, "source": true, "also": true, "unresolved": true, "evidence": true}

// walk visits the leaves of an object; a pointer is put together only for what is there.
func (w walker) walk(object reflect.Value, l *layout, at string) {
	for i := range l.leaves {
		leaf := &l.leaves[i]
		if leaf.about {
			continue
		}
		v := in(object, leaf.index)
		switch leaf.field.kind {
		case kindNumber:
			if n := v.Addr().Interface().(*Number); w.number != nil && !n.IsZero() {
				w.number(at+leaf.path, *n)
			}
		case kindText:
			if t := v.Addr().Interface().(*string); w.text != nil && *t != "" {
				w.text(at+leaf.path, *t)
			}
		case kindNumbers:
			if w.number != nil {
				for i, n := range *v.Addr().Interface().(*[]Number) {
					w.number(at+leaf.path+"/"+strconv.Itoa(i), n)
				}
			}
		case kindTexts:
			if w.text != nil {
				for i, t := range *v.Addr().Interface().(*[]string) {
					w.text(at+leaf.path+"/"+strconv.Itoa(i), t)
				}
			}
		case kindObjects:
			for i := range v.Len() {
				w.walk(v.Index(i), leaf.field.inner, at+leaf.path+"/"+strconv.Itoa(i))
			}
		}
	}
}
