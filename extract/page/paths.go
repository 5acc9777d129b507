package page

import "math"

// PDFium's path segment types.
const (
	segLine   = 0
	segBezier = 1
	segMove   = 2
)

const (
	thinFill  = 1.5 // points: a filled rectangle no thicker than this is a drawn line
	straight  = 0.3 // points by which a stroke may leave the horizontal or vertical
	minRule   = 2.0 // points: shorter strokes are dashes and ornaments
	minBand   = 2.0
	fullAlpha = 255
)

// readPath notes the straight lines and filled rectangles of a path. Paths with curves are drawings or lettering.
func (g *guest) readPath(d *drawing, obj uint64, v view, m matrix, clip Box) {
	segments := g.count("FPDFPath_CountSegments", obj)
	if segments < 2 || segments > maxSegments || len(d.rules) > maxRules || len(d.bands) > maxBands {
		return
	}
	if !g.ok("FPDFPath_GetDrawMode", obj, g.at(0), g.at(4)) {
		return
	}
	fill, stroke := g.readU32(0) != 0, g.readU32(4) != 0
	if !fill && !stroke {
		return
	}
	g.call("FPDFPageObj_GetMatrix", obj, g.at(0))
	m = g.readMatrix(0).then(m)
	polygons, ok := g.polygons(obj, segments, v, m)
	if !ok {
		return
	}
	clip = clip.meet(g.clip(obj, v, m))
	fillColour, fillAlpha := g.colour("FPDFPageObj_GetFillColor", obj)
	strokeColour, strokeAlpha := g.colour("FPDFPageObj_GetStrokeColor", obj)
	width := 0.0
	if stroke && g.ok("FPDFPageObj_GetStrokeWidth", obj, g.at(0)) {
		width = g.readF32(0) * m.scale()
	}
	for _, poly := range polygons {
		if box, ok := poly.rectangle(); ok && fill && fillAlpha > 0 {
			d.fill(box.meet(clip), fillColour)
		}
		if stroke && strokeAlpha > 0 {
			for i := 1; i < len(poly); i++ {
				d.line(poly[i-1], poly[i], width, strokeColour, clip)
			}
		}
	}
}

type corner struct{ x, y float64 }

type polygon []corner

// polygons gives the path's parts as shown; false where one has a curve.
func (g *guest) polygons(obj uint64, segments int, v view, m matrix) ([]polygon, bool) {
	var all []polygon
	var now polygon
	for i := range segments {
		segment := g.ptr("FPDFPath_GetPathSegment", obj, uint64(i))
		kind := int(int32(g.call("FPDFPathSegment_GetType", segment)))
		if kind == segBezier {
			return nil, false
		}
		x, y := g.segmentPoint(segment, v, m)
		if kind == segMove {
			if len(now) > 1 {
				all = append(all, now)
			}
			now = nil
		}
		now = append(now, corner{x, y})
		if g.ok("FPDFPathSegment_GetClose", segment) && len(now) > 1 {
			now = append(now, now[0])
		}
	}
	if len(now) > 1 {
		all = append(all, now)
	}
	return all, true
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
	case w < 0 || h < 0 || max(w, h) < minRule:
	case h <= thinFill && w > h:
		y := (box.Y0 + box.Y1) / 2
		d.rules = append(d.rules, Rule{Box{box.X0, y, box.X1, y}, h, colour})
	case w <= thinFill:
		x := (box.X0 + box.X1) / 2
		d.rules = append(d.rules, Rule{Box{x, box.Y0, x, box.Y1}, w, colour})
	case w >= minBand && h >= minBand:
		d.bands = append(d.bands, Band{box, colour})
	}
}

// line notes a stroke from a to b where it is horizontal or vertical and inside the clip.
func (d *drawing) line(a, b corner, width float64, colour uint32, clip Box) {
	box := Box{min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)}
	switch {
	case box.H() <= straight && box.W() >= minRule:
		y := (box.Y0 + box.Y1) / 2
		box.Y0, box.Y1 = y, y
	case box.W() <= straight && box.H() >= minRule:
		x := (box.X0 + box.X1) / 2
		box.X0, box.X1 = x, x
	default:
		return
	}
	box = box.meet(clip)
	if box.W() < 0 || box.H() < 0 {
		return
	}
	d.rules = append(d.rules, Rule{box, width, colour})
}

// colour reads an object's fill or stroke colour as 0xRRGGBB and its opacity, 0 to 255.
func (g *guest) colour(name string, obj uint64) (rgb, alpha uint32) {
	if !g.ok(name, obj, g.at(0), g.at(4), g.at(8), g.at(12)) {
		return 0, fullAlpha
	}
	return g.readU32(0)<<16 | g.readU32(4)<<8 | g.readU32(8), g.readU32(12)
}
