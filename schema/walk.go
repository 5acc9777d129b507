package schema

import (
	"reflect"
	"strconv"
)

// Walk visits every printed number in canonical order with its JSON Pointer. What speaks about values rather than being one
// (source, also, unresolved, evidence) is not visited.
func (s *Sheet) Walk(visit func(pointer string, n Number)) {
	walker{number: visit}.object(reflect.ValueOf(s).Elem(), sheetLayout, "")
}

// WalkText visits every printed text in canonical order with its JSON Pointer, except the format key and what Walk leaves out.
func (s *Sheet) WalkText(visit func(pointer, text string)) {
	walker{text: visit}.object(reflect.ValueOf(s).Elem(), sheetLayout, "")
}

type walker struct {
	number func(pointer string, n Number)
	text   func(pointer, text string)
}

// aboutValues are the top-level keys that hold no printed value of the module.
var aboutValues = map[string]bool{"format": true, "source": true, "also": true, "unresolved": true, "evidence": true}

func (w walker) object(object reflect.Value, l *layout, at string) {
	for i := range l.fields {
		f := &l.fields[i]
		if l == sheetLayout && aboutValues[f.name] {
			continue
		}
		v := f.in(object)
		switch f.kind {
		case kindNumber:
			if w.number != nil {
				if n := v.Addr().Interface().(*Number); !n.IsZero() {
					w.number(at+"/"+f.name, *n)
				}
			}
		case kindText:
			if w.text != nil && v.Len() > 0 {
				w.text(at+"/"+f.name, v.String())
			}
		case kindNumbers:
			if w.number != nil {
				for i, n := range *v.Addr().Interface().(*[]Number) {
					w.number(at+"/"+f.name+"/"+strconv.Itoa(i), n)
				}
			}
		case kindTexts:
			if w.text != nil {
				for i, t := range *v.Addr().Interface().(*[]string) {
					w.text(at+"/"+f.name+"/"+strconv.Itoa(i), t)
				}
			}
		case kindObject:
			w.object(v, f.inner, at+"/"+f.name)
		case kindObjects:
			for i := range v.Len() {
				w.object(v.Index(i), f.inner, at+"/"+f.name+"/"+strconv.Itoa(i))
			}
		}
	}
}
