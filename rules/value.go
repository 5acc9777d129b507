package rules

import (
	"fmt"
	"strconv"
	"strings"

	"pvtally/schema"
	"pvtally/schema/relate"
)

// Value is one printed number: the interval it stands for, its literal, and its place in the record.
type Value struct {
	relate.Interval
	V    float64
	text string
	at   place
}

// place is a JSON Pointer in parts: it becomes text only when a finding needs it.
type place struct {
	group, name string
	model, row  int    // -1 where there is none
	whole       string // the pointer itself, where it came as text
}

// placeOf is the place a pointer names.
func placeOf(pointer string) place {
	return place{name: pointer[strings.LastIndexByte(pointer, '/')+1:], model: -1, row: -1, whole: pointer}
}

// Printed reports that the sheet prints the value.
func (v *Value) Printed() bool { return v.text != "" }

// Pointer is the value's JSON Pointer.
func (v *Value) Pointer() string { return string(v.at.append(nil)) }

// append writes /group/name, /group/name/row, /models/i/group/name, /models/i/name or /models/i/group/row/name.
func (at place) append(b []byte) []byte {
	if at.whole != "" {
		return append(b, at.whole...)
	}
	if at.model >= 0 {
		b = append(b, "/models/"...)
		b = strconv.AppendInt(b, int64(at.model), 10)
	}
	if at.group != "" {
		b = append(append(b, '/'), at.group...)
	}
	if at.model >= 0 && at.row >= 0 {
		b = strconv.AppendInt(append(b, '/'), int64(at.row), 10)
	}
	b = append(append(b, '/'), at.name...)
	if at.model < 0 && at.row >= 0 {
		b = strconv.AppendInt(append(b, '/'), int64(at.row), 10)
	}
	return b
}

// units are the ends of field names and how their unit is written, the longer before the shorter.
var units = []struct{ suffix, unit string }{
	{"_pct_per_k", " %/K"}, {"_a_per_k", " A/K"}, {"_v_per_k", " V/K"}, {"_w_per_k", " W/K"}, {"_w_m2", " W/m2"}, {"_m_s", " m/s"},
	{"_pct", " %"}, {"_mm2", " mm2"}, {"_mm", " mm"}, {"_kg", " kg"}, {"_pa", " Pa"}, {"_years", " years"}, {"_w", " W"}, {"_v", " V"}, {"_a", " A"}, {"_c", " °C"},
}

// unitOf is the unit a field's name carries, with the space before it.
func unitOf(name string) string {
	for _, u := range units {
		if strings.HasSuffix(name, u.suffix) {
			return u.unit
		}
	}
	return ""
}

// symbols are what the trade calls the fields (IEC TS 61836); fields that read well by their own name have none.
var symbols = map[string]string{
	"pmax_w": "Pmax", "vmp_v": "Vmp", "imp_a": "Imp", "voc_v": "Voc", "isc_a": "Isc", "efficiency_pct": "efficiency",
	"alpha_isc_pct_per_k": "α(Isc)", "alpha_isc_a_per_k": "α(Isc)", "beta_voc_pct_per_k": "β(Voc)", "beta_voc_v_per_k": "β(Voc)",
	"gamma_pmax_pct_per_k": "γ(Pmax)", "gamma_pmax_w_per_k": "γ(Pmax)", "nmot_c": "NMOT", "noct_c": "NOCT", "ptc_w": "PTC power",
	"length_mm": "length", "width_mm": "width", "depth_mm": "thickness", "mass_kg": "mass", "factor_pct": "bifaciality",
}

// Symbol is the name a message uses.
func (v *Value) Symbol() string {
	if s, ok := symbols[v.at.name]; ok {
		return s
	}
	unit := ""
	for _, u := range units {
		if strings.HasSuffix(v.at.name, u.suffix) {
			unit = u.suffix
			break
		}
	}
	return strings.ReplaceAll(strings.TrimSuffix(v.at.name, unit), "_", " ")
}

// String is the literal with its unit.
func (v Value) String() string { return v.text + unitOf(v.at.name) }

// value makes a Value; a converted number's interval comes from its evidence.
func (p *Pass) value(n schema.Number, group, name string, model, row int) Value {
	text := n.String()
	if text == "" {
		return Value{}
	}
	v := Value{V: n.Float(), text: text, at: place{group: group, name: name, model: model, row: row}}
	half := n.HalfStep()
	if len(p.Sheet.Evidence) > 0 {
		var room [64]byte
		if e, ok := p.Sheet.Evidence[string(v.at.append(room[:0]))]; ok && !e.HalfStep.IsZero() {
			half = e.HalfStep.Float()
		}
	}
	v.Interval = relate.Of(n, half)
	return v
}

// Electrical is one block of a class.
type Electrical struct {
	Pmax, Vmp, Imp, Voc, Isc, Efficiency Value
}

// Full reports that the five electrical values are printed.
func (e *Electrical) Full() bool {
	return e.Pmax.Printed() && e.Vmp.Printed() && e.Imp.Printed() && e.Voc.Printed() && e.Isc.Printed()
}

func (p *Pass) electrical(e *schema.Electrical, group string, model, row int) Electrical {
	return Electrical{
		p.value(e.Pmax, group, "pmax_w", model, row), p.value(e.Vmp, group, "vmp_v", model, row), p.value(e.Imp, group, "imp_a", model, row),
		p.value(e.Voc, group, "voc_v", model, row), p.value(e.Isc, group, "isc_a", model, row), p.value(e.Efficiency, group, "efficiency_pct", model, row),
	}
}

// around writes a calculated number with as many digits as its use in a message deserves: four significant ones.
func around(v float64) string {
	text := fmt.Sprintf("%.4g", v)
	if strings.Contains(text, "e") {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return text
}

// span writes an interval's ends.
func span(i relate.Interval) []string { return []string{around(i.Lo), around(i.Hi)} }
