package compare

import (
	"fmt"
	"strings"

	"pvtally/rules/site"
	"pvtally/schema"
)

// answer is one sentence: how many of each, whether the difference in power is real, what heat makes of it, what it costs.
func (b *builder) answer() string {
	clauses := []string{b.counts()}
	for _, c := range []string{b.powers(), b.warmth(), b.costs()} {
		if c != "" {
			clauses = append(clauses, c)
		}
	}
	return upper(strings.Join(clauses, "; ")) + "."
}

// listed is how many options a sentence names one by one.
const listed = 4

// counts says how many modules the target needs, or the area takes.
func (b *builder) counts() string {
	s := &b.Site.Site
	if s.Target == 0 && s.Area == nil {
		return b.bare()
	}
	var all, short, none []string
	same := map[string]bool{}
	for i, name := range b.names {
		r := &b.roof[i]
		switch {
		case !r.count.Known():
			none = append(none, name)
			same[r.count.Why] = true
		case r.short:
			short = append(short, fmt.Sprintf("%.0f of the %.0f × %s (%s)", r.count.V, r.needed.V, b.called(i), b.watts(b.power(i).V)))
		default:
			all = append(all, fmt.Sprintf("%.0f × %s (%s)", r.count.V, b.called(i), b.watts(b.power(i).V)))
		}
	}
	var parts []string
	if n := len(all); n > listed {
		all = []string{b.rangeOfCounts()}
	}
	switch {
	case len(all) == 0:
	case s.Target > 0:
		parts = append(parts, fmt.Sprintf("for %s you need %s", b.watts(s.Target), joined(all, "or")))
	default:
		parts = append(parts, "the area takes "+joined(all, "or"))
	}
	if len(short) > 0 {
		parts = append(parts, "the area takes only "+joined(short, "or"))
	}
	if len(none) > 0 {
		why := ""
		for w := range same {
			if why == "" || w < why {
				why = w
			}
		}
		parts = append(parts, fmt.Sprintf("there is no count for %s: %s", and(none), why))
	}
	return strings.Join(parts, "; ")
}

// called is an option's letter with its name, for the first time it is mentioned.
func (b *builder) called(i int) string { return b.names[i] + ", " + b.Options[i].Name }

func (b *builder) watts(v float64) string { return withUnit(trimmed(v, 1), "W") }

func (b *builder) rangeOfCounts() string {
	lo, hi := -1, -1
	for i := range b.names {
		if r := &b.roof[i]; r.count.Known() && !r.short {
			if lo < 0 || r.count.V < b.roof[lo].count.V {
				lo = i
			}
			if hi < 0 || r.count.V > b.roof[hi].count.V {
				hi = i
			}
		}
	}
	return fmt.Sprintf("%.0f (%s) to %.0f (%s) modules", b.roof[lo].count.V, b.called(lo), b.roof[hi].count.V, b.called(hi))
}

// bare names the modules where there is nothing to count.
func (b *builder) bare() string {
	var list []string
	for i, o := range b.Options {
		text := b.called(i) + " without a printed power"
		if o.Pmax.Known() {
			text = fmt.Sprintf("%s with %s", b.called(i), withUnit(b.cell(o.Pmax, site.Watt).Value, "W"))
		}
		list = append(list, text)
	}
	return "compared are " + and(list)
}

// powers says whether the modules' powers differ really.
func (b *builder) powers() string {
	var parts []string
	for i := 1; i < len(b.Options); i++ {
		d := b.difference(b.Options[i].Pmax, b.Options[0].Pmax, site.Watt, true)
		if d == nil {
			continue
		}
		word := "more"
		if d.Absolute.Float() < 0 {
			word = "less"
		}
		by := fmt.Sprintf("%s %s per module than A (%s %%)", withoutSign(d.Absolute)+" W", word, withoutSign(d.Percent))
		switch d.Verdict {
		case Real:
			parts = append(parts, fmt.Sprintf("%s really has %s", b.names[i], by))
		case Within:
			parts = append(parts, fmt.Sprintf("%s's %s lies within printed rounding and tolerance", b.names[i], by))
		default:
			parts = append(parts, fmt.Sprintf("%s has A's power", b.names[i]))
		}
	}
	return and(parts)
}

// costs names the cheapest.
func (b *builder) costs() string {
	best, second, n := -1, -1, 0
	for i := range b.bills {
		if b.bills[i].why != "" {
			continue
		}
		n++
		switch total := b.bills[i].Total(); {
		case best < 0 || total < b.bills[best].Total():
			best, second = i, best
		case second < 0 || total < b.bills[second].Total():
			second = i
		}
	}
	if n == 0 {
		return ""
	}
	total := b.bills[best].Total()
	if n == 1 {
		return fmt.Sprintf("%s costs %s in all", b.names[best], b.show(total, money))
	}
	more := b.bills[second].Total() - total
	if number(more, 2).Float() == 0 {
		return fmt.Sprintf("%s and %s cost the same in all, %s", b.names[min(best, second)], b.names[max(best, second)], b.show(total, money))
	}
	share := ""
	if total > 0 {
		share = fmt.Sprintf(" (%s %%)", number(100*more/total, 1))
	}
	return fmt.Sprintf("%s is cheapest with %s in all, %s costs %s%s more", b.names[best], b.show(total, money), b.names[second], b.show(more, money), share)
}

func withoutSign(n schema.Number) string { return strings.TrimPrefix(n.String(), "-") }
