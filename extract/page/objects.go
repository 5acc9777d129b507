package page

// PDFium's page object types.
const (
	objText  = 1
	objPath  = 2
	objImage = 3
	objShade = 4
	objForm  = 5
)

// Bounds of what is looked at on a page: a drawing may hold a million strokes, a table's rules are some hundreds.
const (
	maxObjects  = 200_000
	maxRules    = 20_000
	maxBands    = 20_000
	maxSegments = 4_000 // of one path
	maxDepth    = 12    // of nested forms
)

// textObject is what the characters of one show operator have in common.
type textObject struct {
	order int // of painting
	clip  Box // in shown coordinates; what lies outside is not painted
	mode  int // text render mode
}

// drawing is what a page holds besides characters.
type drawing struct {
	rules []Rule
	bands []Band
	texts map[uint64]*textObject // by PDFium's handle
	seen  int                    // objects so far
}

// readObjects walks the page's objects in painting order.
func (g *guest) readObjects(page uint64, v view) *drawing {
	d := &drawing{texts: map[uint64]*textObject{}}
	clip := Box{0, 0, v.w, v.h}
	n := g.count("FPDFPage_CountObjects", page)
	for i := 0; i < n && d.seen < maxObjects; i++ {
		g.readObject(d, g.ptr("FPDFPage_GetObject", page, uint64(i)), v, identity, clip, 0)
	}
	return d
}

func (g *guest) readObject(d *drawing, obj uint64, v view, m matrix, clip Box, depth int) {
	d.seen++
	switch g.call("FPDFPageObj_GetType", obj) {
	case objText:
		d.texts[obj] = &textObject{order: d.seen, clip: clip.meet(g.clip(obj, v, m)), mode: int(int32(g.call("FPDFTextObj_GetTextRenderMode", obj)))}
	case objPath:
		g.readPath(d, obj, v, m, clip)
	case objForm:
		if depth >= maxDepth {
			return
		}
		inner := clip.meet(g.clip(obj, v, m))
		if !g.ok("FPDFPageObj_GetMatrix", obj, g.at(0)) {
			return
		}
		m = g.readMatrix(0).then(m)
		n := g.count("FPDFFormObj_CountObjects", obj)
		for i := 0; i < n && d.seen < maxObjects; i++ {
			g.readObject(d, g.ptr("FPDFFormObj_GetObject", obj, uint64(i)), v, m, inner, depth+1)
		}
	}
}

var everywhere = Box{-1e9, -1e9, 1e9, 1e9}

// clip is the box, as shown, outside which an object is not painted: the intersection of its clip paths' bounding boxes.
func (g *guest) clip(obj uint64, v view, m matrix) Box {
	box := everywhere
	path := g.ptr("FPDFPageObj_GetClipPath", obj)
	if path == 0 {
		return box
	}
	paths := g.count("FPDFClipPath_CountPaths", path)
	for i := range paths {
		segments := min(g.count("FPDFClipPath_CountPathSegments", path, uint64(i)), maxSegments)
		if segments == 0 {
			continue
		}
		one := Box{1e9, 1e9, -1e9, -1e9}
		for j := range segments {
			x, y := g.segmentPoint(g.ptr("FPDFClipPath_GetPathSegment", path, uint64(i), uint64(j)), v, m)
			one = one.Union(Box{x, y, x, y})
		}
		box = box.meet(one)
	}
	return box
}

// segmentPoint is the end point of a path segment, as shown.
func (g *guest) segmentPoint(segment uint64, v view, m matrix) (x, y float64) {
	g.call("FPDFPathSegment_GetPoint", segment, g.at(64), g.at(68))
	return v.point(m.point(g.readF32(64), g.readF32(68)))
}

// meet is what two boxes have in common; it is inside out where they have nothing.
func (b Box) meet(o Box) Box {
	return Box{max(b.X0, o.X0), max(b.Y0, o.Y0), min(b.X1, o.X1), min(b.Y1, o.Y1)}
}

func (b Box) empty() bool { return b.X1 <= b.X0 || b.Y1 <= b.Y0 }

func (b Box) holds(x, y float64) bool { return x >= b.X0 && x <= b.X1 && y >= b.Y0 && y <= b.Y1 }

// hides tells why a character is not visible, as far as the page's objects tell.
func (d *drawing) hides(c char, v view) Hidden {
	x, y := (c.box.X0+c.box.X1)/2, (c.box.Y0+c.box.Y1)/2
	if !(Box{0, 0, v.w, v.h}).holds(x, y) {
		return OffPage
	}
	t := d.texts[c.obj]
	if t == nil {
		return Visible
	}
	if t.mode == 3 || t.mode == 7 {
		return Unpainted
	}
	if !t.clip.holds(x, y) {
		return Clipped
	}
	return Visible
}
