package page

import "math"

const (
	thinFill  = 1.5 // points: a filled rectangle no thicker than this is a drawn line
	straight  = 0.3 // points by which a stroke may leave the horizontal or vertical
	minRule   = 2.0 // points: shorter strokes are dashes and ornaments
	minBand   = 2.0
	fullAlpha = 255
)

// readPath notes a path's straight lines and filled rectangles, and the area it may cover. Paths with curves are drawings, rounded
// panels or lettering.
func (g *guest) readPath(d *drawing, obj uint64, v view, f frame) {
	n := g.count("FPDFPath_CountSegments", obj)
	if n < 2 {
		return
	}
	var boxes, lines []Box
	if points := g.segments(obj, min(n, maxSegments)); points != nil {
		g.call("FPDFPageObj_GetMatrix", obj, g.at(0))
		own := g.readMatrix(0).then(f.m)
		boxes, lines = shapes(points, func(x, y float64) corner {
			x, y = v.point(own.point(x, y))
			return corner{x, y}
		})
	}
	if !g.ok("FPDFPath_GetDrawMode", obj, g.at(0), g.at(4)) {
		return
	}
	mode, stroke := g.readU32(0), g.readU32(4) != 0
	fill := mode != 0
	if fill {
		if box := g.bounds(obj, v, f.m).meet(f.clip); n > rectangleSegments*max(1, len(boxes)) || max(box.W(), box.H()) <= strokeMost {
			d.figure(figure{box: box, segments: n, path: obj, m: f.m, evenOdd: mode == fillEvenOdd})
		}
		g.readFill(d, obj, v, f, boxes)
	}
	if stroke && len(lines) > 0 {
		g.readStroke(d, obj, v, f, lines)
	}
}

// rectangleSegments is the most path segments of one rectangle; what has more is, or may be, the outline of a letter. So may short
// rectangles: "l", "I", a minus.
const (
	rectangleSegments = 5
	strokeMost        = 14.0 // points
)

// fillEvenOdd is PDFium's fill mode for the even-odd rule.
const fillEvenOdd = 1

// readFill notes the filled rectangles of a path; where it has none, the box of whatever it fills.
func (g *guest) readFill(d *drawing, obj uint64, v view, f frame, boxes []Box) {
	colour, alpha := g.colour("FPDFPageObj_GetFillColor", obj)
	if alpha == 0 {
		return
	}
	if len(boxes) == 0 {
		if box := g.bounds(obj, v, f.m); box.W() >= minPaint && box.H() >= minPaint {
			d.cover(paint{order: d.seen, box: box.meet(f.clip), colour: colour, path: obj, m: f.m})
		}
		return
	}
	f = g.within(obj, v, f)
	solid := alpha == fullAlpha && !f.rough && !f.layer && len(boxes) == 1 && !g.ok("FPDFPageObj_HasTransparency", obj)
	for _, box := range boxes {
		box = box.meet(f.clip)
		d.fill(box, colour)
		d.cover(paint{order: d.seen, box: box, colour: colour, solid: solid})
	}
}

func (g *guest) readStroke(d *drawing, obj uint64, v view, f frame, lines []Box) {
	colour, alpha := g.colour("FPDFPageObj_GetStrokeColor", obj)
	if alpha == 0 || !g.ok("FPDFPageObj_GetStrokeWidth", obj, g.at(0)) {
		return
	}
	width := g.readF32(0)
	if g.ok("FPDFPageObj_GetMatrix", obj, g.at(0)) {
		width *= g.readMatrix(0).then(f.m).scale()
	}
	clip, _ := g.clip(obj, v, f.m)
	clip = clip.meet(f.clip)
	for _, box := range lines {
		d.line(box.meet(clip), width, colour)
	}
}

type corner struct{ x, y float64 }

type polygon []corner

// shapes gives a path's upright rectangles and its horizontal and vertical lines (boxes without height or width).
func shapes(points []segment, shown func(x, y float64) corner) (boxes, lines []Box) {
	var poly polygon
	end := func() {
		if box, ok := poly.rectangle(); ok {
			boxes = append(boxes, box)
		}
		for i := 1; i < len(poly); i++ {
			if box, ok := level(poly[i-1], poly[i]); ok {
				lines = append(lines, box)
			}
		}
		poly = poly[:0]
	}
	for _, s := range points {
		if s.kind == segMove {
			end()
		}
		poly = append(poly, shown(s.x, s.y))
		if s.closes {
			poly = append(poly, poly[0])
		}
	}
	end()
	return boxes, lines
}

// level gives the line from a to b where it is horizontal or vertical and long enough to part rows or columns.
func level(a, b corner) (Box, bool) {
	box := Box{min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)}
	switch {
	case box.H() <= straight && box.W() >= minRule:
		box.Y0 = (a.y + b.y) / 2
		box.Y1 = box.Y0
	case box.W() <= straight && box.H() >= minRule:
		box.X0 = (a.x + b.x) / 2
		box.X1 = box.X0
	default:
		return Box{}, false
	}
	return box, true
}

// rectangle gives the polygon as an upright rectangle, if it is one.
func (p polygon) rectangle() (Box, bool) {
	n := len(p)
	for n > 1 && p[n-1] == p[0] {
		n--
	}
	if n != 4 {
		return Box{}, false
	}
	box := Box{p[0].x, p[0].y, p[0].x, p[0].y}
	for i := range n {
		a, b := p[i], p[(i+1)%n]
		if math.Abs(a.x-b.x) > straight && math.Abs(a.y-b.y) > straight {
			return Box{}, false
		}
		box = box.Union(Box{a.x, a.y, a.x, a.y})
	}
	return box, true
}

// fill notes a filled rectangle: thin ones are rules.
func (d *drawing) fill(box Box, colour uint32) {
	w, h := box.W(), box.H()
	switch {
	case w < 0 || h < 0:
	case h <= thinFill && w > h:
		y := (box.Y0 + box.Y1) / 2
		d.line(Box{box.X0, y, box.X1, y}, h, colour)
	case w <= thinFill:
		x := (box.X0 + box.X1) / 2
		d.line(Box{x, box.Y0, x, box.Y1}, w, colour)
	case w >= minBand && h >= minBand && len(d.bands) < maxBands:
		d.bands = append(d.bands, Band{box, colour})
	}
}

// line notes what the clip leaves of a stroke.
func (d *drawing) line(box Box, width float64, colour uint32) {
	if box.W() >= 0 && box.H() >= 0 && max(box.W(), box.H()) >= minRule && len(d.rules) < maxRules {
		d.rules = append(d.rules, Rule{box, width, colour})
	}
}

// colour reads an object's fill or stroke colour as 0xRRGGBB and its opacity, 0 to 255.
func (g *guest) colour(name string, obj uint64) (rgb, alpha uint32) {
	if !g.ok(name, obj, g.at(0), g.at(4), g.at(8), g.at(12)) {
		return 0, fullAlpha
	}
	return g.readU32(0)<<16 | g.readU32(4)<<8 | g.readU32(8), g.readU32(12)
}
