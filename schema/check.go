package schema

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
)

// Check finds what the JSON Schema cannot say: evidence for what is no value, places that are no places, parts that do not add up.
// A record without evidence has none of these.
func (d *Document) Check() []Problem {
	c := checker{doc: d}
	s := d.Sheet
	if s.Source.Parts > 0 && s.Source.Part > s.Source.Parts {
		c.report("/source/part", strconv.Itoa(s.Source.Part), fmt.Sprintf("at most the %d parts there are", s.Source.Parts))
	}
	for i, a := range s.Also {
		at := "/also/" + strconv.Itoa(i)
		c.place(at, a.Page, a.Box)
		if f, entry := shapeAt(a.Field); f == nil || !f.holdsValue(entry || f.listed()) {
			c.report(at+"/field", quoted(a.Field), "the JSON Pointer of a value, or of a list of values")
		}
	}
	for i, u := range s.Unresolved {
		at := "/unresolved/" + strconv.Itoa(i)
		c.place(at, u.Page, u.Box)
		if f, _ := shapeAt(u.Field); f == nil {
			c.report(at+"/field", quoted(u.Field), "the JSON Pointer of a field")
		}
	}
	c.evidence(s)
	return sortProblems(c.problems)
}

type checker struct {
	doc      *Document
	problems []Problem
}

func (c *checker) report(pointer, found, allowed string) {
	if len(c.problems) == maxProblems {
		return
	}
	_, line, _ := c.doc.Position(pointer)
	c.problems = append(c.problems, Problem{pointer, found, allowed, line})
}

func (c *checker) evidence(s *Sheet) {
	if len(s.Evidence) == 0 {
		return
	}
	values := make(map[string]bool, len(s.Evidence))
	s.Walk(func(pointer string, _ Number) { values[pointer] = true })
	s.WalkText(func(pointer, _ string) { values[pointer] = true })
	for _, pointer := range slices.SortedFunc(maps.Keys(s.Evidence), comparePointers) {
		e, at := s.Evidence[pointer], "/evidence/"+escape(pointer)
		c.place(at, e.Page, e.Box)
		if values[pointer] {
			continue
		}
		found := "a place for a value the record does not hold"
		if f, entry := shapeAt(pointer); f == nil {
			found = "a place for what is no field"
		} else if !f.holdsValue(entry) {
			found = "a place for what is no single value"
		}
		c.report(at, found, "a place for each value that is there")
	}
}

// place checks a page and a box.
func (c *checker) place(at string, page int, b Box) {
	if pages := c.doc.Sheet.Source.Pages; pages > 0 && page > pages {
		c.report(at+"/page", strconv.Itoa(page), fmt.Sprintf("at most the %d pages of the source", pages))
	}
	if b[2] < b[0] || b[3] < b[1] {
		c.report(at+"/box", fmt.Sprint([4]float64(b)), "left ≤ right, top ≤ bottom")
	}
}

// holdsValue reports that a field, or an entry of its list, is a single value.
func (f *field) holdsValue(entry bool) bool {
	switch f.kind {
	case kindNumber, kindText:
		return true
	case kindNumbers, kindTexts:
		return entry
	}
	return false
}

func quoted(s string) string { return `"` + shown(s, 60) + `"` }
