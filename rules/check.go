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
