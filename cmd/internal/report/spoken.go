package report

import (
	"strconv"
	"strings"

	"pvtally/schema"
)

// conditions are the tables of a class by their keys, as the trade writes them.
var conditions = map[string]string{"stc": "STC", "nmot": "NMOT", "noct": "NOCT", "bnpi": "BNPI", "low": "low irradiance"}

// spoken names a value for a person: "Imp at STC, KR-HC108-M10-405"; "Length". A field of no known shape keeps its pointer.
func spoken(s *schema.Sheet, pointer string) string {
	name := pointer
	if d, ok := schema.Describe(pointer); ok {
		name = d.Title
	}
	class, field, ok := splitClass(pointer)
	if !ok || class >= len(s.Models) {
		return name
	}
	if at := tableOf(s, class, field); at != "" {
		name += " " + at
	}
	return name + ", " + className(s, class)
}

// tableOf is "at STC" or "with 10 % rear gain" for a field of a class, "" for one outside the tables.
func tableOf(s *schema.Sheet, class int, field string) string {
	table, rest, _ := strings.Cut(strings.TrimPrefix(field, "/"), "/")
	if name := conditions[table]; name != "" {
		return "at " + name
	}
	index, _, _ := strings.Cut(rest, "/")
	i, err := strconv.Atoi(index)
	m := &s.Models[class]
	switch {
	case err != nil || i < 0:
	case table == "rear_gain" && i < len(m.RearGain):
		return "with " + m.RearGain[i].Gain.String() + " % rear gain"
	case table == "rear_ratio" && i < len(m.RearRatio):
		return "at " + m.RearRatio[i].Ratio.String() + " % rear-to-front ratio"
	}
	return ""
}

// className is what a class is called: its name, else its power, else its place.
func className(s *schema.Sheet, class int) string {
	m := &s.Models[class]
	switch {
	case m.Name != "":
		return m.Name
	case !m.STC.Pmax.IsZero():
		return m.STC.Pmax.String() + " W"
	}
	return "class " + strconv.Itoa(class+1)
}

// Spoken names a value for a person, for other reports of the program.
func Spoken(s *schema.Sheet, pointer string) string { return spoken(s, pointer) }
