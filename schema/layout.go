package schema

import (
	"reflect"
	"strings"
)

// kind tells how a field of the record is read, written and walked.
type kind uint8

const (
	kindText    kind = iota // string
	kindCount               // int: a count about the file, no printed value
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
	owner string // the Go type that declares it
	index []int  // reflect's field numbers: an embedded struct's keys stand flat in the JSON
	kind  kind
	must  bool      // required, and written even when empty
	min0  bool      // of kindNumber: no negative numbers
	text  *textRule // of kindText, where not every text is allowed
	limit int       // of kindObjects, entries allowed; 0 is no limit
	inner *layout   // of kindObject, kindObjects, kindPlaces
	notes []int     // of kindPlaces, index of the notes between its entries
}

// layout is the table of one struct type, built once by reflection from the json tags, so that decoding, encoding, walking
// and the JSON Schema cannot disagree about the record's shape.
type layout struct {
	name   string // of the Go type
	fields []field
	byName map[string]int
	notes  []int  // index of the object's Notes
	must   uint64 // bit i set: fields[i] is required
	leaves []leaf
}

// leaf is a field of an object or of the objects inside it, with lists left whole.
type leaf struct {
	path  string // JSON Pointer from the object: "/stc/pmax_w"
	index []int
	field *field
	about bool // speaks about values, is none
}

// maxEntries bounds lists whose entries may be empty: "{}," must not be turned into a gigabyte of structs.
const maxEntries = 500

var sheetLayout = layoutOf(reflect.TypeFor[Sheet]())

func layoutOf(t reflect.Type) *layout {
	l := &layout{name: t.Name(), byName: map[string]int{}}
	l.add(t, nil)
	for i := range l.fields {
		f := &l.fields[i]
		if f.must {
			l.must |= 1 << i
		}
		about := l.name == "Sheet" && notValues[f.name]
		if f.kind != kindObject {
			l.leaves = append(l.leaves, leaf{"/" + f.name, f.index, f, about})
			continue
		}
		for _, in := range f.inner.leaves {
			l.leaves = append(l.leaves, leaf{"/" + f.name + in.path, join(f.index, in.index), in.field, about})
		}
	}
	return l
}

func (l *layout) add(t reflect.Type, at []int) {
	for i := range t.NumField() {
		f := t.Field(i)
		index := join(at, []int{i})
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous:
			l.add(f.Type, index)
		case f.Name == "Notes":
			l.notes = index
		case name != "-":
			entry := field{name: name, owner: t.Name(), index: index, must: options == "", min0: name == "half_step", text: textRules[name]}
			if notes, ok := t.FieldByName(f.Name + "Notes"); ok {
				entry.notes = join(at, notes.Index)
			}
			l.byName[name] = len(l.fields)
			l.fields = append(l.fields, fieldOf(f.Type, entry))
		}
	}
}

func fieldOf(t reflect.Type, f field) field {
	switch t {
	case reflect.TypeFor[Number]():
		f.kind = kindNumber
		return f
	case reflect.TypeFor[Box]():
		f.kind = kindBox
		return f
	}
	switch t.Kind() {
	case reflect.String:
		f.kind = kindText
	case reflect.Int:
		f.kind = kindCount
	case reflect.Struct:
		f.kind, f.inner = kindObject, layoutOf(t)
	case reflect.Map:
		f.kind, f.inner = kindPlaces, layoutOf(t.Elem())
	case reflect.Slice:
		switch t.Elem() {
		case reflect.TypeFor[string]():
			f.kind = kindTexts
		case reflect.TypeFor[Number]():
			f.kind = kindNumbers
		default:
			f.kind, f.inner = kindObjects, layoutOf(t.Elem())
			if f.inner.must == 0 {
				f.limit = maxEntries
			}
		}
	default:
		panic("schema: no JSON form for " + t.String())
	}
	return f
}

// in is the place of an index in an object; unlike reflect's FieldByIndex it never allocates.
func in(object reflect.Value, index []int) reflect.Value {
	for _, i := range index {
		object = object.Field(i)
	}
	return object
}

func join(a, b []int) []int { return append(append([]int(nil), a...), b...) }
