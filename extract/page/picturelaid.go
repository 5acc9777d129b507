package page

import (
	"slices"
	"unicode"
)

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
func (l laid) weak() bool { return trust(l.glyphs) >= hopeless && anyWeak(l.glyphs) }

func anyWeak(glyphs []glyph) bool {
	return slices.ContainsFunc(glyphs, func(g glyph) bool {
		return (unicode.IsLetter(g.r) || unicode.IsDigit(g.r)) && g.trust() < sureEnough
	})
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

// piece is a part of a line that was read badly; the glyphs from first to last, last not included, stand in it.
type piece struct {
	lettering
	first, last int
}

// weakPieces gives a line's pieces that hold what was read badly.
func (l laid) weakPieces(line *lettering) (weak []piece) {
	pieces := line.pieces()
	first := 0
	for n, p := range pieces {
		last := len(l.glyphs)
		if n+1 < len(pieces) {
			last = first
			for last < len(l.glyphs) && l.glyphs[last].box.Min.X < pieces[n+1].box.Min.X {
				last++
			}
		}
		if anyWeak(l.glyphs[first:last]) {
			weak = append(weak, piece{p, first, last})
		}
		first = last
	}
	return weak
}

// improve takes over the pieces that were read better alone.
func (l *laid) improve(weak []piece, again []laid) {
	for n, p := range slices.Backward(weak) { // from the end, so that the places before stay true
		old, better := l.glyphs[p.first:p.last], again[n].glyphs
		if len(better) == 0 || trust(old) >= trust(better) {
			continue
		}
		better[0].spaced = old[0].spaced
		l.glyphs = slices.Replace(l.glyphs, p.first, p.last, better...)
	}
}
