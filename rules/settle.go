package rules

import (
	"fmt"
	"slices"
)

// fold makes one finding of a rule that says the same of every class: one cause, one finding. The first of the gravest speaks for all.
func (p *Pass) fold(found []Finding) []Finding {
	n := len(p.Sheet.Models)
	if n < 2 || len(found) != n {
		return found
	}
	gravest := 0
	for i := range found {
		if found[i].Model != p.modelName(i) || len(found[i].Fields) == 0 {
			return found
		}
		if found[i].Level > found[gravest].Level {
			gravest = i
		}
	}
	f := found[gravest]
	f.Model = ""
	f.Message = fmt.Sprintf("in %s, as in %s: %s", allClasses(n), p.modelName(gravest), f.Message)
	for i := range found {
		if i != gravest {
			f.Fields = append(f.Fields, found[i].Fields[0])
		}
	}
	return append(found[:0], f)
}

// allClasses is how one says all of n.
func allClasses(n int) string {
	switch n {
	case 1:
		return "the only class"
	case 2:
		return "both classes"
	}
	return fmt.Sprintf("all %d classes", n)
}

// settle drops what only repeats: a finding whose rule yields to one that found at least as much on a shared value. It goes from the
// weakest level up and asks only findings that still stand, so that rules which yield in a ring leave one of them.
func settle(found []Finding) []Finding {
	gone := make([]bool, len(found))
	for l := Note; l <= Error; l++ {
		for i := range found {
			gone[i] = gone[i] || found[i].Level == l && yields(i, found, gone)
		}
	}
	kept := make([]Finding, 0, len(found))
	for i := range found {
		if !gone[i] {
			kept = append(kept, found[i])
		}
	}
	return kept
}

func yields(i int, found []Finding, gone []bool) bool {
	r, ok := Lookup(found[i].Rule)
	if !ok || len(r.Yields) == 0 {
		return false
	}
	for j := range found {
		if g := &found[j]; j != i && !gone[j] && g.Level >= found[i].Level && slices.Contains(r.Yields, g.Rule) && share(found[i].Fields, g.Fields) {
			return true
		}
	}
	return false
}

func share(a, b []string) bool {
	return slices.ContainsFunc(a, func(s string) bool { return slices.Contains(b, s) })
}
