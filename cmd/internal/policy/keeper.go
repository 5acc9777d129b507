package policy

import (
	"pvtally/rules"
	"pvtally/schema"
)

// Finding names a finding for good: by what it is about, not by where that stands.
type Finding struct {
	Rule    string `json:"rule"`
	Record  string `json:"record"`
	Field   string `json:"field,omitempty"`
	Printed string `json:"printed,omitempty"`
}

// Name is the finding's name in a record of that name. It holds every value the finding is about: when one of them changes, the
// finding is another.
func Name(record string, s *schema.Sheet, f rules.Finding) Finding {
	name := Finding{Rule: f.Rule, Record: record, Printed: f.Printed}
	for i, field := range f.Fields {
		n, _ := s.At(field)
		if i == 0 {
			name.Field = schema.Key(s, field)
		} else if !n.IsZero() {
			name.Printed += " " + n.String()
		}
	}
	return name
}

// cells are the names by which a person may call the finding: any value it is about.
func cells(record string, s *schema.Sheet, f rules.Finding) []Finding {
	if len(f.Fields) == 0 {
		return []Finding{{f.Rule, record, "", f.Printed}}
	}
	list := []Finding{{f.Rule, record, schema.Key(s, f.Fields[0]), f.Printed}}
	for _, field := range f.Fields {
		if n, ok := s.At(field); ok {
			list = append(list, Finding{f.Rule, record, schema.Key(s, field), n.String()})
		}
	}
	return list
}

// Stale is a waiver, or an entry of a baseline, that no longer does anything.
type Stale struct {
	Finding
	State string // "expired" or "unused" for a waiver, "gone" for an entry of a baseline
	Until string // of an expired waiver
}

// Keeper applies a policy and a baseline to the findings of one run and remembers which of their entries were used. It is for one
// goroutine.
type Keeper struct {
	Waived, Known int // findings silenced by the policy and by the baseline

	policy   *Policy
	baseline *Baseline
	today    string
	used     map[Finding]bool // waivers that hold; true once used
	met      map[Finding]bool // entries of the baseline; true once met
	seen     map[string]bool  // the records that waivers and baseline name, and no others; true once met in the run
}

// NewKeeper is for one run on the day today, YYYY-MM-DD. Without policy or baseline they are nil.
func NewKeeper(p *Policy, b *Baseline, today string) *Keeper {
	k := &Keeper{policy: p, baseline: b, today: today, used: map[Finding]bool{}, met: map[Finding]bool{}, seen: map[string]bool{}}
	if p != nil {
		for _, w := range p.Waivers {
			k.seen[w.Record] = false
			if !w.expired(today) {
				k.used[w.finding()] = false
			}
		}
	}
	if b != nil {
		for _, f := range b.Findings {
			k.seen[f.Record] = false
			k.met[f] = false
		}
	}
	return k
}

// Require is what the rules found and what the policy requires and the record lacks.
func (k *Keeper) Require(s *schema.Sheet, found []rules.Finding) []rules.Finding {
	if k.policy == nil {
		return found
	}
	own := k.policy.Rules[Required.ID]
	f, ok := missing(s, k.policy.Required)
	if !ok || own.Level == "off" {
		return found
	}
	if level, err := rules.ParseLevel(own.Level); err == nil {
		f.Level = level
	}
	return append(found, f)
}

// Cause is one wrong value, or several that went wrong together, with the findings that come of it.
type Cause struct {
	Cells    []string // JSON Pointers
	Findings []int    // indices into the findings
}

// Keep drops the findings that a waiver or the baseline accepts. The record has a name for each, relative to the file's folder. A waiver that
// names the wrong value of a cause by one of its findings accepts them all: its reason is about the value.
func (k *Keeper) Keep(forPolicy, forBaseline string, s *schema.Sheet, found []rules.Finding, causes []Cause) []rules.Finding {
	same := map[int]bool{} // the findings whose cause a waiver names
	if len(k.used) > 0 {
		for _, c := range causes {
			if k.excuses(forPolicy, s, found, c) {
				for _, i := range c.Findings {
					same[i] = true
				}
			}
		}
	}
	found, waived := accept(k.used, found, same, func(f rules.Finding) []Finding { return cells(forPolicy, s, f) })
	found, known := accept(k.met, found, nil, func(f rules.Finding) []Finding { return []Finding{Name(forBaseline, s, f)} })
	k.Waived += waived
	k.Known += known
	for _, name := range []string{forPolicy, forBaseline} {
		if _, named := k.seen[name]; named {
			k.seen[name] = true
		}
	}
	return found
}

// excuses reports that a waiver names a wrong value of a cause, by the rule of one of its findings, and marks it.
func (k *Keeper) excuses(record string, s *schema.Sheet, found []rules.Finding, c Cause) (excused bool) {
	for _, i := range c.Findings {
		if i < 0 || i >= len(found) {
			continue
		}
		for _, pointer := range c.Cells {
			n, _ := s.At(pointer)
			name := Finding{found[i].Rule, record, schema.Key(s, pointer), n.String()}
			if _, waived := k.used[name]; waived {
				k.used[name] = true
				excused = true
			}
		}
	}
	return excused
}

// accept drops the findings one of whose names is an entry, and marks that entry; and those that are the same thing as one of them.
func accept(entries map[Finding]bool, found []rules.Finding, same map[int]bool, names func(rules.Finding) []Finding) (kept []rules.Finding, n int) {
	if len(entries) == 0 {
		return found, 0
	}
	for i, f := range found {
		accepted := same[i]
		for _, name := range names(f) {
			if _, named := entries[name]; named {
				entries[name] = true
				accepted = true
			}
		}
		if !accepted {
			kept = append(kept, f)
		}
	}
	return kept, len(found) - len(kept)
}

// Stale lists what has expired and what no longer silences anything, in the order of the files. A record that was not in the run says
// nothing about its entries, unless it no longer exists.
func (k *Keeper) Stale(inPolicy, inBaseline func(record string) bool) []Stale {
	var list []Stale
	if k.policy != nil {
		for _, w := range k.policy.Waivers {
			switch f := w.finding(); {
			case w.expired(k.today):
				list = append(list, Stale{f, "expired", w.Until})
			case !k.used[f] && (k.seen[w.Record] || !inPolicy(w.Record)):
				list = append(list, Stale{Finding: f, State: "unused"})
			}
		}
	}
	if k.baseline != nil {
		for _, f := range k.baseline.Findings {
			if !k.met[f] && (k.seen[f.Record] || !inBaseline(f.Record)) {
				list = append(list, Stale{Finding: f, State: "gone"})
			}
		}
	}
	return list
}

func (w Waiver) finding() Finding { return Finding{w.Rule, w.Record, w.Field, w.Printed} }

func (w Waiver) expired(today string) bool { return w.Until != "" && w.Until < today }
