package page

import (
	"image"
	"slices"
	"strings"
	"unicode"
)

// glyph is a character with its ink. r is 0 for ink that was read as nothing.
type glyph struct {
	r       rune
	box     image.Rectangle
	shape   shape
	column  *column // where it has one for itself
	sure    float64
	spaced  bool // a space stands before it
	dubious bool // text and ink contradict each other here
	word    int  // the word of the text layer that it is from, counted from 1; 0 for none
}

// Bounds of confidence for what the shapes corrected, and for what contradicts them.
const (
	sureMended  = 0.80
	sureDubious = 0.45
)

// lay lays what was read in a line over its ink: characters get their places, lost points and signs come back.
func (l *lettering) lay(found []ocrWord) []glyph {
	var text []rune
	var spaced []bool
	var sure []float64
	for _, w := range found {
		for i, r := range []rune(w.text) {
			text, spaced, sure = append(text, r), append(spaced, i == 0 && len(text) > 0), append(sure, w.sure)
		}
	}
	cols := l.columns()
	var glyphs []glyph
	for _, p := range l.align(text, spaced, cols) {
		glyphs = append(glyphs, l.glyphs(p, text, spaced, sure, cols)...)
	}
	return l.mend(glyphs)
}

// glyphs gives a pairing's characters their places.
func (l *lettering) glyphs(p pairing, text []rune, spaced []bool, sure []float64, cols []column) []glyph {
	if p.first == p.last { // characters without ink
		at := image.Rectangle{}
		switch {
		case p.first > 0:
			b := cols[p.first-1].box
			at = image.Rect(b.Max.X, b.Min.Y, b.Max.X, b.Max.Y)
		default:
			b := cols[0].box
			at = image.Rect(b.Min.X, b.Min.Y, b.Min.X, b.Max.Y)
		}
		return []glyph{{r: text[p.from], box: at, sure: sure[p.from], spaced: spaced[p.from], dubious: true}}
	}
	box := cols[p.first].box
	for _, c := range cols[p.first:p.last] {
		box = box.Union(c.box)
	}
	if p.from == p.to { // ink without a character
		return []glyph{{box: box, shape: l.shapeOf(cols[p.first]), column: &cols[p.first]}}
	}
	whole := 0.0
	for _, r := range text[p.from:p.to] {
		whole += breadth(r)
	}
	var out []glyph
	x, dx := float64(box.Min.X), float64(box.Dx())/whole
	for i := p.from; i < p.to; i++ {
		w := breadth(text[i]) * dx
		g := glyph{r: text[i], box: image.Rect(int(x+0.5), box.Min.Y, int(x+w+0.5), box.Max.Y), sure: sure[i], spaced: spaced[i], dubious: p.cost >= costLost}
		if p.to-p.from == 1 {
			g.shape = l.shapeOf(column{box: box})
			if p.last-p.first == 1 {
				g.column = &cols[p.first]
			}
		}
		out = append(out, g)
		x += w
	}
	return out
}

// mend corrects characters by their shapes and reads the ink that was read as nothing.
func (l *lettering) mend(glyphs []glyph) []glyph {
	digit := func(i int) bool { return i >= 0 && i < len(glyphs) && unicode.IsDigit(glyphs[i].r) }
	is := func(i int, set string) bool {
		return i >= 0 && i < len(glyphs) && glyphs[i].r != 0 && strings.ContainsRune(set, glyphs[i].r)
	}
	glyphs = l.squares(glyphs)
	for i := range glyphs {
		g := &glyphs[i]
		if g.column == nil {
			continue
		}
		change := func(r rune) {
			if g.r != r {
				g.r, g.sure, g.dubious = r, sureMended, false
			}
		}
		switch {
		case g.shape == shapeFull && g.r != '±' && g.column.bitmap().isPlusMinus():
			change('±')
		case g.shape != shapeHigh && g.r != '+' && (i == 0 || !unicode.IsLetter(glyphs[i-1].r)) && g.column.bitmap().isPlus():
			change('+')
		case g.shape == shapeFull && !is(i, "×xX") && (digit(i-1) || is(i-1, "m")) && (digit(i+1) || i+1 < len(glyphs) && glyphs[i+1].r == 0) && g.column.bitmap().isCross():
			change('×')
		case digit(i-1) && digit(i+1) && !glyphs[i+1].spaced && !g.spaced && (g.r == 0 && g.shape == shapeDot || g.r == ',' && l.isPoint(g.box)):
			change('.')
		case digit(i-1) && digit(i+1) && !glyphs[i+1].spaced && !g.spaced && (g.r == 0 && g.shape == shapeComma || g.r == '.' && l.isComma(g.box)):
			change(',')
		case g.shape == shapeHigh && (g.r == 0 || !is(i, "°º˚")) && is(i+1, "CFc") && g.column.bitmap().isRing():
			change('°')
		case g.shape == shapeHigh && is(i-1, "m") && (g.r == 0 || is(i, "2?’'*°\"^”“‘7z”")) && !g.spaced:
			change('²')
		case is(i, "|!\\") && i+1 < len(glyphs) && !glyphs[i+1].spaced && unicode.IsLetter(glyphs[i+1].r) && (g.r == '|' || g.column.bitmap().isBar()):
			change('I')
		case is(i, "Oo") && (i == 0 || g.spaced || !unicode.IsLetter(glyphs[i-1].r)) && i+1 < len(glyphs) && !unicode.IsLetter(glyphs[i+1].r) && (digit(i-1) || digit(i+1) || is(i+1, "~+.,") && (digit(i+2) || is(i+2, "+"))):
			change('0')
		case is(i, "I|l1!") && is(i-1, "%") && is(i+1, "K°") && !g.spaced:
			change('/')
		case g.shape == shapeDash && g.r == 0 && digit(i+1) && (i == 0 || !digit(i-1)):
			change('-')
		}
	}
	return percents(l.read(glyphs))
}

// read leaves out ink that was read as nothing; what stands beside it is in doubt.
func (l *lettering) read(glyphs []glyph) []glyph {
	out := glyphs[:0]
	for i, g := range glyphs {
		if g.r != 0 {
			out = append(out, g)
			continue
		}
		if float64(max(g.box.Dx(), g.box.Dy())) < speck*float64(l.tall) {
			continue
		}
		// the neighbours on its own word's side cannot be trusted
		if n := len(out); n > 0 && float64(g.box.Min.X-out[n-1].box.Max.X) < wordApart*float64(l.tall) {
			out[n-1].dubious = true
		}
		if i+1 < len(glyphs) && float64(glyphs[i+1].box.Min.X-g.box.Max.X) < wordApart*float64(l.tall) {
			glyphs[i+1].dubious = true
		}
	}
	return out
}

// percents joins a percent sign that was read as its parts: a ring, a stroke and a ring below.
func percents(glyphs []glyph) []glyph {
	out := glyphs[:0]
	for i := 0; i < len(glyphs); i++ {
		g := glyphs[i]
		if n := len(out); n > 0 && unicode.IsDigit(out[n-1].r) && strings.ContainsRune("°º", g.r) {
			if k := partsOfPercent(glyphs[i+1:]); k > 0 {
				g.r, g.sure, g.box, g.shape, g.column = '%', sureMended, g.box.Union(glyphs[i+k].box), shapeFull, nil
				i += k
			}
		}
		out = append(out, g)
	}
	return out
}

// partsOfPercent counts the glyphs behind a ring that are the rest of a percent sign, up to a space or the line's end: a stroke and a ring,
// or what they look like together. "°C", "°F" and "°K" are none.
func partsOfPercent(rest []glyph) int {
	k := 0
	for k < len(rest) && !rest[k].spaced && strings.ContainsRune("/|lIhfoO0°º", rest[k].r) {
		k++
	}
	if k > 2 || k < len(rest) && !rest[k].spaced && (unicode.IsLetter(rest[k].r) || unicode.IsDigit(rest[k].r)) {
		return 0
	}
	return k
}

// isPoint and isComma tell what a small thing on the baseline is where its shape leaves no doubt.
func (l *lettering) isPoint(b image.Rectangle) bool {
	return float64(b.Dy()) <= 1.15*float64(b.Dx()) && float64(b.Max.Y-l.base) <= 0.04*float64(l.tall) && b.Dx() > 2
}

func (l *lettering) isComma(b image.Rectangle) bool {
	return float64(b.Dy()) >= 1.5*float64(b.Dx()) && float64(b.Max.Y-l.base) >= 0.1*float64(l.tall) && b.Dy() > 4
}

// together is the gap up to which two characters make one word though a space was read between them: a one is slender, and its gaps wide.
func together(a, b glyph) float64 {
	if (a.r == '1' || b.r == '1') && a.word == 0 && b.word == 0 {
		return wordTogether + onesGap
	}
	return wordTogether
}

// Gaps between words, in heights of a capital: there is none below the first and always one above the second.
const (
	wordTogether = 0.14
	wordApart    = 0.52
	onesGap      = 0.17
)

// groups parts a line's glyphs into words.
func (l laid) groups() [][]glyph {
	var out [][]glyph
	for from := 0; from < len(l.glyphs); {
		to := from + 1
		for to < len(l.glyphs) {
			a, b := l.glyphs[to-1], l.glyphs[to]
			gap := float64(b.box.Min.X-a.box.Max.X) / l.tall
			if (gap > wordApart || b.spaced && gap > together(a, b)) && (a.word == 0 || a.word != b.word) && !l.typed(to) {
				break
			}
			if b.spaced && min(a.sure, b.sure) < noLetter && max(a.sure, b.sure) > sureEnough {
				break // a drawing's lines, and a figure that stands beside them
			}
			to++
		}
		out = append(out, l.glyphs[from:to])
		from = to
	}
	return out
}

// typed tells whether a number goes on before glyph n: a typewriter's point stands as far from the digits as a letter would.
func (l laid) typed(n int) bool {
	for point := n - 1; point <= n; point++ {
		if point < 1 || point+1 >= len(l.glyphs) || l.glyphs[point].r != '.' || l.glyphs[point].shape != shapeDot {
			continue
		}
		a, b, c := l.glyphs[point-1], l.glyphs[point], l.glyphs[point+1]
		before, after := float64(b.box.Min.X-a.box.Max.X)/l.tall, float64(c.box.Min.X-b.box.Max.X)/l.tall
		if unicode.IsDigit(a.r) && unicode.IsDigit(c.r) && max(before, after) < typedApart && before > typedEven*after && after > typedEven*before {
			return true
		}
	}
	return false
}

// Gaps beside a typewriter's point, in heights of a capital, and the least of one as a share of the other.
const (
	typedApart = 0.9
	typedEven  = 0.5
)

// noLetter is the confidence below which what was read is a drawing's line.
const noLetter = 0.15

// capital is a capital's height in font sizes, about the same in all common faces; lower is the height of an x in capitals.
const (
	capital = 0.72
	lower   = 0.73
)

// measured finds baseline and capital height from the characters that stand on the baseline.
func (l *lettering) measured(glyphs []glyph) (base, tall float64) {
	var feet, heights, lows []int
	indexes := l.indexes()
	for _, g := range glyphs {
		if g.column == nil || g.shape != shapeFull || l.inIndex(g.box, indexes) {
			continue
		}
		switch {
		case unicode.IsDigit(g.r), unicode.IsUpper(g.r) && g.r != 'Q' && g.r != 'J', strings.ContainsRune("bdhkl", g.r):
			feet, heights = append(feet, g.box.Max.Y), append(heights, g.box.Dy())
		case strings.ContainsRune("aceimnorsuvwxz", g.r):
			feet = append(feet, g.box.Max.Y)
			if g.r != 'i' {
				lows = append(lows, g.box.Dy())
			}
		}
	}
	base, tall = float64(l.base), float64(l.tall)
	middle := func(v []int) float64 {
		slices.Sort(v)
		return float64(v[len(v)/2])
	}
	if len(feet) > 0 {
		base = middle(feet)
	}
	switch {
	case len(heights) > 0:
		tall = middle(heights)
	case len(lows) > 0:
		tall = middle(lows) / lower
	}
	return base, tall
}

// word makes a word of glyphs. base and tall are the line's, in pixels.
func (c *canvas) word(glyphs []glyph, base, tall float64) Word {
	w := Word{By: ByPicture, Sure: 1}
	box := image.Rectangle{}
	var text strings.Builder
	for i, g := range glyphs {
		text.WriteRune(g.r)
		x := c.x(float64(g.box.Min.X))
		if i > 0 {
			x = max(x, w.Edges[i-1])
		}
		w.Edges = append(w.Edges, x)
		if g.box.Dx() > 0 {
			box = box.Union(g.box)
		}
		w.Sure = min(w.Sure, g.sure)
		if g.dubious {
			w.Sure = min(w.Sure, sureDubious)
		}
	}
	if box.Empty() {
		box = glyphs[0].box
	}
	if c.strayInk(box, base, tall) {
		w.Sure = min(w.Sure, sureDubious)
	}
	w.Text, w.Box = text.String(), c.box(box)
	w.Edges = append(w.Edges, max(w.Box.X1, w.Edges[len(w.Edges)-1]))
	w.Baseline, w.Size = c.y(base), tall/capital/c.scale
	if raised(glyphs, base, tall) {
		w.Baseline, w.Size = w.Box.Y1, w.Box.H()/capital
	}
	return w
}

// stray tells whether group n of a line is a speck that was read as a small figure: one far from all others.
func (l laid) stray(groups [][]glyph, n int) bool {
	g := groups[n]
	if len(g) > 1 || !raised(g, l.base, l.tall) {
		return false
	}
	before := n > 0 && float64(g[0].box.Min.X-groups[n-1][len(groups[n-1])-1].box.Max.X) < l.tall
	after := n+1 < len(groups) && float64(groups[n+1][0].box.Min.X-g[0].box.Max.X) < l.tall
	return !before && !after
}

// raised tells whether a word is a raised or lowered figure.
func raised(glyphs []glyph, base, tall float64) bool {
	for _, g := range glyphs {
		if float64(g.box.Dy()) > scriptTall*tall || !unicode.IsLetter(g.r) && !unicode.IsDigit(g.r) {
			return false
		}
	}
	return float64(glyphs[0].box.Max.Y) < base-0.2*tall || float64(glyphs[0].box.Max.Y) > base+0.15*tall
}
