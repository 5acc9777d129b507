package page

import (
	"image"
	"math"
	"slices"
	"strings"
	"unicode"
)

// What Tesseract reads is compared with the letters' own shapes: every character must have its piece of ink and every piece of ink
// its character. That finds lost decimal points and signs, which its models drop as easily as specks.

// column is the ink of one character as a rule: blobs above each other.
type column struct {
	box   image.Rectangle
	blobs []blob
}

// columns gathers a line's blobs, left to right.
func (l *lettering) columns() []column {
	blobs := slices.Clone(l.blobs)
	slices.SortStableFunc(blobs, func(a, b blob) int { return a.box.Min.X + a.box.Max.X - b.box.Min.X - b.box.Max.X })
	var out []column
	for _, b := range blobs {
		if n := len(out); n > 0 && stacked(out[n-1].box, b.box) && !l.figureOverComma(out[n-1].box, b.box) {
			out[n-1].box = out[n-1].box.Union(b.box)
			out[n-1].blobs = append(out[n-1].blobs, b)
			continue
		}
		out = append(out, column{b.box, []blob{b}})
	}
	return out
}

// stacked tells whether one box stands above the other: an i's dot, the bars of an equals sign.
func stacked(a, b image.Rectangle) bool {
	lap := min(a.Max.X, b.Max.X) - max(a.Min.X, b.Min.X)
	return 2*lap > min(a.Dx(), b.Dx()) && (lap > min(a.Max.Y, b.Max.Y)-max(a.Min.Y, b.Min.Y))
}

// figureOverComma tells whether a comma slipped under a raised figure, as in "4 mm², black".
func (l *lettering) figureOverComma(a, b image.Rectangle) bool {
	if a.Min.Y > b.Min.Y {
		a, b = b, a
	}
	low := l.shapeOf(column{box: b})
	return l.shapeOf(column{box: a}) == shapeHigh && float64(a.Dy()) > dotMost*float64(l.tall) && (low == shapeComma || low == shapeDot)
}

// shape is what a column's place and size tell.
type shape int

const (
	shapeFull  shape = iota
	shapeDot         // on the baseline
	shapeComma       // through it
	shapeDash        // half up
	shapeHigh        // in the upper half: a degree, a raised figure
)

// Bounds of shapes, in heights of a capital.
const (
	dotMost     = 0.34
	commaMost   = 0.48
	commaBelow  = 0.07
	dashMost    = 0.24
	highFrom    = 0.40
	highMost    = 0.66
	raisedFrom  = 0.30 // a raised figure, which is taller than other raised signs, hangs lower
	raisedLeast = 0.42
	dotAbove    = 0.16
	commaTaller = 1.3 // height to width
)

// onBase tells whether a shape is a point or comma.
func onBase(s shape) bool { return s == shapeDot || s == shapeComma }

func (l *lettering) shapeOf(c column) shape {
	tall := float64(l.tall)
	w, h := float64(c.box.Dx())/tall, float64(c.box.Dy())/tall
	top, bottom := float64(l.base-c.box.Min.Y)/tall, float64(l.base-c.box.Max.Y)/tall
	switch {
	case bottom > highFrom && h < highMost, bottom > raisedFrom && h > raisedLeast && h < highMost:
		return shapeHigh
	case w <= dotMost && h <= commaMost && top <= dotMost+0.05 && bottom < -commaBelow && h > commaTaller*w:
		return shapeComma
	case w <= dotMost && h <= dotMost && top <= dotMost+0.1 && math.Abs(bottom) <= dotAbove:
		return shapeDot
	case h <= dashMost && w >= h && bottom > 0.1:
		return shapeDash
	}
	return shapeFull
}

// fits is the cost of a character having a shape.
func fits(r rune, s shape) float64 {
	want := shapeFull
	switch r {
	case '.', '…':
		want = shapeDot
	case ',', '‚':
		want = shapeComma
	case '-', '–', '—', '−', '~', '_':
		want = shapeDash
	case '°', '\'', '’', '‘', '"', '“', '”', '²', '³', '*', '´', '`', '^', '?':
		want = shapeHigh
	}
	switch {
	case want == s:
		return 0
	case r == '~' && s == shapeHigh: // some faces raise it
		return 0.1
	case want == shapeDot && s == shapeComma || want == shapeComma && s == shapeDot:
		return 0.3
	case (want == shapeHigh || want == shapeDash) && s == shapeFull, s == shapeHigh && strings.ContainsRune("23oO0®", r):
		return 0.4
	}
	return 1
}

// breadth is about how wide a character's ink is, in heights of a capital.
func breadth(r rune) float64 {
	switch {
	case strings.ContainsRune(".,:;'|!ilI’‘", r):
		return 0.18
	case strings.ContainsRune("1frtjJ()[]{}-°²³\"/", r):
		return 0.38
	case strings.ContainsRune("mwMW%@—&", r):
		return 1.05
	case unicode.IsUpper(r):
		return 0.8
	}
	return 0.62
}

// Costs of an alignment's steps; a step of cost 1 is a plain contradiction.
const (
	costLost   = 1.0 // a character without ink, ink without a character
	costSpeck  = 0.3
	costSplit  = 0.45 // a character of two pieces
	costMerged = 0.3  // characters that touch
	costWidth  = 0.25
	costGap    = 0.2
	speck      = 0.14 // of a capital's height
	maxAligned = 400  // characters or columns of a line
)

// pairing is a step of an alignment: characters from..to over columns first..last.
type pairing struct {
	from, to    int
	first, last int
	cost        float64
}

// align finds the cheapest way to lay a line's characters (without spaces; gap tells before which one stood) over its columns.
func (l *lettering) align(text []rune, spaced []bool, cols []column) []pairing {
	n, m := len(text), len(cols)
	if n == 0 || m == 0 || n > maxAligned || m > maxAligned {
		return nil
	}
	tall := float64(l.tall)
	shapes := make([]shape, m)
	for j, c := range cols {
		shapes[j] = l.shapeOf(c)
	}
	type state struct {
		cost  float64
		chars int
		cols  int
		step  float64
	}
	grid := make([]state, (n+1)*(m+1))
	for i := range grid {
		grid[i].cost = math.Inf(1)
	}
	grid[0].cost = 0
	at := func(i, j int) *state { return &grid[i*(m+1)+j] }
	for i := range n + 1 {
		for j := range m + 1 {
			here := at(i, j).cost
			if math.IsInf(here, 1) {
				continue
			}
			step := func(chars, columns int, cost float64) {
				if to := at(i+chars, j+columns); here+cost < to.cost {
					*to = state{here + cost, chars, columns, cost}
				}
			}
			if j < m {
				lost := costLost
				if float64(max(cols[j].box.Dx(), cols[j].box.Dy())) < speck*tall {
					lost = costSpeck
				}
				step(0, 1, lost)
			}
			if i < n {
				step(1, 0, costLost)
			}
			if i >= n || j >= m {
				continue
			}
			gap := 0.0
			if j > 0 && i > 0 {
				if wide := float64(cols[j].box.Min.X-cols[j-1].box.Max.X) / tall; spaced[i] && wide < 0.12 || !spaced[i] && wide > 0.5 {
					gap = costGap
				}
			}
			for k := 1; k <= 3 && j+k <= m; k++ {
				width := float64(cols[j+k-1].box.Max.X-cols[j].box.Min.X) / tall
				cost := gap + costWidth*min(2, math.Abs(math.Log(width/breadth(text[i]))))
				switch {
				case k == 1:
					cost += fits(text[i], shapes[j])
				case text[i] == '%' || text[i] == '"' || text[i] == '“' || text[i] == '”':
					cost += costSpeck * float64(k-1) / 3
				case k == 2 && unicode.IsDigit(text[i]) && (onBase(shapes[j]) || onBase(shapes[j+1])): // a decimal point that was not read
					cost += costLost + costSplit
				case k == 2 && (shapes[j] == shapeHigh || shapes[j+1] == shapeHigh): // a raised figure that was not read
					cost += costLost + costSplit
				case k == 2:
					cost += costSplit
				default:
					continue
				}
				step(1, k, cost)
			}
			wide := breadth(text[i])
			for k := 2; k <= 5 && i+k <= n && !spaced[i+k-1]; k++ {
				wide += breadth(text[i+k-1]) + 0.1
				width := float64(cols[j].box.Dx()) / tall
				cost := gap + costMerged*float64(k-1) + 2*costWidth*min(2, math.Abs(math.Log(width/wide)))
				if shapes[j] != shapeFull {
					cost += costLost
				}
				step(k, 1, cost)
			}
		}
	}
	var out []pairing
	for i, j := n, m; i > 0 || j > 0; {
		s := at(i, j)
		out = append(out, pairing{i - s.chars, i, j - s.cols, j, s.step})
		i, j = i-s.chars, j-s.cols
	}
	slices.Reverse(out)
	return out
}
