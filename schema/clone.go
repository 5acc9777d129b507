package schema

import (
	"maps"
	"reflect"
	"slices"
)

// Clone is a copy that shares no list and no map with s: Set on it leaves s alone.
func (s *Sheet) Clone() *Sheet {
	c := *s
	c.Evidence = maps.Clone(s.Evidence)
	for pointer, e := range c.Evidence {
		e.Notes = maps.Clone(e.Notes)
		c.Evidence[pointer] = e
	}
	c.EvidenceNotes = maps.Clone(s.EvidenceNotes)
	part(reflect.ValueOf(&c).Elem(), sheetLayout)
	return &c
}

// part gives an object lists and notes of its own.
func part(object reflect.Value, l *layout) {
	notes := in(object, l.notes).Addr().Interface().(*Notes)
	*notes = maps.Clone(*notes)
	for i := range l.fields {
		f := &l.fields[i]
		switch v := in(object, f.index); f.kind {
		case kindNumbers:
			list := v.Addr().Interface().(*[]Number)
			*list = slices.Clone(*list)
		case kindTexts:
			list := v.Addr().Interface().(*[]string)
			*list = slices.Clone(*list)
		case kindObject:
			part(v, f.inner)
		case kindObjects:
			if v.IsNil() {
				continue
			}
			list := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
			reflect.Copy(list, v)
			v.Set(list)
			for i := range v.Len() {
				part(v.Index(i), f.inner)
			}
		}
	}
}
