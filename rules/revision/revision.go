// Package revision judges what became of a datasheet's values in its next edition: how large each change is, in per cent and in printed
// steps, whether it helps or hurts the buyer, and whether strings of modules that used to fit no longer do. It is arithmetic on two
// records; it knows no files and no forms of report and must not import extract or cmd.
package revision

import (
	"math"

	"pvtally/schema"
)

// Effect is what a change means for whoever buys or has bought by the old edition.
type Effect string

// The effects, in the order in which a buyer asks.
const (
	Hurts   Effect = "hurts"
	Depends Effect = "depends" // on the site, the stock, the other parts
	Helps   Effect = "helps"
	Neutral Effect = "neutral" // a name, or the same number with another precision
)

// Effects lists them in that order.
var Effects = []Effect{Hurts, Depends, Helps, Neutral}

// Change is one printed value that the two editions do not share.
type Change struct {
	schema.Change
	// Delta is new minus old in the value's unit, Pct the same in per cent of the old one (not a number where that is zero),
	// Steps its size in units of the coarser of the two printed roundings. All are zero for a text and for a value that only one prints.
	Delta, Pct, Steps float64
	// Explained reports that one of the two may be the other rounded.
	Explained bool
	Effect    Effect
	// Why says what follows from a change in this direction.
	Why string
	// Strings reports that the value takes part in a string's voltage in a way that asks for shorter strings.
	Strings bool
}

// Numeric reports that both editions print a number here.
func (c *Change) Numeric() bool { return !c.Old.Number.IsZero() && !c.New.Number.IsZero() }

// Judgement is everything that changed.
type Judgement struct {
	Changes []Change // in the record's order, without those of Classes
	Classes []Class  // that only one edition has
	Strings []String // per class and system voltage, only where the longest string gets shorter
	// Silent reports that values changed while neither revision nor date of issue did.
	Silent bool
}

// Judge compares two editions of one sheet.
func Judge(old, new *schema.Sheet) Judgement {
	var j Judgement
	gone, fresh := lone(old, new), lone(new, old)
	j.Classes = append(classes(old, gone, true), classes(new, fresh, false)...)
	open := [2]map[string]bool{undecided(old), undecided(new)}
	announced := false
	for _, c := range schema.Diff(old, new) {
		if c.New.IsZero() && within(c.Old, gone) || c.Old.IsZero() && within(c.New, fresh) {
			continue
		}
		change := judge(c)
		if c.Old.IsZero() && open[0][c.Key] || c.New.IsZero() && open[1][c.Key] {
			change.Effect, change.Why = Depends, "one edition prints something here that the reader would not decide: look at the page"
		}
		j.Changes = append(j.Changes, change)
		announced = announced || c.Key == "revision" || c.Key == "issued"
	}
	j.Silent = len(j.Changes)+len(j.Classes) > 0 && !announced
	j.Strings = shorter(old, new)
	return j
}

// undecided are the values that the reader of a sheet saw and left open, by their keys.
func undecided(s *schema.Sheet) map[string]bool {
	keys := map[string]bool{}
	for _, u := range s.Unresolved {
		keys[schema.Key(s, u.Field)] = true
	}
	return keys
}

// Count is how many changes have an effect.
func (j *Judgement) Count(e Effect) (n int) {
	for i := range j.Changes {
		if j.Changes[i].Effect == e {
			n++
		}
	}
	return n
}

func judge(c schema.Change) Change {
	out := Change{Change: c, Effect: Neutral}
	m := meaningOf(c)
	switch {
	case c.Old.IsZero():
		out.Effect, out.Why = m.appears()
	case c.New.IsZero():
		out.Effect, out.Why = m.goes()
	case !out.Numeric():
		out.Effect, out.Why = m.other()
	default:
		out.measure()
		out.Effect, out.Why = m.moves(&out)
		out.Strings = m.strings != 0 && out.Delta*float64(m.strings) > 0
	}
	return out
}

// measure fills in how large a change of numbers is.
func (c *Change) measure() {
	a, b := c.Old.Number.Float(), c.New.Number.Float()
	c.Delta, c.Pct = b-a, math.NaN()
	if a != 0 {
		c.Pct = 100 * c.Delta / math.Abs(a)
	}
	if step := 2 * max(c.Old.HalfStep, c.New.HalfStep); step > 0 {
		c.Steps = math.Abs(c.Delta) / step
		c.Explained = c.Steps <= 0.5+1e-9
	}
}
