package schema

import (
	"reflect"
	"strings"
)

// kind tells how a field of the record is read, written and walked.
type kind uint8

const (
	kindText    kind = iota // string
	kindInt                 // int: counts about the file, no printed value
	kindNumber              // Number: a printed value
	kindTexts               // []string
	kindNumbers             // []Number
	kindBox                 // Box
	kindObject              // a struct
	kindObjects             // a slice of structs
	kindPlaces              // map[string]Evidence
)

// field is one key of an object: where it lies in the Go struct and what it holds.
type field struct {
	name  string
	index []int // for reflect.Value.FieldByIndex: an embedded struct's keys stand flat in the JSON
	kind  kind
	must  bool    // written even when empty
	inner *layout // of kindObject, kindObjects, kindPlaces
}

// layout is the table of one struct type, built once by reflection from the json tags, so that decoding, encoding, walking
// and the JSON Schema cannot disagree about the record's shape.
type layout struct {
	typ    reflect.Type
	fields []field
	byName map[string]int
	notes  []int // index of the Notes field
}

var sheetLayout = layoutOf(reflect.TypeFor[Sheet](), map[reflect.Type]*layout{})

func layoutOf(t reflect.Type, seen map[reflect.Type]*layout) *layout {
	if l := seen[t]; l != nil {
		return l
	}
	l := &layout{typ: t, byName: map[string]int{}}
	seen[t] = l
	l.add(t, nil, seen)
	return l
}

func (l *layout) add(t reflect.Type, at []int, seen map[reflect.Type]*layout) {
	for i := range t.NumField() {
		f := t.Field(i)
		index := append(append([]int(nil), at...), i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous:
			l.add(f.Type, index, seen)
			continue
		case f.Name == "Notes":
			l.notes = index
			continue
		case name == "-":
			continue
		}
		entry := field{name: name, index: index, must: options == ""}
		entry.kind, entry.inner = kindOf(f.Type, seen)
		l.byName[name] = len(l.fields)
		l.fields = append(l.fields, entry)
	}
}

func kindOf(t reflect.Type, seen map[reflect.Type]*layout) (kind, *layout) {
	switch t {
	case reflect.TypeFor[Number]():
		return kindNumber, nil
	case reflect.TypeFor[[]Number]():
		return kindNumbers, nil
	case reflect.TypeFor[[]string]():
		return kindTexts, nil
	case reflect.TypeFor[Box]():
		return kindBox, nil
	case reflect.TypeFor[map[string]Evidence]():
		return kindPlaces, layoutOf(t.Elem(), seen)
	}
	switch t.Kind() {
	case reflect.String:
		return kindText, nil
	case reflect.Int:
		return kindInt, nil
	case reflect.Struct:
		return kindObject, layoutOf(t, seen)
	case reflect.Slice:
		return kindObjects, layoutOf(t.Elem(), seen)
	}
	panic("schema: no JSON form for " + t.String())
}

// in is the field's place in an object; it never allocates.
func (f *field) in(object reflect.Value) reflect.Value {
	for _, i := range f.index {
		object = object.Field(i)
	}
	return object
}
