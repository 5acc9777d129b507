package schema

import (
	"reflect"
	"strconv"
	"strings"
)

// Key names a cell without positions, for baselines, waivers and fingerprints that must outlive a new power class or a longer list:
// "models[KR-HC108-M10-405].stc.imp_a", "models[KR-HC108-M10-405].rear_gain[10].pmax_w", "body.length_mm", "limits.system_voltage_v[1500]".
// An entry is called by what tells it apart: a model by its name, else its STC power; a gain or ratio by itself; what is said twice or
// unresolved by its field; an entry of a plain list by its value. The second of two that look alike gets "#2".
// What leads nowhere keeps its tokens.
func Key(s *Sheet, pointer string) string {
	var b strings.Builder
	object, l := reflect.ValueOf(s).Elem(), sheetLayout
	for pointer != "" {
		name, rest, ok := nextSegment(pointer)
		if !ok {
			b.WriteString(pointer)
			break
		}
		if b.Len() > 0 {
			b.WriteByte('.')
		}
		b.WriteString(name)
		pointer = rest
		var f *field
		if l != nil {
			if i, known := l.byName[name]; known {
				f = &l.fields[i]
			}
		}
		if f == nil {
			l = nil
			continue
		}
		v := in(object, f.index)
		object, l = v, f.inner
		entry, rest, ok := nextSegment(pointer)
		if !ok || !f.listed() && f.kind != kindPlaces {
			continue
		}
		pointer = rest
		switch i, _, found := nextIndex("/"+entry, lengthOf(v, f)); {
		case f.kind == kindPlaces:
			entry, l = s.keyOfValue(entry), nil
		case found:
			entry = s.labels(v)[i]
			object = v.Index(i)
		default:
			l = nil
		}
		b.WriteString("[" + entry + "]")
	}
	return b.String()
}

func lengthOf(v reflect.Value, f *field) int {
	if f.kind == kindPlaces {
		return 0
	}
	return v.Len()
}

// labels calls the entries of a list by their names, with a count where an earlier entry has the same.
func (s *Sheet) labels(list reflect.Value) []string {
	labels, seen := make([]string, list.Len()), map[string]int{}
	for i := range labels {
		name := s.nameOf(list.Index(i), i)
		seen[name]++
		if labels[i] = name; seen[name] > 1 {
			labels[i] += "#" + strconv.Itoa(seen[name])
		}
	}
	return labels
}

func (s *Sheet) nameOf(entry reflect.Value, i int) string {
	switch e := entry.Addr().Interface().(type) {
	case *Model:
		if e.Name == "" && !e.STC.Pmax.IsZero() {
			return e.STC.Pmax.String() + " W"
		}
		return e.Name
	case *RearGain:
		return e.Gain.String()
	case *RearRatio:
		return e.Ratio.String()
	case *Also:
		return s.keyOfValue(e.Field)
	case *Unresolved:
		return s.keyOfValue(e.Field)
	case *Number:
		return e.String()
	case *string:
		return *e
	}
	return strconv.Itoa(i)
}

// keyOfValue is Key for a pointer that stands in the record; one that points at what speaks about values could lead in circles.
func (s *Sheet) keyOfValue(pointer string) string {
	if top, _, _ := nextSegment(pointer); notValues[top] {
		return pointer
	}
	return Key(s, pointer)
}
