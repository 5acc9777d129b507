package revision

import (
	"fmt"
	"strings"

	"pvtally/schema"
)

// Class is a power class that only one of the two editions has.
type Class struct {
	Name string
	Gone bool // only the old edition has it; else it is new
}

// lone are the classes of a sheet that another edition lacks, by their place: neither name nor power stands there.
func lone(s, other *schema.Sheet) map[int]bool {
	alone := map[int]bool{}
	for i := range s.Models {
		m := &s.Models[i]
		alone[i] = true
		for k := range other.Models {
			o := &other.Models[k]
			if m.Name != "" && m.Name == o.Name || !m.STC.Pmax.IsZero() && !o.STC.Pmax.IsZero() && m.STC.Pmax.Float() == o.STC.Pmax.Float() {
				alone[i] = false
			}
		}
	}
	return alone
}

// within reports that a value stands in one of these classes.
func within(p schema.Printed, classes map[int]bool) bool {
	rest, ok := strings.CutPrefix(p.Pointer, "/models/")
	var i int
	if _, err := fmt.Sscanf(rest, "%d/", &i); !ok || err != nil {
		return false
	}
	return classes[i]
}

// classes lists those of one side.
func classes(s *schema.Sheet, alone map[int]bool, gone bool) (list []Class) {
	for i := range s.Models {
		if !alone[i] {
			continue
		}
		name := s.Models[i].Name
		if name == "" {
			name = s.Models[i].STC.Pmax.String() + " W"
		}
		list = append(list, Class{name, gone})
	}
	return list
}
