package diagnose

import (
	"math"
	"slices"

	"pvtally/rules"
	"pvtally/schema"
)

// explanation is one mistake that the sheet seems to have, with what else its symptoms may come from.
type explanation struct {
	correction
	rivals ranking
	after  []rules.Finding // what the rules say once it and those before it are undone
}

// doctor explains the findings of one sheet.
type doctor struct {
	board   *board
	checker *rules.Checker
	scratch *schema.Sheet
	before  []rules.Finding // what is to be explained
	printed []rules.Finding // what the rules say of the sheet as printed: also what a policy has accepted; nil until it is asked for
	chosen  []explanation
	opt     rules.Options
}

// Limits of the search: more mistakes than a sheet that is worth a letter has.
const (
	maxMistakes = 6
	maxChecked  = 6 // explanations that the rules are asked about, in one round
)

// explain finds one mistake after the other, each the likeliest on the sheet with the earlier ones undone, until no grave finding is left
// or none is convincing.
func (d *doctor) explain() {
	left := grave(d.before)
	for len(left) > 0 && len(d.chosen) < maxMistakes {
		d.board.cover(left, d.opt, d.scratch)
		r := d.board.rank(honesty(left))
		best, after := d.choose(&r, left)
		if best < 0 {
			break
		}
		d.chosen = append(d.chosen, explanation{r.list[best], r, after})
		d.board.apply(r.list[best].edits)
		left = slices.DeleteFunc(grave(after), d.accepted)
		if r.honest > r.list[best].share {
			break // more likely the maker's habit: named, but nothing is built on it
		}
	}
	d.refine()
}

// accepted reports a finding that the sheet had as printed and that nobody asks about: a policy has accepted it.
func (d *doctor) accepted(f rules.Finding) bool { return !has(d.before, &f) && d.onPaper(&f) }

// choose asks the rules about the likeliest explanations: what they leave or bring about weighs against them. It is -1 where none clears anything.
func (d *doctor) choose(r *ranking, left []rules.Finding) (best int, after []rules.Finding) {
	best = -1
	asked := 0
	most := math.Inf(-1)
	for i := range r.list {
		c := &r.list[i]
		if asked == maxChecked || best >= 0 && c.weight() < most-3 {
			break
		}
		asked++
		found := d.check(append(d.edits(), c.edits...))
		cleared, harm := d.judge(c, left, found)
		c.prior -= harm
		if cleared == 0 {
			c.prior -= far
			continue
		}
		if c.weight() > most {
			best, most, after = i, c.weight(), found
		}
	}
	if best < 0 {
		return -1, nil
	}
	chosen := r.list[best].edits
	*r = weigh(r.list, most, honesty(left))
	for i := range r.list {
		if slices.Equal(r.list[i].edits, chosen) {
			return i, after
		}
	}
	return -1, nil
}

// honesty is the logarithm of how likely a sheet with these findings has no mistake: an error cannot be right as printed, a warning may be.
func honesty(left []rules.Finding) float64 {
	if slices.ContainsFunc(left, func(f rules.Finding) bool { return f.Level == rules.Error }) {
		return math.Log(1-mistaken) - certain
	}
	return math.Log(1 - mistaken)
}

// certain is by how much rarer errors are on honest sheets than warnings, as a natural logarithm (0 and 2 to 4 % of the clean sheets of the yardstick).
const certain = 4

// onPaper reports a finding that the sheet has as it is printed.
func (d *doctor) onPaper(f *rules.Finding) bool {
	if has(d.before, f) {
		return true
	}
	if d.printed == nil {
		d.printed = d.check(nil)
	}
	return has(d.printed, f)
}

// edits are all corrections chosen so far.
func (d *doctor) edits() (all []edit) {
	for i := range d.chosen {
		all = append(all, d.chosen[i].edits...)
	}
	return all
}

// check is what the rules say with some corrections made.
func (d *doctor) check(edits []edit) []rules.Finding {
	for _, e := range edits {
		d.scratch.Set(d.board.cells[e.cell].at, e.to)
	}
	found := d.checker.Check(d.scratch)
	for _, e := range edits {
		d.scratch.Set(d.board.cells[e.cell].at, d.board.cells[e.cell].n)
	}
	return found
}

// What a finding weighs against an explanation that leaves it or brings it about, in nats.
var harm = [...]float64{rules.Note: 0.3, rules.Warning: 3, rules.Error: 8}

// judge counts the grave findings that a correction clears, and weighs those on its own cells that stay, and those that are new.
func (d *doctor) judge(c *correction, left, found []rules.Finding) (cleared int, weight float64) {
	for i := range left {
		if !has(found, &left[i]) {
			cleared++
		}
	}
	for i := range found {
		f := &found[i]
		if int(f.Level) < len(harm) && (!d.onPaper(f) || f.Level > rules.Note && d.touches(c, f)) {
			weight += harm[f.Level]
		}
	}
	return cleared, weight
}

func (d *doctor) touches(c *correction, f *rules.Finding) bool {
	return slices.ContainsFunc(c.edits, func(e edit) bool { return slices.Contains(f.Fields, d.board.cells[e.cell].at) })
}

// has reports a finding that says the same, at least as gravely.
func has(list []rules.Finding, f *rules.Finding) bool {
	return slices.ContainsFunc(list, func(o rules.Finding) bool {
		return o.Rule == f.Rule && o.Level >= f.Level && judged(&o) == judged(f)
	})
}

// judged is the field that a finding judges, "" for one about the sheet.
func judged(f *rules.Finding) string {
	if len(f.Fields) == 0 {
		return ""
	}
	return f.Fields[0]
}

// grave are the findings that ask for an explanation: warnings and errors on printed values.
func grave(list []rules.Finding) (out []rules.Finding) {
	for _, f := range list {
		if _, known := rules.Lookup(f.Rule); known && f.Level >= rules.Warning && len(f.Fields) > 0 {
			out = append(out, f)
		}
	}
	return out
}

// refine looks at each of several mistakes again with all others undone: the first was chosen while the others still spoiled the picture. The
// last was chosen so, unless others have changed since.
func (d *doctor) refine() {
	changed := false
	for i := range d.chosen {
		if i == len(d.chosen)-1 && !changed {
			break
		}
		x := &d.chosen[i]
		d.board.restore(x.edits)
		r := d.board.rank(honesty(d.before))
		if len(r.list) > 0 && r.list[0].share > r.honest {
			changed = changed || !slices.Equal(x.edits, r.list[0].edits)
			x.correction, x.rivals = r.list[0], r
		}
		d.board.apply(x.edits)
	}
}
