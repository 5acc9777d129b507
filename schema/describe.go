package schema

import "strings"

// Description is what a field means, for people: the JSON Schema, reports and the web page take their words from here.
type Description struct {
	Title string // the trade's symbol or term (IEC TS 61836): "Voc"
	Text  string // the meaning, and the trap in it
	Unit  string // "V"; empty where there is none
}

// Describe tells what the value at a JSON Pointer means; it is false where the record's shape has no such field.
// The pointer's array indices need not exist.
func Describe(pointer string) (Description, bool) {
	f, _ := shapeAt(pointer)
	if f == nil {
		return Description{}, false
	}
	return f.describe(), true
}

func (f *field) describe() Description {
	title, text, _ := strings.Cut(descriptions[f.owner+"."+f.name], " | ")
	return Description{title, text, f.unit()}
}

// units are told by the end of a key; the longer endings come first.
var units = []struct{ ending, unit string }{
	{"_pct_per_k", "%/K"}, {"_a_per_k", "A/K"}, {"_v_per_k", "V/K"}, {"_w_per_k", "W/K"}, {"_w_m2", "W/m2"}, {"_m_s", "m/s"},
	{"_mm2", "mm2"}, {"_mm", "mm"}, {"_kg", "kg"}, {"_pct", "%"}, {"_pa", "Pa"}, {"_years", "years"}, {"_c", "°C"},
	{"_v", "V"}, {"_a", "A"}, {"_w", "W"},
}

func (f *field) unit() string {
	if f.kind == kindNumber || f.kind == kindNumbers {
		for _, u := range units {
			if strings.HasSuffix(f.name, u.ending) {
				return u.unit
			}
		}
	}
	return ""
}

// shapeAt finds the field a pointer names in the record's shape, and whether the pointer goes on to an entry of its list or map.
func shapeAt(pointer string) (f *field, entry bool) {
	for l := sheetLayout; l != nil; l = f.inner {
		name, rest, ok := nextSegment(pointer)
		i, known := l.byName[name]
		if !ok || !known {
			return nil, false
		}
		f, entry = &l.fields[i], false
		if rest != "" && (f.kind == kindPlaces || f.listed()) {
			name, rest, entry = nextSegment(rest)
			if !entry || f.kind != kindPlaces && !index(name) {
				return nil, false
			}
		}
		if rest == "" {
			return f, entry
		}
		pointer = rest
	}
	return nil, false
}

func (f *field) listed() bool {
	return f.kind == kindObjects || f.kind == kindNumbers || f.kind == kindTexts || f.kind == kindBox
}

// index reports an array index: digits without a leading zero.
func index(token string) bool { return digits(token) && (token == "0" || token[0] != '0') }
