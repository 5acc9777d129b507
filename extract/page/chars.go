package page

import (
	"math"
	"strings"
)

// char is one character in shown coordinates.
type char struct {
	r      rune
	box    Box     // from the origin to the advance, from descent to ascent
	x, y   float64 // the origin, on the baseline
	obj    uint64  // PDFium's text object; 0 where PDFium made the character up (spaces that it thinks are meant, line ends)
	hidden Hidden
	style
}

// style is what all characters of a text object share.
type style struct {
	size     float64
	rotation int
	slanted  bool // the reading direction is none of the four
	bold     bool
	colour   uint32
	clear    bool // fully transparent
}

// maxChars bounds the characters of one page; a full page of small print has some ten thousand.
const maxChars = 300_000

// readChars gives the page's characters in PDFium's reading order.
func (g *guest) readChars(page uint64, v view, d *drawing) []char {
	text := g.ptr("FPDFText_LoadPage", page)
	if text == 0 {
		return nil
	}
	defer g.call("FPDFText_ClosePage", text)
	n := min(g.count("FPDFText_CountChars", text), maxChars)
	chars := make([]char, 0, n)
	styles := map[uint64]style{0: {size: 1}}
	for i := range n {
		c := g.readChar(text, uint64(i), v)
		s, known := styles[c.obj]
		if !known {
			s = g.style(text, uint64(i), c.obj, v)
			styles[c.obj] = s
		}
		c.style = s
		c.hidden = d.hides(c, v)
		if c.r = plain(c.r); c.r != dropped {
			chars = append(chars, c)
		}
	}
	splitLigatures(chars)
	markRepetitions(chars)
	return chars
}

func (g *guest) readChar(text, at uint64, v view) char {
	c := char{r: rune(uint32(g.call("FPDFText_GetUnicode", text, at))), obj: g.ptr("FPDFText_GetTextObject", text, at)}
	if c.obj == 0 {
		return c
	}
	if g.ok("FPDFText_HasUnicodeMapError", text, at) {
		c.r = hole
	}
	g.call("FPDFText_GetCharOrigin", text, at, g.at(16), g.at(24))
	c.x, c.y = v.point(g.readF64(16), g.readF64(24))
	// "Loose": the advance wide, not the ink; left, top, right, bottom
	g.call("FPDFText_GetLooseCharBox", text, at, g.at(0))
	c.box = v.box(g.readF32(0), g.readF32(12), g.readF32(8), g.readF32(4))
	if c.box.W() == 0 && c.box.H() == 0 && c.r == ' ' { // made up within an object
		c.obj = 0
	} else if c.box.W() == 0 || c.box.H() == 0 { // a font without widths
		g.call("FPDFText_GetCharBox", text, at, g.at(0), g.at(8), g.at(16), g.at(24))
		c.box = c.box.Union(v.box(g.readF64(0), g.readF64(16), g.readF64(8), g.readF64(24)))
	}
	return c
}

const (
	boldWeight = 600     // of 100 to 900
	forceBold  = 1 << 18 // font descriptor flag, ISO 32000-1 table 123
	slantLimit = 3.0     // degrees off the four directions
)

// style asks for what does not change within a text object.
func (g *guest) style(text, at, obj uint64, v view) style {
	s := style{size: math.Float64frombits(g.call("FPDFText_GetFontSize", text, at))}
	if g.ok("FPDFText_GetMatrix", text, at, g.at(0)) {
		m := g.readMatrix(0)
		s.size *= math.Hypot(m.c, m.d)
		// of the reading direction: counterclockwise in user space, clockwise as shown
		degrees := -math.Atan2(m.b, m.a) * 180 / math.Pi
		quarter := math.Round(degrees / 90)
		s.rotation = ((int(quarter)+v.turn)%4 + 4) % 4 * 90
		s.slanted = math.Abs(degrees-quarter*90) > slantLimit
	}
	if s.size <= 0 {
		s.size = 1
	}
	s.bold = g.bold(text, at, obj)
	if g.ok("FPDFText_GetFillColor", text, at, g.at(0), g.at(4), g.at(8), g.at(12)) {
		s.colour = g.readU32(0)<<16 | g.readU32(4)<<8 | g.readU32(8)
		s.clear = g.readU32(12) == 0
	}
	return s
}

// bold tells from weight, flags and name whether the font is a bold one; no single one of them can be trusted.
func (g *guest) bold(text, at, obj uint64) bool {
	font := g.ptr("FPDFTextObj_GetFont", obj)
	if b, known := g.bolds[font]; known {
		return b
	}
	weight := int32(g.call("FPDFText_GetFontWeight", text, at))
	size := min(g.count("FPDFText_GetFontInfo", text, at, g.at(1024), 512, g.at(0)), 512)
	name := strings.ToLower(string(g.bytes(g.at(1024), size)))
	b := weight >= boldWeight || g.readU32(0)&forceBold != 0 ||
		strings.Contains(name, "bold") || strings.Contains(name, "black") || strings.Contains(name, "heavy")
	if g.bolds == nil {
		g.bolds = map[uint64]bool{}
	}
	g.bolds[font] = b
	return b
}

// along is the position of the character's start in reading direction, end that of its end, across that of its baseline.
func (c char) along() float64 { return c.box.along(c.rotation) }

func (c char) end() float64 { return c.box.end(c.rotation) }

func (c char) across() float64 {
	if c.rotation%180 == 0 {
		return c.y
	}
	return c.x
}

// along is where the box begins for a reader whose lines run in the direction of rotation.
func (b Box) along(rotation int) float64 {
	switch rotation {
	case 90:
		return b.Y0
	case 180:
		return -b.X1
	case 270:
		return -b.Y1
	}
	return b.X0
}

// end is where the box ends for that reader.
func (b Box) end(rotation int) float64 {
	switch rotation {
	case 90:
		return b.Y1
	case 180:
		return -b.X0
	case 270:
		return -b.Y0
	}
	return b.X1
}
