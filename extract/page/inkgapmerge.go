package page

import (
	"image"
	"math"
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

// unexplained gives the lines, or parts of lines, that hold letters which no word explains. With patches, these must lie in one of
// them; a single letter counts only beside a word.
func (c *canvas) unexplained(words rows, patches []Box) []lettering {
	blobs := blobsOf(c.mask, c.w, c.h, maskInk)
	for i := range blobs {
		blobs[i].text = words.explain(c.box(blobs[i].box))
	}
	var out []lettering
	for _, l := range c.findLines(blobs) {
		for _, part := range l.pieces() {
			open := 0
			for _, b := range part.blobs {
				x, y := c.box(b.box).centre()
				if !b.text && 3*b.box.Dy() > l.tall && (patches == nil || slices.ContainsFunc(patches, func(g Box) bool { return g.holds(x, y) })) {
					open++
				}
			}
			if open > 1 || open == 1 && (len(part.blobs) > 1 || words.beside(c.box(part.box))) {
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
	gone := map[int]bool{}
	var added []Word
	for _, l := range p.interleave(all) {
		groups := l.groups()
		sentence := l.sentence(groups)
		for n, group := range groups {
			known, extra := split(group)
			switch {
			case len(extra) == 0: // the text has it all
			case l.stray(groups, n):
			case len(known) == 0:
				if w := l.on.word(group, l.base, l.tall); p.credible(w) || sentence && lettered(group) {
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

// interleave sets what was recognised among the words of the text that it touches, each word once; what was read of ink that the text
// explains gives way to the text.
func (p *Page) interleave(all []laid) []laid {
	words := newRows(p.Words)
	var out []laid
	owner := map[int]int{} // by word: the line of out that has it
	for _, l := range all {
		if len(l.glyphs) == 0 {
			continue
		}
		touched := p.touched(l, words)
		line := laid{on: l.on, base: l.base, tall: l.tall, glyphs: slices.DeleteFunc(l.glyphs, func(g glyph) bool {
			x, y := l.on.box(g.box).centre()
			return slices.ContainsFunc(touched, func(i int) bool { return p.Words[i].zone().holds(x, y) })
		})}
		at := len(out)
		for _, i := range touched {
			if k, known := owner[i]; known {
				at = k
			}
		}
		if at == len(out) {
			out = append(out, line)
		} else {
			out[at].glyphs = append(out[at].glyphs, line.moved(out[at].on)...)
		}
		for _, i := range touched {
			if _, known := owner[i]; known {
				continue
			}
			owner[i] = at
			w := &p.Words[i]
			on := out[at].on
			out[at].glyphs = append(out[at].glyphs, on.glyphsOf(w, i)...)
			out[at].base, out[at].tall = w.Baseline*on.scale-float64(on.top), w.Size*capital*on.scale
		}
	}
	for i := range out {
		slices.SortStableFunc(out[i].glyphs, func(a, b glyph) int { return a.box.Min.X + a.box.Max.X - b.box.Min.X - b.box.Max.X })
	}
	return out
}

// moved gives the line's glyphs with their places on another canvas.
func (l laid) moved(to *canvas) []glyph {
	by := image.Pt(l.on.left-to.left, l.on.top-to.top)
	for i := range l.glyphs {
		l.glyphs[i].box = l.glyphs[i].box.Add(by)
	}
	return l.glyphs
}

const (
	touchedGap   = 0.5 // sizes from a word's end
	touchedShift = 0.3 // sizes between baselines
)

// touched gives the words that share the line with what was recognised, right beside it.
func (p *Page) touched(l laid, words rows) []int {
	box := l.on.box(l.glyphs[0].box)
	for _, g := range l.glyphs {
		box = box.Union(l.on.box(g.box))
	}
	base, size := l.on.y(l.base), l.tall/capital/l.on.scale
	var out []int
	for _, i := range words.near(box, touchedGap*size) {
		w := p.Words[i]
		shift := math.Abs(w.Baseline - base)
		lap := min(box.Y1, w.Box.Y1) - max(box.Y0, w.Box.Y0)
		if w.Rotation == 0 && (shift <= touchedShift*max(w.Size, size) || lap > 0.6*min(box.H(), w.Box.H())) && max(w.Edges[0]-box.X1, box.X0-w.Edges[len(w.Edges)-1]) <= touchedGap*w.Size {
			out = append(out, i)
		}
	}
	return out
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

// sentence tells whether a line holds a word that was read well: its other words are words too, then, whatever the doubt about their letters.
func (l laid) sentence(groups [][]glyph) bool {
	return slices.ContainsFunc(groups, func(g []glyph) bool { return len(g) >= wordLeast && lettered(g) && trust(g) > sureEnough })
}

// wordLeast is how many letters tell a word from a scrap.
const wordLeast = 3

// lettered tells whether a group has letters and no digit, so that a misread one can spoil a label but no value.
func lettered(group []glyph) bool {
	letters := 0
	for _, g := range group {
		switch {
		case unicode.IsDigit(g.r):
			return false
		case unicode.IsLetter(g.r):
			letters++
		}
	}
	return letters > 0 && trust(group) > hopeless
}

// credible tells whether a recognised word is one. A page without text must say what it can; beside a text layer stand logos and icons.
func (p *Page) credible(w Word) bool {
	if !strings.ContainsFunc(w.Text, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '±' || r == '%' }) {
		return !p.hasText() && w.Sure > sureDubious
	}
	return !p.hasText() || w.Sure > sureDubious
}
