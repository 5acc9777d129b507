package policy

import (
	"slices"

	"pvtally/rules"
	"pvtally/schema"
)

// Finding names a finding for good: by whose it is, not by where it stands.
type Finding struct {
	Rule    string `json:"rule"`
	Record  string `json:"record"`
	Field   string `json:"field,omitempty"`
	Printed string `json:"printed,omitempty"`
}

// Stale is an entry of a policy or baseline that no longer does anything.
type Stale struct {
	Finding
	State string // "unused", "expired", or "gone" for a baseline's
	Until string
}

// Keeper applies a policy and a baseline to the findings of one run, and remembers what was used. It is for one goroutine.
type Keeper struct {
	Policy   *Policy   // nil: none
	Baseline *Baseline // nil: none
	Today    string    // YYYY-MM-DD

	Waived, Known int // findings that were silenced

	used map[int]bool
	seen map[string]bool // records by the policy's names
}

// Judge adds what the policy requires to what the rules found.
func (k *Keeper) Judge(s *schema.Sheet, found []rules.Finding) []rules.Finding {
	if k.Policy == nil {
		return found
	}
	own := k.Policy.Rules[Required.ID]
	f, ok := missing(s, k.Policy.Required)
	if !ok || own.Level == "off" {
		return found
	}
	if level, err := rules.ParseLevel(own.Level); err == nil {
		f.Level = level
	}
	return append(found, f)
}

// Keep drops the findings that a waiver or the baseline accepts. A record has a name for each of the two, relative to their folders.
func (k *Keeper) Keep(forPolicy, forBaseline string, s *schema.Sheet, found []rules.Finding) []rules.Finding {
	if k.Policy != nil {
		if k.seen == nil {
			k.seen, k.used = map[string]bool{}, map[int]bool{}
		}
		k.seen[forPolicy] = true
		before := len(found)
		found = slices.DeleteFunc(found, func(f rules.Finding) bool { return k.waived(Name(forPolicy, s, f)) })
		k.Waived += before - len(found)
	}
	if k.Baseline != nil {
		before := len(found)
		found = slices.DeleteFunc(found, func(f rules.Finding) bool { return k.Baseline.knows(Name(forBaseline, s, f)) })
		k.Known += before - len(found)
	}
	return found
}

func (k *Keeper) waived(f Finding) bool {
	for i, w := range k.Policy.Waivers {
		if f == w.finding() && !w.expired(k.Today) {
			k.used[i] = true
			return true
		}
	}
	return false
}

// Name is the finding's name in a record of that name.
func Name(record string, s *schema.Sheet, f rules.Finding) Finding {
	name := Finding{Rule: f.Rule, Record: record, Printed: f.Printed}
	if len(f.Fields) > 0 {
		name.Field = schema.Key(s, f.Fields[0])
	}
	return name
}

func (w Waiver) finding() Finding { return Finding{w.Rule, w.Record, w.Field, w.Printed} }

func (w Waiver) expired(today string) bool { return w.Until != "" && w.Until < today }

// Stale lists waivers that expired or silenced nothing, and entries of the baseline whose finding is gone. A record that was not in the
// run says nothing about its entries, unless it no longer exists.
func (k *Keeper) Stale(exists func(record string) bool) []Stale {
	var list []Stale
	if k.Policy != nil {
		for i, w := range k.Policy.Waivers {
			switch {
			case !k.seen[w.Record] && exists(w.Record):
			case w.expired(k.Today):
				list = append(list, Stale{w.finding(), "expired", w.Until})
			case !k.used[i]:
				list = append(list, Stale{Finding: w.finding(), State: "unused"})
			}
		}
	}
	return list
}
