package page

import "image"

const (
	ruleLength = 22.0 // points: a longer straight run of ink is no letter's stroke
	ruleWidth  = 2.6  // points: a thicker one is an area
)

// findRules takes long straight runs of ink out of the mask and notes the thin ones as rules. Strokes of letters that cross a rule
// are mended.
func (c *canvas) findRules() {
	length, width := c.px(ruleLength), c.px(ruleWidth)
	across, down := c.runsOf(length)
	c.mark(across, width, maskAcross)
	c.mark(down, width, maskDown)
	for _, kind := range []uint8{maskAcross, maskDown} {
		for _, b := range blobsOf(c.mask, c.w, c.h, kind) {
			c.rules = append(c.rules, c.rule(b.box, kind))
		}
	}
	c.mend()
}

// rule is the line in the middle of a rule's pixels.
func (c *canvas) rule(r image.Rectangle, kind uint8) Rule {
	box := c.box(r)
	if kind == maskAcross {
		y := (box.Y0 + box.Y1) / 2
		return Rule{Box: Box{box.X0, y, box.X1, y}, Width: box.H()}
	}
	x := (box.X0 + box.X1) / 2
	return Rule{Box: Box{x, box.Y0, x, box.Y1}, Width: box.W()}
}

// strip is a straight run of pixels: a row or column at, from one end to the other.
type strip struct{ at, from, to int }

// runsOf finds the horizontal and the vertical runs of ink that are long enough.
func (c *canvas) runsOf(length int) (across, down []strip) {
	for y := range c.h {
		row := c.mask[y*c.w : (y+1)*c.w]
		for x := 0; x < c.w; x++ {
			if row[x] == maskNone {
				continue
			}
			start := x
			for x < c.w && row[x] != maskNone {
				x++
			}
			if x-start >= length {
				across = append(across, strip{y, start, x})
			}
		}
	}
	since := make([]int, c.w) // the row where the column's present run began, plus 1
	for y := range c.h + 1 {
		for x := range c.w {
			if y < c.h && c.mask[y*c.w+x] != maskNone {
				if since[x] == 0 {
					since[x] = y + 1
				}
				continue
			}
			if s := since[x]; s > 0 && y-(s-1) >= length {
				down = append(down, strip{x, s - 1, y})
			}
			since[x] = 0
		}
	}
	return across, down
}

// mark writes runs into the mask: as rules where few lie beside each other, else as mass.
func (c *canvas) mark(runs []strip, width int, kind uint8) {
	along, beside := 1, c.w
	if kind == maskDown {
		along, beside = c.w, 1
	}
	for _, r := range runs {
		for i := r.from; i < r.to; i++ {
			if at := r.at*beside + i*along; c.mask[at] == maskInk {
				c.mask[at] = kind
			}
		}
	}
	for _, r := range runs {
		for i := r.from; i < r.to; i++ {
			at := r.at*beside + i*along
			if c.mask[at] != kind {
				continue
			}
			if before := at - beside; r.at > 0 && (c.mask[before] == kind || c.mask[before] == maskMass) {
				continue // not the stack's first
			}
			n := 1
			for end := at + beside; end < len(c.mask) && n <= width && c.mask[end] == kind; end += beside {
				n++
			}
			if n <= width {
				continue
			}
			for end := at; end < len(c.mask) && c.mask[end] == kind; end += beside {
				c.mask[end] = maskMass
			}
		}
	}
}

// mend gives back the ink where a stroke goes on at both sides of a rule.
func (c *canvas) mend() {
	for y := 1; y < c.h; y++ {
		for x := 1; x < c.w; x++ {
			at := y*c.w + x
			switch {
			case c.mask[at] == maskAcross && c.mask[at-c.w] == maskInk:
				c.bridge(at, c.w, maskAcross)
			case c.mask[at] == maskDown && c.mask[at-1] == maskInk:
				c.bridge(at, 1, maskDown)
			}
		}
	}
}

// bridge fills from at onwards if ink follows behind the rule.
func (c *canvas) bridge(at, step int, kind uint8) {
	end := at
	for end < len(c.mask) && c.mask[end] == kind {
		end += step
	}
	if end < len(c.mask) && c.mask[end] == maskInk {
		for ; at < end; at += step {
			c.mask[at] = maskInk
		}
	}
}
