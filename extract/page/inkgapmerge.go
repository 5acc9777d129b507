package page

import (
	"image"
	"maps"
	"slices"
	"strings"
	"unicode"
)

// A word's ink, in font sizes around its baseline and beyond its ends.
const (
	zoneRise  = 1.0
	zoneDrop  = 0.35
	zoneSide  = 0.06
	zoneShare = 0.6 // of a blob's box that lies in the zone of the word that explains it
)

// zone is where a word's own ink stands.
func (w Word) zone() Box {
	if w.Rotation != 0 || len(w.Edges) < 2 {
		return w.Box
	}
	side := zoneSide * w.Size
	return Box{w.Edges[0] - side, min(w.Box.Y0, w.Baseline-zoneRise*w.Size), w.Edges[len(w.Edges)-1] + side, max(w.Box.Y1, w.Baseline+zoneDrop*w.Size)}
}

// explain marks the ink that belongs to visible words.
func (c *canvas) explain(blobs []blob, words rows) {
	for i := range blobs {
		blobs[i].text = words.explain(c.box(blobs[i].box))
	}
}

// unexplained gives the parts of lines that hold letters which no word explains, at the places where there may be some: a single one
// only beside a word.
func (c *canvas) unexplained(lines []lettering, gaps []Box) []lettering {
	var out []lettering
	for _, l := range lines {
		for _, part := range l.pieces() {
			open := 0
			for _, b := range part.blobs {
				x, y := c.box(b.box).centre()
				if !b.text && 3*b.box.Dy() > l.tall && slices.ContainsFunc(gaps, func(g Box) bool { return g.holds(x, y) }) {
					open++
				}
			}
			if open > 1 || open == 1 && len(part.blobs) > 1 {
				out = append(out, part)
			}
		}
	}
	return out
}

// doubtInk says that ink stands in a word which neither the text nor the recognition explains.
const doubtInk = "the page shows more ink here than its text explains"

// merge puts what was recognised into the page: in place of the words that it completes, else behind them.
func (p *Page) merge(all []laid) {
	zones := newRows(p.Words)
	gone := map[int]bool{}
	var added []Word
	for _, l := range all {
		if len(l.glyphs) == 0 {
			continue
		}
		l = p.interleave(l, zones)
		for _, group := range l.groups() {
			known, extra := split(group)
			switch {
			case len(extra) == 0: // the text has it all
			case len(known) == 0:
				if w := l.on.word(group, l.base, l.tall); p.credible(w) {
					added = append(added, w)
				}
			case !slices.ContainsFunc(extra, telling): // an ornament
			case slices.ContainsFunc(extra, func(g glyph) bool { return g.trust() <= sureDubious }):
				for _, i := range known {
					p.Words[i].Doubt = doubtInk
				}
			default:
				for _, i := range known {
					gone[i] = true
				}
				added = append(added, l.on.word(group, l.base, l.tall))
			}
		}
	}
	kept := p.Words[:0]
	for i, w := range p.Words {
		if !gone[i] {
			kept = append(kept, w)
		}
	}
	p.Words = append(kept, added...)
}

// interleave replaces what was read of ink that the text explains by the text itself.
func (p *Page) interleave(l laid, zones rows) laid {
	c := l.on
	var out []glyph
	known := map[int]bool{}
	for _, g := range l.glyphs {
		box := c.box(g.box)
		x, y := box.centre()
		i := -1
		for _, k := range zones.near(box, 0) {
			if p.Words[k].zone().holds(x, y) {
				i = k
			}
		}
		if i < 0 {
			out = append(out, g)
			continue
		}
		known[i] = true
	}
	for _, i := range slices.Sorted(maps.Keys(known)) {
		w := &p.Words[i]
		out = append(out, c.glyphsOf(w, i)...)
		l.base, l.tall = w.Baseline*c.scale-float64(c.top), w.Size*capital*c.scale
	}
	slices.SortStableFunc(out, func(a, b glyph) int { return a.box.Min.X + a.box.Max.X - b.box.Min.X - b.box.Max.X })
	l.glyphs = out
	return l
}

// glyphsOf takes a word of the text apart.
func (c *canvas) glyphsOf(w *Word, index int) []glyph {
	runes := []rune(w.Text)
	if len(w.Edges) != len(runes)+1 {
		return nil
	}
	px := func(points float64, from int) int { return int(points*c.scale+0.5) - from }
	var out []glyph
	for k, r := range runes {
		box := image.Rect(px(w.Edges[k], c.left), px(w.Box.Y0, c.top), px(w.Edges[k+1], c.left), px(w.Box.Y1, c.top))
		out = append(out, glyph{r: r, box: box, sure: 1, spaced: k == 0, word: index + 1})
	}
	return out
}

// split gives the words of the text in a group and the glyphs that are none.
func split(group []glyph) (known []int, extra []glyph) {
	for _, g := range group {
		if g.word == 0 {
			extra = append(extra, g)
		} else if i := g.word - 1; !slices.Contains(known, i) {
			known = append(known, i)
		}
	}
	return known, extra
}

// telling tells whether a character changes what a word says.
func telling(g glyph) bool {
	return unicode.IsLetter(g.r) || unicode.IsDigit(g.r) || strings.ContainsRune(".,+-−±×°%²", g.r)
}

// credible tells whether a recognised word is one. A page without text must say what it can; beside a text layer stand logos and icons.
func (p *Page) credible(w Word) bool {
	if !strings.ContainsFunc(w.Text, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '±' || r == '%' }) {
		return !p.hasText() && w.Sure > sureDubious
	}
	return !p.hasText() || w.Sure > sureDubious
}
