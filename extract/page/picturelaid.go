package page

import "unicode"

// laid is a line's text laid over its ink.
type laid struct {
	glyphs     []glyph
	on         *canvas
	base, tall float64 // of the line, in pixels
}

func (l *lettering) laid(found []ocrWord) laid {
	glyphs := l.lay(found)
	base, tall := l.measured(glyphs)
	return laid{glyphs, l.on, base, tall}
}

// sureEnough is the confidence from which on a line is not read once more.
const sureEnough = 0.7

// hopeless is the mean confidence below which what was read is no lettering: grids, icons, photographs.
const hopeless = 0.3

// weak tells whether letters or digits of a line were read badly.
func (l laid) weak() bool {
	if trust(l.glyphs) < hopeless {
		return false
	}
	for _, g := range l.glyphs {
		if (unicode.IsLetter(g.r) || unicode.IsDigit(g.r)) && g.trust() < sureEnough {
			return true
		}
	}
	return false
}

// trust is a glyph's confidence, contradictions counted.
func (g glyph) trust() float64 {
	if g.dubious {
		return min(g.sure, sureDubious)
	}
	return g.sure
}

// trust is the mean over glyphs; none for none.
func trust(glyphs []glyph) float64 {
	sum := 0.0
	for _, g := range glyphs {
		sum += g.trust()
	}
	return sum / float64(max(1, len(glyphs)))
}

// pieceGap is the gap, in heights of a capital, at which a line is cut for another reading: words of one cell stay together mostly.
const pieceGap = 0.47

// pieces cuts a line at its wider gaps.
func (l *lettering) pieces() []lettering {
	var out []lettering
	end := 0
	for _, b := range l.blobs {
		if n := len(out); n == 0 || float64(b.box.Min.X-end) > pieceGap*float64(l.tall) {
			out = append(out, lettering{on: l.on, tall: l.tall, base: l.base})
		}
		last := &out[len(out)-1]
		last.blobs = append(last.blobs, b)
		last.box = last.box.Union(b.box)
		end = max(end, b.box.Max.X)
	}
	return out
}

// improve takes over the pieces that were read better alone.
func (l *laid) improve(pieces []laid) {
	var out []glyph
	rest := l.glyphs
	for n, p := range pieces {
		var old []glyph
		for len(rest) > 0 && (n == len(pieces)-1 || len(pieces[n+1].glyphs) == 0 || rest[0].box.Min.X < pieces[n+1].glyphs[0].box.Min.X) {
			old, rest = append(old, rest[0]), rest[1:]
		}
		if len(p.glyphs) == 0 || trust(old) >= trust(p.glyphs) && len(old) > 0 {
			out = append(out, old...)
			continue
		}
		p.glyphs[0].spaced = len(old) > 0 && old[0].spaced
		out = append(out, p.glyphs...)
	}
	l.glyphs = out
}
