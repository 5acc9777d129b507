package diagnose

import (
	"fmt"
	"slices"
	"strings"

	"pvtally/rules"
	"pvtally/schema"
)

// because says in a few words why an explanation is one: what goes away with it, and what then holds that did not.
func (d *doctor) because(c *correction, cleared []int) string {
	text := d.clears(cleared)
	if support := d.support(c); len(support) > 0 {
		text += ", and " + strings.Join(support, "; ")
	}
	if c.mistake == Reading {
		text += "; it was read once, or off a picture: check the page first"
	}
	return text
}

func (d *doctor) clears(cleared []int) string {
	n := 0
	for _, i := range cleared {
		if d.before[i].Level > rules.Note {
			n++
		}
	}
	all := len(grave(d.before))
	switch {
	case n == 0 && len(cleared) > 0:
		return "clears a note"
	case n == 0:
		return "tallies better, though no finding goes away"
	case n >= all && all == 1:
		return "clears the only finding"
	case n >= all && all == 2:
		return "clears both findings"
	case n >= all:
		return fmt.Sprintf("clears all %d findings", all)
	case n == 1:
		return fmt.Sprintf("clears one of %d findings", all)
	}
	return fmt.Sprintf("clears %d of %d findings", n, all)
}

// What counts as a relation that held not and holds, in nats, and how many are said.
const (
	failed     = 3
	holds      = 1.5
	maxSupport = 2
)

// support is what holds once the correction is made and did not before. The board must be priced without it.
func (d *doctor) support(c *correction) (out []string) {
	b := d.board
	for _, e := range c.edits {
		b.put(e.cell, e.to)
	}
	for i, r := range b.rels {
		if b.says[i] == "" || b.cost[i] < failed || len(out) == maxSupport || r.misfit(b) > holds {
			continue
		}
		text := b.says[i]
		if strings.Contains(text, "%s") {
			at := b.oneOf(c, r)
			text = strings.Replace(text, "%s", withUnit(at.to, b.cells[at.cell].at), 1)
		}
		if !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	for _, e := range c.edits {
		b.put(e.cell, b.cells[e.cell].n)
	}
	return out
}

// oneOf is a correction's edit of one of a relation's cells.
func (b *board) oneOf(c *correction, r relation) edit {
	for _, at := range r.cells() {
		for _, e := range c.edits {
			if e.cell == at {
				return e
			}
		}
	}
	return c.edits[0]
}

// withUnit is a number as one says it.
func withUnit(n schema.Number, at string) string {
	if k, ok := schema.Describe(at); ok && k.Unit != "" {
		return n.String() + " " + k.Unit
	}
	return n.String()
}
