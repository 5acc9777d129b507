package policy

import (
	"strconv"
	"strings"

	"pvtally/rules"
	"pvtally/schema"
)

// Required is the rule behind a policy's "required" list.
var Required = &rules.Rule{
	ID:      "policy/required",
	Title:   "the record has every field that the policy requires",
	Why:     "A catalogue serves those who use it only when the values they need are there.",
	Formula: "present: each path of the policy's \"required\" list",
	Sources: []rules.Source{{Name: "the catalogue's own policy", Tag: "common practice"}},
	Levels:  []rules.Threshold{{Level: rules.Error, When: "a required field is missing"}},
	Needs:   []string{"models[]"},
}

// missing is one finding that lists all the required paths a record lacks; of a path of every class, the first class that lacks it.
func missing(s *schema.Sheet, paths []string) (rules.Finding, bool) {
	if len(paths) == 0 {
		return rules.Finding{}, false
	}
	present := map[string]bool{}
	note := func(pointer string) {
		for ; pointer != ""; pointer = pointer[:strings.LastIndexByte(pointer, '/')] {
			present[pointer] = true // a list is there when it has an entry, an object when it has a value
		}
	}
	s.Walk(func(pointer string, _ schema.Number) { note(pointer) })
	s.WalkText(func(pointer, _ string) { note(pointer) })
	var fields, names []string
	for _, path := range paths {
		if pointer := lacking(s, path, present); pointer != "" {
			fields, names = append(fields, pointer), append(names, path)
		}
	}
	if len(fields) == 0 {
		return rules.Finding{}, false
	}
	return rules.Finding{Rule: Required.ID, Level: rules.Error, Fields: fields,
		Message: "required by the policy and not there: " + strings.Join(names, ", ")}, true
}

// lacking is where the value of a path should stand and does not, or "". A value that a sheet may print for each class counts when
// every class has it.
func lacking(s *schema.Sheet, path string, present map[string]bool) string {
	field, each := strings.CutPrefix(path, "models[].")
	pointer := "/" + strings.ReplaceAll(field, ".", "/")
	if !each && present[pointer] {
		return ""
	}
	for i := range s.Models {
		if at := "/models/" + strconv.Itoa(i) + pointer; !present[at] {
			if each {
				return at
			}
			return pointer
		}
	}
	switch {
	case len(s.Models) > 0:
		return ""
	case each:
		return "/models"
	}
	return pointer
}
