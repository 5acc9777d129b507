package rules

import (
	"fmt"
	"maps"
	"slices"
)

// Options move the book's defaults; the zero Options are the defaults.
type Options struct {
	// Settings moves numbers: rule ID, then the setting's name.
	Settings map[string]map[string]float64
	// Off turns rules off.
	Off map[string]bool
	// Levels replaces a rule's level, whatever it found.
	Levels map[string]Level
}

// Validate names every rule and setting that the book does not have: an unknown key must not pass in silence.
func (o Options) Validate() error {
	for _, id := range slices.Sorted(maps.Keys(o.Settings)) {
		r, ok := Lookup(id)
		if !ok {
			return fmt.Errorf("no rule %q", id)
		}
		for _, name := range slices.Sorted(maps.Keys(o.Settings[id])) {
			if !slices.ContainsFunc(r.Settings, func(s Setting) bool { return s.Name == name }) {
				return fmt.Errorf("rule %q has no setting %q", id, name)
			}
		}
	}
	for _, id := range slices.Sorted(maps.Keys(o.Off)) {
		if _, ok := Lookup(id); !ok {
			return fmt.Errorf("no rule %q", id)
		}
	}
	for _, id := range slices.Sorted(maps.Keys(o.Levels)) {
		if _, ok := Lookup(id); !ok {
			return fmt.Errorf("no rule %q", id)
		}
	}
	return nil
}
