package page

import "image"

// bitmap is a column's ink alone.
type bitmap struct {
	w, h int
	ink  []bool
}

func (c column) bitmap() bitmap {
	b := bitmap{w: c.box.Dx(), h: c.box.Dy()}
	b.ink = make([]bool, b.w*b.h)
	for _, blob := range c.blobs {
		for _, r := range blob.runs {
			row := b.ink[(int(r.y)-c.box.Min.Y)*b.w:]
			for x := int(r.x0) - c.box.Min.X; x < int(r.x1)-c.box.Min.X; x++ {
				row[x] = true
			}
		}
	}
	return b
}

// row gives the first and last ink of a row, as shares of the width, and how much of it is ink.
func (b bitmap) row(y int) (first, last, share float64) {
	from, to, n := -1, -1, 0
	for x := range b.w {
		if b.ink[y*b.w+x] {
			if from < 0 {
				from = x
			}
			to = x
			n++
		}
	}
	if from < 0 {
		return 0, 0, 0
	}
	w := float64(b.w)
	return float64(from) / w, float64(to+1) / w, float64(n) / w
}

// The least size, in pixels, at which a sign's shape tells.
const signLeast = 7

// isPlusMinus tells whether the ink is a plus over a bar: a stem, a full bar, a stem or nothing, a full bar.
func (b bitmap) isPlusMinus() bool {
	if b.w < signLeast || b.h < signLeast || float64(b.h) < 0.8*float64(b.w) || float64(b.h) > 2*float64(b.w) {
		return false
	}
	switch b.strokes() {
	case "sbsb", "sbs b", "sb b":
		return true
	}
	return false
}

// isPlus tells whether the ink is a plus: a stem through the middle of a full bar.
func (b bitmap) isPlus() bool {
	if b.w < signLeast || b.h < signLeast || 4*b.h < 3*b.w || 3*b.h > 4*b.w || b.strokes() != "sbs" {
		return false
	}
	_, _, share := b.row(b.h / 2)
	return share >= barShare
}

// barShare is the least of a row's width that a level bar fills.
const barShare = 0.8

// strokes names the ink's rows from top to bottom, equal ones once: s for a stem in the middle, b for a level bar, a space for none;
// "" where too many rows are none of these or there is no stem to speak of.
func (b bitmap) strokes() string {
	const stem, bar, blank = 's', 'b', ' '
	var order []rune
	softRows, stemRows := 0, 0
	for y := range b.h {
		first, last, share := b.row(y)
		var kind rune
		switch {
		case share == 0:
			kind = blank
		case share >= barShare:
			kind = bar
		case last-first <= 0.42 && first+last > 0.8 && first+last < 1.2:
			kind = stem
			stemRows++
		default:
			softRows++ // between stem and bar
			continue
		}
		if n := len(order); n == 0 || order[n-1] != kind {
			order = append(order, kind)
		}
	}
	if softRows > max(2, b.h/8) || stemRows < b.h/4 {
		return ""
	}
	return string(order)
}

// isCross tells whether the ink is two strokes that cross in the middle: a multiplication sign or an x.
func (b bitmap) isCross() bool {
	if b.w < signLeast || b.h < signLeast || b.h > 2*b.w || b.w > 2*b.h {
		return false
	}
	good := 0
	for y := range b.h {
		first, last, share := b.row(y)
		if share == 0 {
			return false
		}
		// away from the middle the outer edges come closer, linearly
		middle := 2*float64(y)/float64(b.h-1) - 1
		if middle < 0 {
			middle = -middle
		}
		if width := last - first; width >= middle-0.2 && width <= middle+0.5 && (first+last > 0.72 && first+last < 1.28) && (middle < 0.55 || share < 0.8*width) {
			good++
		}
	}
	return float64(good) >= 0.88*float64(b.h)
}

// isBar tells whether the ink is one upright stroke: an I or l, and in few faces a 1.
func (b bitmap) isBar() bool {
	if b.h < 3*b.w {
		return false
	}
	full := 0
	for _, ink := range b.ink {
		if ink {
			full++
		}
	}
	return float64(full) >= 0.9*float64(len(b.ink))
}

// isRing tells whether the ink goes around an empty middle: a degree sign.
func (b bitmap) isRing() bool {
	if b.w < 5 || b.h < 5 || 4*b.w > 6*b.h || 4*b.h > 6*b.w {
		return false
	}
	middle := image.Pt(b.w/2, b.h/2)
	if b.ink[middle.Y*b.w+middle.X] {
		return false
	}
	for _, step := range [4]image.Point{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		hit := false
		for p := middle; p.In(image.Rect(0, 0, b.w, b.h)); p = p.Add(step) {
			hit = hit || b.ink[p.Y*b.w+p.X]
		}
		if !hit {
			return false
		}
	}
	return true
}
