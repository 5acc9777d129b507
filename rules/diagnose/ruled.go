package diagnose

import (
	"strconv"

	"pvtally/rules"
	"pvtally/schema"
)

// ruled is a rule that fails as a relation of the fields it names: for rules that no relation of the board stands for.
type ruled struct {
	of      []int
	checker *rules.Checker // of this rule alone
	scratch *schema.Sheet
	field   string // that the finding judges
	implied float64
	tells   bool // implied is known
}

// brokenRule is what a failing rule costs.
const brokenRule = 7

// cover adds a relation for each finding of which the board's own relations know nothing.
func (b *board) cover(findings []rules.Finding, opt rules.Options, scratch *schema.Sheet) {
	added := 0
	for i := range findings {
		f := &findings[i]
		var cells []int
		known := false
		for _, field := range f.Fields {
			if c := b.at(field); c != none {
				cells = append(cells, c)
				known = known || b.suspicious(c)
			}
		}
		if known || len(cells) == 0 || len(cells) > maxRuled || added == maxRuled {
			continue
		}
		checker, err := rules.NewChecker(alone(f.Rule, opt))
		if err != nil {
			continue
		}
		r := &ruled{of: cells, checker: checker, scratch: scratch, field: f.Fields[0]}
		if len(f.Implied) == 1 {
			if v, err := strconv.ParseFloat(f.Implied[0], 64); err == nil {
				r.implied, r.tells = v, true
			}
		}
		b.relate("", r)
		b.price()
		added++
	}
}

// maxRuled bounds how many rules are asked again and again, and how many fields one may name.
const maxRuled = 8

// alone are the options with every other rule off.
func alone(rule string, opt rules.Options) rules.Options {
	off := map[string]bool{}
	for _, r := range rules.All() {
		off[r.ID] = r.ID != rule
	}
	return rules.Options{Settings: opt.Settings, Off: off}
}

func (r *ruled) cells() []int { return r.of }

func (r *ruled) misfit(b *board) float64 {
	for _, c := range r.of {
		r.scratch.Set(b.cells[c].at, b.now[c]) // an entry of a list cannot be left out: it stays, and costs what it costs
	}
	cost := 0.0
	for _, f := range r.checker.Check(r.scratch) {
		if f.Level >= rules.Warning && len(f.Fields) > 0 && f.Fields[0] == r.field {
			cost = brokenRule
		}
	}
	for _, c := range r.of {
		r.scratch.Set(b.cells[c].at, b.cells[c].n)
	}
	return cost
}

func (r *ruled) solve(b *board, c int) (float64, bool) {
	return r.implied, r.tells && b.cells[c].at == r.field
}
