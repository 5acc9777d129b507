package schema

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// Encode writes the record in its canonical form for a file: keys in the order of the types, evidence by pointer, notes by name at the
// end of their object, two spaces an indent, a list of plain values on its line, a newline at the end. The same record gives the same
// bytes, and Decode gives the record back. It fails on what no JSON can hold: text that is not UTF-8, a note that is not JSON.
func Encode(s *Sheet) ([]byte, error) { return encode(s, true) }

// EncodeLine writes the canonical form on one line, with its newline: one record of a JSON Lines stream.
func EncodeLine(s *Sheet) ([]byte, error) { return encode(s, false) }

// MarshalJSON is EncodeLine, so that a record inside another document keeps its notes and order.
func (s *Sheet) MarshalJSON() ([]byte, error) {
	line, err := EncodeLine(s)
	return bytes.TrimSuffix(line, []byte("\n")), err
}

// UnmarshalJSON is Decode.
func (s *Sheet) UnmarshalJSON(data []byte) error {
	doc, err := Decode(data)
	if err != nil {
		return err
	}
	*s = *doc.Sheet
	return nil
}

func encode(s *Sheet, indented bool) ([]byte, error) {
	e := encoder{indented: indented}
	if s.Format == "" {
		named := *s
		named.Format = Format
		s = &named
	}
	e.object(reflect.ValueOf(s).Elem(), sheetLayout, "")
	if e.err != nil {
		return nil, fmt.Errorf("could not encode %q: %w", shown(e.at, 200), e.err)
	}
	return append(e.dst, '\n'), nil
}

// encoder appends to dst; the first error stays with the pointer at which it came up.
type encoder struct {
	dst      []byte
	depth    int
	indented bool
	err      error
	at       string
}

func (e *encoder) fail(at string, err error) {
	if err != nil && e.err == nil {
		e.at, e.err = at, err
	}
}

func (e *encoder) object(object reflect.Value, l *layout, at string) {
	e.open('{')
	for i := range l.fields {
		f := &l.fields[i]
		v := in(object, f.index)
		if f.kind == kindPlaces {
			e.places(v.Interface().(map[string]Evidence), in(object, f.notes).Interface().(Notes), f, at)
		} else if f.must || !(v.IsZero() || f.listed() && f.kind != kindBox && v.Len() == 0) {
			e.key(f.name)
			e.value(v, f, at+"/"+f.name)
		}
	}
	e.notes(in(object, l.notes).Interface().(Notes), at)
	e.shut('}')
}

func (e *encoder) value(v reflect.Value, f *field, at string) {
	switch f.kind {
	case kindText:
		e.text(v.String(), at)
	case kindCount:
		e.dst = strconv.AppendInt(e.dst, v.Int(), 10)
	case kindNumber:
		e.dst = append(e.dst, v.Addr().Interface().(*Number).text...)
	case kindBox:
		box, err := v.Interface().(Box).append(e.dst, e.gap())
		e.fail(at, err)
		e.dst = box
	case kindObject:
		e.object(v, f.inner, at)
	case kindObjects:
		e.open('[')
		for i := range v.Len() {
			e.comma()
			e.object(v.Index(i), f.inner, at+"/"+strconv.Itoa(i))
		}
		e.shut(']')
	case kindNumbers, kindTexts:
		e.dst = append(e.dst, '[')
		for i := range v.Len() {
			if i > 0 {
				e.dst = append(append(e.dst, ','), e.gap()...)
			}
			if f.kind == kindTexts {
				e.text(v.Index(i).String(), at)
				continue
			}
			n := v.Index(i).Addr().Interface().(*Number)
			if n.IsZero() {
				e.fail(at, errors.New("an absent number in a list"))
			}
			e.dst = append(e.dst, n.text...)
		}
		e.dst = append(e.dst, ']')
	}
}

func (e *encoder) places(places map[string]Evidence, notes Notes, f *field, at string) {
	if len(places) == 0 && len(notes) == 0 {
		return
	}
	at += "/" + f.name
	e.key(f.name)
	e.open('{')
	for _, pointer := range slices.SortedFunc(maps.Keys(places), comparePointers) {
		if !isPointer(pointer) {
			e.fail(at, fmt.Errorf("%q is not %s", shown(pointer, 60), allowedPlace))
		}
		e.quotedKey(pointer, at)
		place := places[pointer]
		e.object(reflect.ValueOf(&place).Elem(), f.inner, at+"/"+escape(pointer))
	}
	e.notes(notes, at)
	e.shut('}')
}

func (e *encoder) notes(notes Notes, at string) {
	for _, name := range slices.Sorted(maps.Keys(notes)) {
		if !strings.HasPrefix(name, "_") || !jsontext.Value(notes[name]).IsValid() {
			e.fail(at, fmt.Errorf("%q is no note: a key that begins with \"_\" and JSON", shown(name, 60)))
			return
		}
		value, depth := compact(string(notes[name]))
		if depth > maxNoteDepth {
			e.fail(at, fmt.Errorf("%q nests too deep: allowed are %s", shown(name, 60), allowedNote))
			return
		}
		e.quotedKey(name, at)
		if e.indented {
			e.fail(at, (*jsontext.Value)(&value).Indent(jsontext.WithIndentPrefix(strings.Repeat("  ", e.depth)), jsontext.WithIndent("  ")))
		}
		e.dst = append(e.dst, value...)
	}
}
