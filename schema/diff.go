package schema

import (
	"maps"
	"reflect"
	"slices"
	"strconv"
)

// Change is one printed value that two records do not share.
type Change struct {
	Key      string  // of the cell, without positions (see Key); a renamed model keeps its old name here
	Old, New Printed // the zero Printed where the record has no such value
}

// Printed is one side of a change.
type Printed struct {
	Pointer  string  // JSON Pointer (RFC 6901) into the side's record; empty: not printed
	Text     string  // as the record holds it: the number's literal, or the text
	Number   Number  // zero for a text
	HalfStep float64 // of the number, in its unit
}

// IsZero reports that the side does not print the value.
func (p Printed) IsZero() bool { return p.Pointer == "" }

// Diff compares two records value by value, in canonical order: what Walk and WalkText visit, not evidence and notes. Models are paired by
// name, then by STC power; other tables by the condition of their entries; plain lists by value, what is left over in order. Another literal
// for the same number ("2.0" for "2") is a change: the sheet says it with another precision.
func Diff(a, b *Sheet) []Change {
	d := differ{a: a, b: b}
	d.object(reflect.ValueOf(a).Elem(), reflect.ValueOf(b).Elem(), sheetLayout, place{})
	return d.changes
}

type differ struct {
	a, b    *Sheet
	changes []Change
}

// place is where two objects stand: their common key, and the pointer in each record, absent where the record has no such object.
type place struct {
	key    string
	old    string
	new    string
	absent [2]bool // old, new
}

func (p place) field(name string) place {
	if p.key != "" {
		p.key += "."
	}
	p.key += name
	p.old, p.new = p.old+"/"+name, p.new+"/"+name
	return p
}

// entry goes on to entries i and j of a list; -1 is none.
func (p place) entry(label string, i, j int) place {
	p.key += "[" + label + "]"
	p.old, p.new = p.old+"/"+strconv.Itoa(i), p.new+"/"+strconv.Itoa(j)
	p.absent[0] = p.absent[0] || i < 0
	p.absent[1] = p.absent[1] || j < 0
	return p
}

func (d *differ) object(a, b reflect.Value, l *layout, at place) {
	for i := range l.fields {
		f := &l.fields[i]
		if l == sheetLayout && notValues[f.name] {
			continue
		}
		x, y, here := in(a, f.index), in(b, f.index), at.field(f.name)
		switch f.kind {
		case kindNumber, kindText:
			d.leaf(x, y, here)
		case kindObject:
			d.object(x, y, f.inner, here)
		case kindObjects, kindNumbers, kindTexts:
			d.list(x, y, f, here)
		}
	}
}

func (d *differ) list(x, y reflect.Value, f *field, at place) {
	old, new := d.a.labels(x), d.b.labels(y)
	alike := func(i, j int) bool { return f.kind != kindObjects || samePower(x.Index(i), y.Index(j)) }
	nothing := reflect.New(x.Type().Elem()).Elem()
	for _, p := range pair(old, new, alike) {
		i, j := p[0], p[1]
		label, left, right := "", nothing, nothing
		if j >= 0 {
			label, right = new[j], y.Index(j)
		}
		if i >= 0 {
			label, left = old[i], x.Index(i)
		}
		if here := at.entry(label, i, j); f.kind == kindObjects {
			d.object(left, right, f.inner, here)
		} else {
			d.leaf(left, right, here)
		}
	}
}

func (d *differ) leaf(x, y reflect.Value, at place) {
	old, new := d.a.printed(x, at.old, at.absent[0]), d.b.printed(y, at.new, at.absent[1])
	if old.Text != new.Text {
		d.changes = append(d.changes, Change{at.key, old, new})
	}
}

func (s *Sheet) printed(v reflect.Value, pointer string, absent bool) Printed {
	p := Printed{Pointer: pointer}
	switch v := v.Addr().Interface().(type) {
	case *Number:
		p.Number, p.Text = *v, v.String()
		p.HalfStep = s.HalfStep(pointer)
	case *string:
		p.Text = *v
	}
	if absent || p.Text == "" {
		return Printed{}
	}
	return p
}

// pair matches entries of equal labels, then each that is left with the first that is left on the other side and alike;
// what finds none is paired with -1.
func pair(old, new []string, alike func(i, j int) bool) [][2]int {
	at := map[string]int{}
	for j, label := range new {
		at[label] = j
	}
	partner := make([]int, len(old))
	for i, label := range old {
		partner[i] = -1
		if j, ok := at[label]; ok {
			partner[i] = j
			delete(at, label)
		}
	}
	rest := slices.Sorted(maps.Values(at))
	var pairs [][2]int
	for i, j := range partner {
		if j < 0 {
			k := slices.IndexFunc(rest, func(j int) bool { return alike(i, j) })
			switch {
			case k == 0:
				j, rest = rest[0], rest[1:]
			case k > 0:
				j, rest = rest[k], slices.Delete(rest, k, k+1)
			}
		}
		pairs = append(pairs, [2]int{i, j})
	}
	for _, j := range rest {
		pairs = append(pairs, [2]int{-1, j})
	}
	return pairs
}

// samePower reports two models of the same STC power.
func samePower(x, y reflect.Value) bool {
	a, ok := x.Addr().Interface().(*Model)
	b, _ := y.Addr().Interface().(*Model)
	return ok && !a.STC.Pmax.IsZero() && !b.STC.Pmax.IsZero() && a.STC.Pmax.Float() == b.STC.Pmax.Float()
}
