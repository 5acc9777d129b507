package rules

import (
	"fmt"
	"slices"
	"sync"

	"pvtally/schema"
)

// Checker is the book under one set of options, ready for any number of records, from any number of goroutines.
type Checker struct {
	rules  []active
	passes sync.Pool
}

// active is a rule with its settings resolved.
type active struct {
	rule  *Rule
	set   []float64
	level Level
}

// NewChecker resolves the options; the error names the unknown rule or setting.
func NewChecker(opt Options) (*Checker, error) {
	if err := opt.Validate(); err != nil {
		return nil, err
	}
	return newChecker(opt), nil
}

func newChecker(opt Options) *Checker {
	c := &Checker{passes: sync.Pool{New: func() any { return new(Pass) }}}
	for _, r := range book {
		if opt.Off[r.ID] {
			continue
		}
		a := active{rule: r, level: opt.Levels[r.ID]}
		for _, s := range r.Settings {
			v, ok := opt.Settings[r.ID][s.Name]
			if !ok {
				v = s.Default
			}
			a.set = append(a.set, v)
		}
		c.rules = append(c.rules, a)
	}
	return c
}

var defaults = sync.OnceValue(func() *Checker { return newChecker(Options{}) })

// Check judges one record: every rule that is not off, in the book's order, findings in the record's order.
// Unknown keys in the options are ignored here; NewChecker refuses them.
func Check(sheet *schema.Sheet, opt Options) []Finding {
	if opt.Settings == nil && opt.Off == nil && opt.Levels == nil {
		return defaults().Check(sheet)
	}
	return newChecker(opt).Check(sheet)
}

// Check judges one record.
func (c *Checker) Check(sheet *schema.Sheet) []Finding { return c.judge(sheet, settle) }

// Unsettled is Check without dropping what only repeats: every relation that fails, for those who reason from all of them.
func (c *Checker) Unsettled(sheet *schema.Sheet) []Finding {
	return c.judge(sheet, slices.Clone[[]Finding])
}

func (c *Checker) judge(sheet *schema.Sheet, settle func([]Finding) []Finding) []Finding {
	p := c.passes.Get().(*Pass)
	p.start(sheet)
	for i := range c.rules {
		if a := &c.rules[i]; a.rule.Check != nil {
			c.run(p, a)
		}
	}
	found := settle(p.found)
	p.stop()
	c.passes.Put(p)
	return found
}

// run runs one rule; a panic in it becomes a finding that names rule and record, and the other rules still run.
func (c *Checker) run(p *Pass, a *active) {
	before := len(p.found)
	defer func() {
		if x := recover(); x != nil {
			p.found = append(p.found[:before], Finding{Rule: a.rule.ID, Level: Error,
				Message: fmt.Sprintf("the rule failed on the record %q: %v; this is a fault of the program, please report it", p.Sheet.Series, x)})
		}
	}()
	p.rule, p.set, p.level = a.rule, a.set, a.level
	a.rule.Check(p)
	p.found = append(p.found[:before], p.fold(p.found[before:])...)
}

func (p *Pass) start(sheet *schema.Sheet) {
	p.Sheet, p.found = sheet, p.found[:0]
	p.facts.gather(p)
}

// stop drops every hold on the record: the pass goes back to the pool.
func (p *Pass) stop() {
	clear(p.found)
	*p = Pass{found: p.found[:0], facts: p.facts.empty()}
}

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
	f.Message = fmt.Sprintf("in all %d classes, as in %s: %s", n, p.modelName(gravest), f.Message)
	for i := range found {
		if i != gravest {
			f.Fields = append(f.Fields, found[i].Fields[0])
		}
	}
	return append(found[:0], f)
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

// CataloguePass is one run of one rule over many records.
type CataloguePass struct {
	Entries []CatalogueEntry
	rule    *Rule
	found   []CatalogueFinding
}

// CatalogueEntry is one record of a catalogue, named as the user knows it, and what only the caller can know of it.
type CatalogueEntry struct {
	// Name is the record's file, with the line in a stream.
	Name  string
	Sheet *schema.Sheet
	// Read is what reading the named datasheet again gives, where the caller has done so.
	Read *schema.Sheet
	// SourceSHA256 is the checksum of the datasheet that the record names, where the caller found the file.
	SourceSHA256 string
}

// CatalogueFinding is a finding on one entry of a catalogue.
type CatalogueFinding struct {
	// Entry is the index of the record judged.
	Entry int
	Finding
}

// Catalogue judges many records together by the rules of the catalogue family, in the order of entries.
func Catalogue(entries []CatalogueEntry, opt Options) []CatalogueFinding {
	p := &CataloguePass{Entries: entries}
	for _, r := range book {
		if r.CheckAll != nil && !opt.Off[r.ID] {
			p.rule = r
			r.CheckAll(p)
		}
	}
	for i := range p.found {
		if l := opt.Levels[p.found[i].Rule]; l != 0 {
			p.found[i].Level = l
		}
	}
	slices.SortStableFunc(p.found, func(a, b CatalogueFinding) int { return a.Entry - b.Entry })
	return p.found
}

// Report adds a finding on one entry.
func (p *CataloguePass) Report(entry int, l Level, f Finding) {
	f.Rule, f.Level, f.Caution = p.rule.ID, l, p.rule.Caution
	p.found = append(p.found, CatalogueFinding{entry, f})
}
