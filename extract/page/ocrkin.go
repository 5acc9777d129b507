package page

import (
	"image"
	"slices"
	"unicode"
)

// Digits of one face look alike all over a page. A digit that was read otherwise than all its look-alikes was misread: this judges a
// reading by the page itself, not by the models that made it.

// kin is a page's digits by their looks.
type kin struct {
	all        []likeness
	ones, bars int // how many a 1 there are, and how many of these are mere bars
}

// likeness is a digit's picture at a common size, with what it was read as.
type likeness struct {
	digit rune
	w, h  int
	grey  []uint8 // kinTall rows of kinWide
}

const (
	kinTall   = 24 // rows for a capital's height
	kinWide   = 28
	kinSlack  = 2    // rows and columns by which the sizes of look-alikes differ
	kinVotes  = 5    // nearest look-alikes that are asked
	kinNear   = 0.22 // the most that look-alikes differ, as a share of their ink
	kinMargin = 0.62 // how much nearer the winner's kin must be than the loser's
	kinLeast  = 3    // look-alikes, of which
	kinMost   = 4000 // digits of a page are compared
)

// likenessOf shows a glyph at the common size; tall is a capital's height in the glyph's line.
func (c *canvas) likenessOf(g glyph, tall float64) (likeness, bool) {
	k := kinTall / tall
	out := likeness{digit: g.r, w: int(float64(g.box.Dx())*k + 0.5), h: int(float64(g.box.Dy())*k + 0.5)}
	if out.w < 2 || out.h < kinTall/2 || out.w > kinWide || out.h > kinTall+4 || g.column == nil {
		return out, false
	}
	gain := c.gain(lettering{blobs: g.column.blobs})
	plain := image.NewGray(image.Rect(0, 0, g.box.Dx(), g.box.Dy()))
	for i := range plain.Pix {
		plain.Pix[i] = 0xFF
	}
	for _, b := range g.column.blobs {
		for _, r := range b.runs {
			c.copyInk(plain, g.box, r, gain)
		}
	}
	out.grey = make([]uint8, (kinTall+4)*kinWide)
	for y := range out.h {
		for x := range out.w {
			out.grey[y*kinWide+x] = 255 - average(plain, x, y, out.w, out.h)
		}
	}
	return out, true
}

// average is the mean of the part of a picture that becomes pixel x, y of w by h.
func average(p *image.Gray, x, y, w, h int) uint8 {
	x0, x1 := x*p.Rect.Dx()/w, (x+1)*p.Rect.Dx()/w
	y0, y1 := y*p.Rect.Dy()/h, (y+1)*p.Rect.Dy()/h
	x1, y1 = max(x1, x0+1), max(y1, y0+1)
	sum := 0
	for v := y0; v < y1; v++ {
		for u := x0; u < x1; u++ {
			sum += int(p.Pix[v*p.Stride+u])
		}
	}
	return uint8(sum / ((x1 - x0) * (y1 - y0)))
}

// apart is how much two likenesses differ, as a share of their ink.
func (a likeness) apart(b likeness) float64 {
	if d := a.w - b.w; d > kinSlack || d < -kinSlack {
		return 1
	}
	if d := a.h - b.h; d > kinSlack || d < -kinSlack {
		return 1
	}
	differ, ink := 0, 1
	for i, v := range a.grey {
		u := b.grey[i]
		differ += max(int(v)-int(u), int(u)-int(v))
		ink += max(int(v), int(u))
	}
	return float64(differ) / float64(ink)
}

// add notes a line's digits.
func (k *kin) add(line laid) {
	for _, g := range line.glyphs {
		if !unicode.IsDigit(g.r) || g.dubious || len(k.all) >= kinMost {
			continue
		}
		if g.r == '1' && g.column != nil {
			k.ones++
			if g.column.bitmap().isBar() {
				k.bars++
			}
		}
		if l, ok := line.on.likenessOf(g, line.tall); ok {
			k.all = append(k.all, l)
		}
	}
}

// judge tells which digit a glyph's look-alikes were read as; 0 where there are too few or they do not agree. self is excluded: the
// entry with the same picture, as it was noted.
func (k *kin) judge(l likeness, self bool) rune {
	type vote struct {
		digit rune
		apart float64
	}
	var votes []vote
	best := map[rune]float64{}
	for _, o := range k.all {
		d := l.apart(o)
		if self && d == 0 && o.digit == l.digit {
			self = false // itself; a twin counts
			continue
		}
		if d < kinNear {
			votes = append(votes, vote{o.digit, d})
		}
		if b, known := best[o.digit]; !known || d < b {
			best[o.digit] = d
		}
	}
	if len(votes) < kinLeast {
		return 0
	}
	slices.SortStableFunc(votes, func(a, b vote) int {
		switch {
		case a.apart < b.apart:
			return -1
		case a.apart > b.apart:
			return 1
		}
		return 0
	})
	votes = votes[:min(len(votes), kinVotes)]
	winner := votes[0].digit
	agree := 0
	for _, v := range votes {
		if v.digit == winner {
			agree++
		}
	}
	if agree < kinLeast || agree*4 < len(votes)*3 {
		return 0
	}
	for digit, d := range best {
		if digit != winner && best[winner] > kinMargin*d && agree < len(votes) {
			return 0
		}
	}
	return winner
}

// The least number of ones that tell the face's 1, and the most of them that may be bars, one in so many.
const (
	onesLeast = 5
	barsRare  = 3
)

// barsAreLetters tells whether a 1 of this page has more than a bar, so that a bar is an I.
func (k *kin) barsAreLetters() bool { return k.ones >= onesLeast && k.bars*barsRare < k.ones }
