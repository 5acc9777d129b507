package page

import "math"

// char is one character as PDFium gives it, in shown coordinates.
type char struct {
	r        rune
	box      Box     // from the origin to the advance, from descent to ascent
	x, y     float64 // the origin, on the baseline
	obj      uint64  // text object; 0 where PDFium made the character up (spaces, line ends)
	size     float64
	rotation int
	bold     bool
	colour   uint32
	hidden   Hidden
}

// maxChars bounds the characters of one page; a full page of small print has some ten thousand.
const maxChars = 300_000

// style is what all characters of a text object share.
type style struct {
	size     float64
	rotation int
	bold     bool
	colour   uint32
}

// readChars gives the page's characters in PDFium's reading order.
func (g *guest) readChars(page uint64, v view, d *drawing) []char {
	text := g.ptr("FPDFText_LoadPage", page)
	if text == 0 {
		return nil
	}
	defer g.call("FPDFText_ClosePage", text)
	n := min(g.count("FPDFText_CountChars", text), maxChars)
	chars := make([]char, 0, n)
	styles := map[uint64]style{}
	for i := range n {
		at := uint64(i)
		c := char{r: rune(uint32(g.call("FPDFText_GetUnicode", text, at))), obj: g.ptr("FPDFText_GetTextObject", text, at)}
		g.call("FPDFText_GetLooseCharBox", text, at, g.at(0))
		c.box = v.box(g.readF32(0), g.readF32(12), g.readF32(8), g.readF32(4))
		g.call("FPDFText_GetCharOrigin", text, at, g.at(16), g.at(24))
		c.x, c.y = v.point(g.readF64(16), g.readF64(24))
		s, known := styles[c.obj]
		if !known {
			s = g.style(text, at, c.obj, v)
			styles[c.obj] = s
		}
		c.size, c.rotation, c.bold, c.colour = s.size, s.rotation, s.bold, s.colour
		c.hidden = d.hides(c, v)
		chars = append(chars, c)
	}
	return chars
}

// hides tells why a character is not visible, as far as the page's objects tell.
func (d *drawing) hides(c char, v view) Hidden {
	x, y := (c.box.X0+c.box.X1)/2, (c.box.Y0+c.box.Y1)/2
	if !(Box{0, 0, v.w, v.h}).holds(x, y) {
		return OffPage
	}
	t := d.texts[c.obj]
	if t == nil {
		return Visible
	}
	if t.mode == 3 || t.mode == 7 {
		return Unpainted
	}
	if !t.clip.holds(x, y) {
		return Clipped
	}
	return Visible
}

const boldWeight = 600 // of 100 to 900

// style asks for what does not change within a text object.
func (g *guest) style(text, at, obj uint64, v view) style {
	s := style{size: math.Float64frombits(g.call("FPDFText_GetFontSize", text, at))}
	if g.ok("FPDFText_GetMatrix", text, at, g.at(0)) {
		m := g.readMatrix(0)
		s.size *= math.Hypot(m.c, m.d)
		// the angle of the reading direction in user space, counterclockwise
		degrees := math.Atan2(m.b, m.a) * 180 / math.Pi
		s.rotation = ((int(math.Round(-degrees/90))+v.turn)%4 + 4) % 4 * 90
	}
	s.bold = int32(g.call("FPDFText_GetFontWeight", text, at)) >= boldWeight
	if g.ok("FPDFText_GetFillColor", text, at, g.at(0), g.at(4), g.at(8), g.at(12)) {
		s.colour = g.readU32(0)<<16 | g.readU32(4)<<8 | g.readU32(8)
	}
	return s
}
