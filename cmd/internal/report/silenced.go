package report

import (
	"fmt"
	"slices"
	"strings"
)

// Silenced tells of findings that the catalogue's own files accept.
type Silenced struct {
	Policy   string  `json:"policy,omitempty"`   // the policy's file
	Baseline string  `json:"baseline,omitempty"` // the baseline's file
	Waived   int     `json:"waived"`
	Known    int     `json:"known"`
	Stale    []Stale `json:"stale,omitempty"`
}

// sources says which file took out how many findings.
func (s Silenced) sources() string {
	var parts []string
	if s.Policy != "" {
		parts = append(parts, fmt.Sprintf("%d waived by the policy %s", s.Waived, s.Policy))
	}
	if s.Baseline != "" {
		parts = append(parts, fmt.Sprintf("%d known to the baseline %s", s.Known, s.Baseline))
	}
	return strings.Join(parts, ", ")
}

// Stale is an entry of those files that has expired or no longer silences anything.
type Stale struct {
	State   string `json:"state"`
	Rule    string `json:"rule"`
	Record  string `json:"record"`
	Field   string `json:"field,omitempty"`
	Printed string `json:"printed,omitempty"`
	Until   string `json:"until,omitempty"`
}

// String is one line that says what to do.
func (s Stale) String() string {
	name := strings.Join(slices.DeleteFunc([]string{s.Rule, s.Record, s.Field, s.Printed}, func(part string) bool { return part == "" }), " ")
	switch s.State {
	case "expired":
		return fmt.Sprintf("a waiver expired on %s: %s (renew it with a reason, or take it out)", s.Until, name)
	case "unused":
		return fmt.Sprintf("a waiver silences nothing: %s (take it out)", name)
	}
	return fmt.Sprintf("the baseline knows a finding that is gone: %s ('--write-baseline' renews it)", name)
}
