package page

import (
	"image"
	"slices"
)

// lettering is a stretch of text as its letters stand: blobs on one baseline, no gap among them wider than about a letter's height.
type lettering struct {
	on    *canvas
	blobs []blob // left to right
	box   image.Rectangle
	tall  int // height of its capitals and digits, pixels
	base  int // row of the baseline
}

// Sizes of what may be a letter, in points, and how letters stand to each other, in letter heights.
const (
	letterLeast   = 1.9  // points: height of an "x" in 3.6 point print
	letterMost    = 60.0 // points
	letterWide    = 14.0 // of its height: letters that touch are one blob
	letterSparse  = 0.12 // share of its box that a large blob's ink fills at least; frames and curves fill less
	sparseFrom    = 12.0 // points
	letterGap     = 1.1
	letterLap     = 0.4  // of the smaller one's height
	letterRatio   = 2.7  // of heights: "x" and "(" or "|"
	letterShift   = 0.38 // of the taller one's height, at top or bottom
	markReach     = 1.1  // how far before or behind a line its marks stand: a minus, a point
	markRise      = 0.35
	markDrop      = 0.34
	scriptTall    = 0.75 // of the line's letters
	scriptReach   = 0.45
	scriptLetters = 3
	tallRank      = 0.85 // the share of a line's letters that are no taller than its capitals
	maxLetters    = 60_000
)

// findLines gathers the canvas's blobs to lines of lettering, top to bottom.
func (c *canvas) findLines(blobs []blob) []lettering {
	var tall, marks []blob
	for _, b := range blobs {
		h, w := float64(b.box.Dy())/c.scale, float64(b.box.Dx())/c.scale
		switch {
		case h > letterMost || w > letterWide*max(h, letterLeast):
		case max(h, w) > sparseFrom && float64(b.area) < letterSparse*h*w*c.scale*c.scale:
		case h >= letterLeast:
			tall = append(tall, b)
		case b.area > 1:
			marks = append(marks, b)
		}
	}
	if len(tall) > maxLetters {
		tall = tall[:maxLetters]
	}
	lines := c.chain(tall)
	lines = absorb(lines)
	lines = c.hang(lines)
	lines = addMarks(lines, marks)
	lines = c.joinLines(lines)
	for i := range lines {
		lines[i].on = c
		lines[i].settle()
		c.claim(lines[i])
	}
	slices.SortStableFunc(lines, func(a, b lettering) int {
		if a.box.Min.Y != b.box.Min.Y {
			return a.box.Min.Y - b.box.Min.Y
		}
		return a.box.Min.X - b.box.Min.X
	})
	return lines
}

// chain links each letter with its neighbour to the right.
func (c *canvas) chain(letters []blob) []lettering {
	slices.SortStableFunc(letters, func(a, b blob) int { return a.box.Min.X - b.box.Min.X })
	const cell = 32 // pixels of a bucket's height
	buckets := make([][]int32, c.h/cell+1)
	for i, b := range letters {
		for k := b.box.Min.Y / cell; k <= (b.box.Max.Y-1)/cell; k++ {
			buckets[k] = append(buckets[k], int32(i))
		}
	}
	parent := make([]int32, len(letters))
	for i := range parent {
		parent[i] = int32(i)
	}
	for i, a := range letters {
		best, least := -1, 0
		for k := a.box.Min.Y / cell; k <= (a.box.Max.Y-1)/cell; k++ {
			from, _ := slices.BinarySearch(buckets[k], int32(i)+1)
			for _, j := range buckets[k][from:] {
				b := letters[j]
				gap := b.box.Min.X - a.box.Max.X
				if float64(gap) > letterGap*letterMost*c.scale {
					break
				}
				if (best < 0 || gap < least) && c.neighbours(a, b) {
					best, least = int(j), gap
				}
			}
		}
		if best >= 0 {
			join(parent, int32(i), int32(best))
		}
	}
	return groupBlobs(letters, parent)
}

func groupBlobs(letters []blob, parent []int32) []lettering {
	var lines []lettering
	at := map[int32]int{}
	for i, b := range letters {
		r := root(parent, int32(i))
		k, known := at[r]
		if !known {
			k = len(lines)
			at[r] = k
			lines = append(lines, lettering{})
		}
		lines[k].blobs = append(lines[k].blobs, b)
		lines[k].box = lines[k].box.Union(b.box)
	}
	for i := range lines {
		lines[i].measure()
	}
	return lines
}

// neighbours tells whether two blobs may stand beside each other in a line.
func (c *canvas) neighbours(a, b blob) bool {
	ah, bh := float64(a.box.Dy()), float64(b.box.Dy())
	gap := float64(b.box.Min.X - a.box.Max.X)
	lap := float64(min(a.box.Max.Y, b.box.Max.Y) - max(a.box.Min.Y, b.box.Min.Y))
	high, low := max(ah, bh), min(ah, bh)
	within := 0.6
	if lap >= 0.9*low { // the rings of a per cent sign stand over its stroke
		within = 1
	}
	if gap > letterGap*high || gap < -within*low || lap < letterLap*low || high > letterRatio*low {
		return false
	}
	top, bottom := float64(a.box.Min.Y-b.box.Min.Y), float64(a.box.Max.Y-b.box.Max.Y)
	if min(max(top, -top), max(bottom, -bottom)) > letterShift*high {
		return false
	}
	return gap < 0.3*high || !c.ruled(a.box, b.box)
}

// ruled tells whether a vertical rule stands between two boxes.
func (c *canvas) ruled(a, b image.Rectangle) bool {
	if c.mask == nil {
		return false
	}
	y := (max(a.Min.Y, b.Min.Y) + min(a.Max.Y, b.Max.Y)) / 2
	for x := a.Max.X; x < b.Min.X && x < c.w; x++ {
		if k := c.mask[y*c.w+x]; k == maskDown || k == maskMass {
			return true
		}
	}
	return false
}

// measure finds the height of the line's capitals and the baseline.
func (l *lettering) measure() {
	heights, feet := make([]int, len(l.blobs)), make([]int, len(l.blobs))
	for i, b := range l.blobs {
		heights[i], feet[i] = b.box.Dy(), b.box.Max.Y
	}
	slices.Sort(heights)
	slices.Sort(feet)
	l.tall, l.base = heights[int(tallRank*float64(len(heights)-1)+0.5)], feet[(len(feet)-1)/2]
}

// reaches tells whether a small thing at box stands in the line as a mark or a raised figure does: where, and how far from it.
func (l *lettering) reaches(box image.Rectangle, most float64) (far float64, ok bool) {
	tall, y := float64(l.tall), float64(box.Min.Y+box.Max.Y)/2
	if y < float64(l.base)-(1+markRise)*tall || y > float64(l.base)+markDrop*tall {
		return 0, false
	}
	far = float64(max(l.box.Min.X-box.Max.X, box.Min.X-l.box.Max.X, 0)) / tall
	return far, far <= most
}

// byTop finds lines near a height without looking at all.
type byTop struct {
	lines   []lettering
	order   []int
	highest int
}

func newByTop(lines []lettering) byTop {
	t := byTop{lines: lines, order: make([]int, len(lines))}
	for i, l := range lines {
		t.order[i] = i
		t.highest = max(t.highest, l.box.Dy()+2*l.tall)
	}
	slices.SortFunc(t.order, func(a, b int) int { return lines[a].box.Min.Y - lines[b].box.Min.Y })
	return t
}

// nearest gives the line that a small thing belongs to, -1 for none.
func (t byTop) nearest(box image.Rectangle, most float64, fits func(*lettering) bool) int {
	best, least := -1, 0.0
	from, _ := slices.BinarySearchFunc(t.order, box.Min.Y-t.highest, func(i, y int) int { return t.lines[i].box.Min.Y - y })
	for _, i := range t.order[from:] {
		l := &t.lines[i]
		if l.box.Min.Y > box.Max.Y+t.highest {
			break
		}
		if far, ok := l.reaches(box, most); ok && (best < 0 || far < least) && fits(l) {
			best, least = i, far
		}
	}
	return best
}

// absorb gives raised figures, commas and the like, which stand as small lines of their own, to the line they belong to.
func absorb(lines []lettering) []lettering {
	top := newByTop(lines)
	to := make([]int, len(lines))
	for i := range lines {
		l := &lines[i]
		to[i] = -1
		if len(l.blobs) <= scriptLetters {
			to[i] = top.nearest(l.box, scriptReach, func(o *lettering) bool { return len(o.blobs) > 1 && float64(l.tall) <= scriptTall*float64(o.tall) })
		}
	}
	for i, k := range to {
		if k < 0 || to[k] >= 0 {
			continue
		}
		lines[k].blobs = append(lines[k].blobs, lines[i].blobs...)
		lines[k].box = lines[k].box.Union(lines[i].box)
		lines[i].blobs = nil
	}
	return slices.DeleteFunc(lines, func(l lettering) bool { return len(l.blobs) == 0 })
}

// addMarks gives points, dashes, accents and the like to the line they stand in.
func addMarks(lines []lettering, marks []blob) []lettering {
	top := newByTop(lines)
	to := make([]int, len(marks))
	for i, m := range marks {
		to[i] = top.nearest(m.box, markReach, func(o *lettering) bool { return float64(m.box.Dx()) <= 1.5*float64(o.tall) })
	}
	for i, k := range to {
		if k >= 0 {
			lines[k].blobs = append(lines[k].blobs, marks[i])
			lines[k].box = lines[k].box.Union(marks[i].box)
		}
	}
	return lines
}

// joinLines joins lines that follow each other on one baseline now that their marks are known.
func (c *canvas) joinLines(lines []lettering) []lettering {
	slices.SortStableFunc(lines, func(a, b lettering) int { return a.box.Min.X - b.box.Min.X })
	top := newByTop(lines)
	for i := range lines {
		a := &lines[i]
		for a.blobs != nil {
			k := top.nearest(image.Rect(a.box.Max.X, a.base-a.tall, a.box.Max.X+1, a.base), letterGap, func(b *lettering) bool {
				return b != a && b.blobs != nil && c.follows(a, b)
			})
			if k < 0 {
				break
			}
			a.blobs = append(a.blobs, lines[k].blobs...)
			a.box = a.box.Union(lines[k].box)
			lines[k].blobs = nil
		}
	}
	return slices.DeleteFunc(lines, func(l lettering) bool { return len(l.blobs) == 0 })
}

// follows tells whether b goes on where a ends.
func (c *canvas) follows(a, b *lettering) bool {
	high, low := float64(max(a.tall, b.tall)), float64(min(a.tall, b.tall))
	gap, shift := float64(b.box.Min.X-a.box.Max.X), float64(a.base-b.base)
	return high <= 1.4*low && gap > -0.3*low && gap <= letterGap*low && max(shift, -shift) <= 0.22*high && !c.ruled(a.box, b.box)
}

// claim marks a line's ink as read.
func (c *canvas) claim(l lettering) {
	for _, b := range l.blobs {
		for _, r := range b.runs {
			for x := r.x0; x < r.x1; x++ {
				c.mask[int(r.y)*c.w+int(x)] = maskLetter
			}
		}
	}
}

// strayInk tells whether ink that belongs to no line stands right beside a box in a line's height: a digit that touches a drawing is
// taken for a part of it, and the rest of the number reads well.
func (c *canvas) strayInk(b image.Rectangle, base, tall float64) bool {
	reach := int(strayReach*tall + 0.5)
	y0, y1 := max(0, int(base-tall*0.9)), min(c.h, int(base-tall*0.1))
	for _, side := range [2][2]int{{b.Min.X - reach, b.Min.X}, {b.Max.X, b.Max.X + reach}} {
		n := 0
		for y := y0; y < y1; y++ {
			for x := max(0, side[0]); x < min(c.w, side[1]); x++ {
				if c.mask[y*c.w+x] == maskInk {
					n++
				}
			}
		}
		if float64(n) > strayInk*tall*tall {
			return true
		}
	}
	return false
}

// How far from a word stray ink matters, in heights of a capital, and how much of it, in squares of such heights.
const (
	strayReach = 0.4
	strayInk   = 0.01
)

// settle puts the blobs in order. Indexes do not stand on the baseline.
func (l *lettering) settle() {
	slices.SortStableFunc(l.blobs, func(a, b blob) int { return a.box.Min.X - b.box.Min.X })
	if indexes := l.indexes(); len(indexes) > 0 {
		var feet []int
		for _, b := range l.without(indexes) {
			feet = append(feet, b.box.Max.Y)
		}
		slices.Sort(feet)
		l.base = feet[(len(feet)-1)/2]
	}
}
