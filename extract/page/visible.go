package page

import (
	"image"
	"slices"
	"time"
)

// What a file holds and the page does not show must never become a value: whole older sheets lie under visible ones. Most of it the
// page's objects tell; where they leave a doubt, the page is rendered once and looked at.

// PDF's text render modes that paint nothing (ISO 32000-1, table 106): invisible, and clip only.
const (
	modeInvisible = 3
	modeClip      = 7
)

// hides tells why a character is not visible, as far as its own object tells.
func (d *drawing) hides(c char, v view) Hidden {
	x, y := c.box.centre()
	if !(Box{0, 0, v.w, v.h}).holds(x, y) {
		return OffPage
	}
	t := d.texts[c.obj]
	switch {
	case t == nil:
		return Visible
	case t.mode == modeInvisible || t.mode == modeClip || c.clear:
		return Unpainted
	case !t.clip.holds(x, y):
		return Clipped
	}
	return Visible
}

func (b Box) centre() (x, y float64) { return (b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2 }

// judge hides the characters that lie under later paint or have no ink on the rendered page. It gives the time that rendering took.
func (g *guest) judge(page uint64, v view, d *drawing, chars []char) (time.Duration, error) {
	doubts := g.doubts(d, v, chars)
	if len(doubts) == 0 {
		return 0, nil
	}
	start := time.Now()
	for _, group := range groups(chars, doubts) {
		err := g.render(page, v, inkDPI, group.box, func(shown *image.RGBA) {
			for _, piece := range group.spans {
				if verdict := inkOf(shown, chars[piece.from:piece.to]); verdict != Visible {
					for i := piece.from; i < piece.to; i++ {
						chars[i].hidden = verdict
					}
				}
			}
		})
		if err != nil {
			return 0, err
		}
	}
	return time.Since(start), nil
}

// group is a part of the page to be rendered at once.
type group struct {
	box   Box
	spans []span
}

const (
	groupMargin = 2.0  // points around the pieces
	groupReach  = 40.0 // points between pieces of one group
	maxGroups   = 6
)

// groups gathers the pieces that stand together; if there are too many groups, all are one.
func groups(chars []char, doubts []span) []group {
	var all []group
	whole := group{box: nowhere, spans: doubts}
	for _, s := range doubts {
		box := nowhere
		for _, c := range chars[s.from:s.to] {
			box = box.Union(c.box)
		}
		box = box.grow(groupMargin)
		whole.box = whole.box.Union(box)
		i := slices.IndexFunc(all, func(g group) bool { near := g.box.grow(groupReach).meet(box); return !near.empty() })
		if i < 0 {
			all = append(all, group{box: box, spans: []span{s}})
			continue
		}
		all[i].box = all[i].box.Union(box)
		all[i].spans = append(all[i].spans, s)
	}
	if len(all) > maxGroups {
		return []group{whole}
	}
	return all
}

func (b Box) grow(by float64) Box { return Box{b.X0 - by, b.Y0 - by, b.X1 + by, b.Y1 + by} }

// span is a piece of the page's characters: from is the first, to the one after the last.
type span struct{ from, to int }

// doubts marks what is certainly covered and gives the pieces of words whose visibility only the rendered page can tell.
func (g *guest) doubts(d *drawing, v view, chars []char) []span {
	var pieces []span
	for start := 0; start < len(chars); {
		end := start + 1
		for end < len(chars) && chars[end].obj == chars[start].obj && chars[end].r != ' ' {
			end++
		}
		if t := d.texts[chars[start].obj]; t != nil {
			pieces = g.doubtful(d, v, pieces, chars, span{start, end}, t)
		}
		start = end
	}
	return pieces
}

// doubtful looks at the characters of one text object.
func (g *guest) doubtful(d *drawing, v view, pieces []span, chars []char, s span, t *textObject) []span {
	box := nowhere
	for _, c := range chars[s.from:s.to] {
		box = box.Union(c.box)
	}
	var near []paint
	for _, p := range d.paints {
		if overlap := p.box.meet(box); !overlap.empty() {
			near = append(near, p)
		}
	}
	for i := s.from; i < s.to; i++ {
		c := &chars[i]
		if c.hidden != Visible || c.r == ' ' {
			continue
		}
		covered, doubt := g.look(c, t, near, v)
		if covered {
			c.hidden = Covered
		} else if doubt || t.rough || t.layer {
			if n := len(pieces); n > 0 && pieces[n-1].to == i && pieces[n-1].from >= s.from {
				pieces[n-1].to++
			} else {
				pieces = append(pieces, span{i, i + 1})
			}
		}
	}
	return pieces
}

const paperColour = 0xFFFFFF

// look compares a character with the paint around it, which is in painting order.
func (g *guest) look(c *char, t *textObject, near []paint, v view) (covered, doubt bool) {
	x, y := c.box.centre()
	behind, known := uint32(paperColour), true
	for _, p := range near {
		if !p.box.holds(x, y) {
			continue
		}
		if p.order > t.order {
			if p.solid {
				return true, false
			}
			doubt = doubt || p.path == 0 || g.outline(p, v).holds(x, y)
			continue
		}
		behind, known = p.colour, p.solid
	}
	return false, doubt || known && alike(behind, c.colour)
}

// inkContrast is the least difference of a colour's part, of 255, that is seen.
const inkContrast = 24

// alike tells whether a reader could not tell two colours apart.
func alike(a, b uint32) bool {
	for shift := 0; shift < 24; shift += 8 {
		if d := int(a>>shift&0xFF) - int(b>>shift&0xFF); d > inkContrast || d < -inkContrast {
			return false
		}
	}
	return true
}
