package schema

import (
	"math"
	"reflect"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// raw reads the next value and gives its text and where it begins.
func (d *decoder) raw() (text string, start int, err error) {
	b, err := d.ReadValue()
	if err != nil {
		return "", 0, d.broken(err)
	}
	end := int(d.InputOffset())
	start = end - len(b)
	return d.src[start:end], start, nil
}

// unquoted gives a JSON string's text, which is part of the record's text where it has no escapes.
func unquoted(raw string) string {
	if strings.IndexByte(raw, '\\') < 0 {
		return raw[1 : len(raw)-1]
	}
	b, _ := jsontext.AppendUnquote(nil, raw) // its grammar was checked when it was read
	return string(b)
}

func (d *decoder) key() (string, error) {
	raw, _, err := d.raw()
	if err != nil {
		return "", err
	}
	return unquoted(raw), nil
}

func (d *decoder) number(n *Number, f *field) error {
	if d.PeekKind() != '0' {
		return d.reject(f.element())
	}
	raw, start, err := d.raw()
	if err != nil {
		return err
	}
	v, ok := parseLiteral(raw)
	if !ok {
		return d.problem(start, describe(raw), allowedNumber)
	}
	if f.min0 && v.value < 0 {
		return d.problem(start, describe(raw), f.element())
	}
	*n = v
	return nil
}

func (d *decoder) text(s *string, f *field) error {
	if d.PeekKind() != '"' {
		return d.reject(f.element())
	}
	raw, start, err := d.raw()
	if err != nil {
		return err
	}
	t := unquoted(raw)
	if t == "" && !f.must || f.text != nil && !f.text.ok(t) {
		return d.problem(start, describe(raw), f.element())
	}
	*s = t
	return nil
}

// maxCount bounds the counts of pages, parts and readings.
const maxCount = 1_000_000

func (d *decoder) count(n *int, f *field) error {
	if d.PeekKind() != '0' {
		return d.reject(f.element())
	}
	raw, start, err := d.raw()
	if err != nil {
		return err
	}
	v, ok := parseLiteral(raw)
	if !ok {
		return d.problem(start, describe(raw), allowedNumber)
	}
	if v.value != math.Trunc(v.value) || v.value < 1 || v.value > maxCount {
		return d.problem(start, describe(raw), f.element())
	}
	*n = int(v.value)
	return nil
}

func (d *decoder) box(b *Box, f *field) error {
	if d.PeekKind() != '[' {
		return d.reject(f.allowed())
	}
	if _, err := d.ReadToken(); err != nil {
		return d.broken(err)
	}
	start, n := int(d.InputOffset())-1, 0
	for k := d.PeekKind(); k != ']' && k != jsontext.KindInvalid; k = d.PeekKind() {
		if k != '0' {
			return d.reject(f.element())
		}
		raw, at, err := d.raw()
		if err != nil {
			return err
		}
		v, ok := parseLiteral(raw)
		if !ok {
			return d.problem(at, describe(raw), allowedNumber)
		}
		if math.Abs(v.value) > maxLength {
			return d.problem(at, describe(raw), f.element())
		}
		if n < len(b) {
			b[n] = tenth(v.value)
		}
		n++
	}
	if _, err := d.ReadToken(); err != nil {
		return d.broken(err)
	}
	if n != len(b) {
		return d.problem(start, "an array", f.allowed())
	}
	return nil
}

// maxNoteDepth bounds what a note nests: indenting it must stay cheap.
const maxNoteDepth = 32

func (d *decoder) note(notes reflect.Value, key string) error {
	raw, start, err := d.raw()
	if err != nil {
		return err
	}
	value, depth := compact(raw)
	if depth > maxNoteDepth {
		return d.problem(start, "a note nested too deep", allowedNote)
	}
	m := notes.Addr().Interface().(*Notes)
	if *m == nil {
		*m = Notes{}
	}
	(*m)[key] = value
	return nil
}

// compact drops the white space between the tokens of a JSON text and counts its depth.
func compact(raw string) (value []byte, depth int) {
	value = make([]byte, 0, len(raw))
	quoted, level := false, 0
	for i := 0; i < len(raw); i++ {
		c := raw[i]
		switch {
		case quoted && c == '\\':
			value = append(value, c)
			i++
			c = raw[i]
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == ' ' || c == '\t' || c == '\r' || c == '\n':
			continue
		case c == '[' || c == '{':
			level++
			depth = max(depth, level)
		case c == ']' || c == '}':
			level--
		}
		value = append(value, c)
	}
	return value, depth
}
