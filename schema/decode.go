package schema

import (
	"fmt"
	"io"
	"reflect"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// maxBytes bounds the text of a record: what is longer is no datasheet.
const maxBytes = 16 << 20

// Decode reads one record. It accepts what the JSON Schema accepts and no more: an error is a Problem that names the place,
// what was found there and what is allowed. It keeps a copy of data, of which the record's texts and literals are parts.
func Decode(data []byte) (*Document, error) {
	if len(data) > maxBytes {
		return nil, tooLong(len(data))
	}
	d := &decoder{src: string(data)}
	d.scan = scanner(d.src)
	defer d.free()
	sheet := new(Sheet)
	if err := d.object(reflect.ValueOf(sheet).Elem(), sheetLayout); err != nil {
		return nil, err
	}
	if err := d.end(); err != nil {
		return nil, err
	}
	return &Document{sheet, d.src}, nil
}

type decoder struct {
	*scan
	src string
}

// end reports what follows the record.
func (d *decoder) end() error {
	if d.PeekKind() == jsontext.KindInvalid {
		if _, err := d.ReadToken(); err == io.EOF {
			return nil
		}
	}
	offset := int(d.InputOffset())
	rest := strings.TrimLeft(d.src[offset:], " \t\r\n")
	line, _, _ := strings.Cut(rest, "\n")
	return Problem{
		Found:   "more after the record: " + shown(line, 60),
		Allowed: "one record (several are JSON Lines, one a line)",
		Line:    lineAt(d.src, len(d.src)-len(rest)),
	}
}

func (d *decoder) object(object reflect.Value, l *layout) error {
	if d.PeekKind() != '{' {
		return d.reject("an object")
	}
	if _, err := d.ReadToken(); err != nil {
		return d.broken(err)
	}
	start := int(d.InputOffset()) - 1
	missing := l.must
	for d.PeekKind() == '"' {
		key, err := d.key()
		if err != nil {
			return err
		}
		if strings.HasPrefix(key, "_") {
			err = d.note(in(object, l.notes), key)
		} else if i, known := l.byName[key]; known {
			missing &^= 1 << i
			err = d.value(in(object, l.fields[i].index), object, &l.fields[i])
		} else {
			err = d.problem(int(d.InputOffset()), foundUnknown, l.allowed())
		}
		if err != nil {
			return err
		}
	}
	if _, err := d.ReadToken(); err != nil {
		return d.broken(err)
	}
	for i := range l.fields {
		if missing&(1<<i) != 0 {
			return d.problem(start, foundMissing(&l.fields[i]), l.fields[i].allowed())
		}
	}
	return nil
}

func (d *decoder) value(v, object reflect.Value, f *field) error {
	switch f.kind {
	case kindNumber:
		return d.number(v.Addr().Interface().(*Number), f)
	case kindText:
		return d.text(v.Addr().Interface().(*string), f)
	case kindObject:
		return d.object(v, f.inner)
	case kindCount:
		return d.count(v.Addr().Interface().(*int), f)
	case kindBox:
		return d.box(v.Addr().Interface().(*Box), f)
	case kindPlaces:
		return d.places(v.Addr().Interface().(*map[string]Evidence), in(object, f.notes), f.inner)
	}
	return d.list(v, f)
}

func (d *decoder) list(v reflect.Value, f *field) error {
	if d.PeekKind() != '[' {
		return d.reject(f.allowed())
	}
	if _, err := d.ReadToken(); err != nil {
		return d.broken(err)
	}
	for k := d.PeekKind(); k != ']' && k != jsontext.KindInvalid; k = d.PeekKind() {
		if f.limit > 0 && v.Len() == f.limit {
			return d.overfull(f)
		}
		var err error
		switch f.kind {
		case kindNumbers:
			var n Number
			err = d.number(&n, f)
			list := v.Addr().Interface().(*[]Number)
			*list = append(*list, n)
		case kindTexts:
			var t string
			err = d.text(&t, f)
			list := v.Addr().Interface().(*[]string)
			*list = append(*list, t)
		default:
			if v.Len() == v.Cap() {
				v.Grow(1)
			}
			v.SetLen(v.Len() + 1)
			err = d.object(v.Index(v.Len()-1), f.inner)
		}
		if err != nil {
			return err
		}
	}
	if _, err := d.ReadToken(); err != nil {
		return d.broken(err)
	}
	return nil
}

func (d *decoder) places(v *map[string]Evidence, notes reflect.Value, l *layout) error {
	if d.PeekKind() != '{' {
		return d.reject("an object")
	}
	if _, err := d.ReadToken(); err != nil {
		return d.broken(err)
	}
	for d.PeekKind() == '"' {
		key, err := d.key()
		if err != nil {
			return err
		}
		switch {
		case strings.HasPrefix(key, "_"):
			err = d.note(notes, key)
		case !isPointer(key):
			err = d.problem(int(d.InputOffset()), foundUnknown, allowedPlace)
		default:
			var e Evidence
			err = d.object(reflect.ValueOf(&e).Elem(), l)
			if *v == nil {
				*v = map[string]Evidence{}
			}
			(*v)[key] = e
		}
		if err != nil {
			return err
		}
	}
	if _, err := d.ReadToken(); err != nil {
		return d.broken(err)
	}
	return nil
}

func tooLong(n int) Problem {
	return Problem{Found: fmt.Sprintf("%d bytes", n), Allowed: fmt.Sprintf("at most %d", maxBytes)}
}
