// Package rules judges sheet records: which printed numbers do not tally with which others, by how much, and how much of it rounding explains.
// A rule is a value; its documentation is data. The package knows no files and no output formats, and must not import extract or cmd.
package rules

import (
	"errors"
	"fmt"
	"regexp"
)

// Rule is one relation that must hold, with everything that is to be said about it.
type Rule struct {
	// ID is "family/name"; the rule's file is <family>_<name>.go with underscores.
	ID string
	// Title says what must hold, in one line.
	Title string
	// Why says why it must.
	Why string
	// Formula is the relation in standard symbols (IEC TS 61836).
	Formula string
	// Sources are where the relation and its limits come from.
	Sources []Source
	// Grade says how the size of what is found makes its level; it adds to Levels and Settings.
	Grade Grade
	// Levels say when a finding is a note, a warning, an error; at least one.
	Levels []Threshold
	// Settings are the numbers a policy may move.
	Settings []Setting
	// Needs are the fields without which the rule is silent, as paths of the record ("models[].stc.pmax_w").
	Needs []string
	// Yields names the rules whose finding on the same judged value makes this one a repetition: it then stays quiet.
	Yields []string
	// Caution is added to every finding where a number can hurt someone.
	Caution string
	// Check reports what does not hold in one record; nil for a rule over a catalogue.
	Check func(*Pass)
	// CheckAll reports what does not hold across records; nil for a rule over one record.
	CheckAll func(*CataloguePass)
}

// Source is where a rule comes from. Tag is "read" (in the source), "secondary" (as cited elsewhere), "calculated", "from memory" or "common practice".
type Source struct {
	Name, Tag string
}

// Threshold says what a level means in this rule.
type Threshold struct {
	Level Level
	When  string
}

// Setting is a number of a rule that a policy may move.
type Setting struct {
	Name    string
	Default float64
	Unit    string
	Doc     string
}

var (
	validID     = regexp.MustCompile(`^[a-z]+/[a-z0-9]+(-[a-z0-9]+)*$`)
	validName   = regexp.MustCompile(`^[a-z0-9]+(_[a-z0-9]+)*$`)
	validSource = map[string]bool{"read": true, "secondary": true, "calculated": true, "from memory": true, "common practice": true}
)

// validate returns what the rule's documentation lacks: an undocumented rule must not start.
func (r *Rule) validate() error {
	var errs []error
	need := func(ok bool, what string) {
		if !ok {
			errs = append(errs, fmt.Errorf("rule %q lacks %s", r.ID, what))
		}
	}
	need(validID.MatchString(r.ID), "an ID of the form family/name")
	need(r.Title != "", "a title")
	need(r.Why != "", "its reason")
	need(r.Formula != "", "a formula")
	need(len(r.Sources) > 0, "a source")
	for _, s := range r.Sources {
		need(s.Name != "" && validSource[s.Tag], "a source with a known tag")
	}
	need(len(r.Levels) > 0, "levels")
	for _, t := range r.Levels {
		need(t.Level >= Note && t.Level <= Error && t.When != "", "a level that says when")
	}
	for _, s := range r.Settings {
		need(validName.MatchString(s.Name) && s.Unit != "" && s.Doc != "", "a setting with name, unit and text")
	}
	need(len(r.Needs) > 0, "the fields it needs")
	need((r.Check == nil) != (r.CheckAll == nil), "exactly one check")
	return errors.Join(errs...)
}
