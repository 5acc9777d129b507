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
	order int  // of painting
	clip  Box  // in shown coordinates; what lies outside is not painted
	rough bool // the clip's outline is no rectangle: what lies inside the box may be outside
	layer bool // belongs to optional content, which may be switched off
	mode  int  // text render mode
}

// paint is an area that an object other than text covers.
type paint struct {
	order  int
	box    Box
	colour uint32
	solid  bool // an opaque rectangle of one colour; otherwise who knows what of the box is covered

	path uint64 // PDFium's handle where the area is a path's, with the map to shown coordinates
	m    matrix
}

// drawing is what a page holds besides characters.
type drawing struct {
	rules  []Rule
	bands  []Band
	texts  map[uint64]*textObject // by PDFium's handle
	paints []paint
	seen   int // objects so far

	figures []figure
	images  []Picture
	handles []uint64 // of the images, PDFium's
}

// frame is where an object stands: the map from its coordinates to the page's user space and what its forms clip away.
type frame struct {
	m     matrix
	clip  Box
	rough bool
	layer bool
	depth int
}

// readObjects walks the page's objects in painting order.
func (g *guest) readObjects(page uint64, v view) *drawing {
	d := &drawing{texts: map[uint64]*textObject{}}
	f := frame{m: identity, clip: Box{0, 0, v.w, v.h}}
	n := g.count("FPDFPage_CountObjects", page)
	for i := 0; i < n && d.seen < maxObjects; i++ {
		g.readObject(d, g.ptr("FPDFPage_GetObject", page, uint64(i)), v, f)
	}
	return d
}

func (g *guest) readObject(d *drawing, obj uint64, v view, f frame) {
	d.seen++
	switch kind := g.call("FPDFPageObj_GetType", obj); kind {
	case objText:
		f = g.within(obj, v, f)
		mode := int(int32(g.call("FPDFTextObj_GetTextRenderMode", obj)))
		d.texts[obj] = &textObject{order: d.seen, clip: f.clip, rough: f.rough, layer: f.layer, mode: mode}
	case objPath:
		g.readPath(d, obj, v, f)
	case objImage, objShade:
		box := g.bounds(obj, v, f.m).meet(f.clip)
		d.cover(paint{order: d.seen, box: box})
		if kind == objImage && !box.empty() && len(d.images) < maxFigures {
			d.images = append(d.images, Picture{Box: box, Photo: g.isPhoto(obj)})
			d.handles = append(d.handles, obj)
		}
	case objForm:
		inner := g.within(obj, v, f)
		inner.depth++
		if inner.depth > maxDepth || !g.ok("FPDFPageObj_GetMatrix", obj, g.at(0)) {
			return
		}
		inner.m = g.readMatrix(0).then(f.m)
		n := g.count("FPDFFormObj_CountObjects", obj)
		for i := 0; i < n && d.seen < maxObjects; i++ {
			g.readObject(d, g.ptr("FPDFFormObj_GetObject", obj, uint64(i)), v, inner)
		}
	}
}

// within narrows a frame by an object's own clip path and layer.
func (g *guest) within(obj uint64, v view, f frame) frame {
	clip, rough := g.clip(obj, v, f.m)
	f.clip, f.rough, f.layer = f.clip.meet(clip), f.rough || rough, f.layer || g.hiddenLayers && g.inLayer(obj)
	return f
}

// inLayer tells whether an object is marked as optional content (/OC, ISO 32000-1, 8.11.3.2).
func (g *guest) inLayer(obj uint64) bool {
	n := g.count("FPDFPageObj_CountMarks", obj)
	for i := range min(n, maxMarks) {
		mark := g.ptr("FPDFPageObj_GetMark", obj, uint64(i))
		// UTF-16 with its terminator; the length in bytes is left at 0
		if g.ok("FPDFPageObjMark_GetName", mark, g.at(16), 64, g.at(0)) && g.readU32(0) == 6 && string(g.bytes(g.at(16), 4)) == "O\x00C\x00" {
			return true
		}
	}
	return false
}

const (
	maxMarks  = 16
	minPaint  = 3.0 // points; smaller areas hide no word
	maxPaints = 20_000
)

// cover notes an area.
func (d *drawing) cover(p paint) {
	if p.box.W() >= minPaint && p.box.H() >= minPaint && len(d.paints) < maxPaints {
		d.paints = append(d.paints, p)
	}
}

// bounds is an object's box as shown.
func (g *guest) bounds(obj uint64, v view, m matrix) Box {
	if !g.ok("FPDFPageObj_GetBounds", obj, g.at(0), g.at(4), g.at(8), g.at(12)) {
		return Box{}
	}
	l, b, r, t := g.readF32(0), g.readF32(4), g.readF32(8), g.readF32(12)
	box := nowhere
	for _, c := range [4]corner{{l, b}, {l, t}, {r, b}, {r, t}} {
		x, y := v.point(m.point(c.x, c.y))
		box = box.Union(Box{x, y, x, y})
	}
	return box
}

var (
	everywhere = Box{-1e9, -1e9, 1e9, 1e9}
	nowhere    = Box{1e9, 1e9, -1e9, -1e9}
)

// clip is the box, as shown, outside which an object is not painted: the intersection of its clip paths' bounding boxes. It is rough
// where a path is no upright rectangle.
func (g *guest) clip(obj uint64, v view, m matrix) (box Box, rough bool) {
	box = everywhere
	path := g.ptr("FPDFPageObj_GetClipPath", obj)
	if path == 0 {
		return box, false
	}
	for i := range g.count("FPDFClipPath_CountPaths", path) {
		n := min(g.count("FPDFClipPath_CountPathSegments", path, uint64(i)), maxSegments)
		if n == 0 {
			continue
		}
		one, outline := nowhere, make(polygon, 0, n)
		for j := range n {
			s := g.segmentByCall(g.ptr("FPDFClipPath_GetPathSegment", path, uint64(i), uint64(j)))
			x, y := v.point(m.point(s.x, s.y))
			one = one.Union(Box{x, y, x, y})
			outline = append(outline, corner{x, y})
			rough = rough || s.kind == segBezier
		}
		if _, ok := outline.rectangle(); !ok {
			rough = true
		}
		box = box.meet(one)
	}
	return box, rough
}

// meet is what two boxes have in common; it is inside out where they have nothing.
func (b Box) meet(o Box) Box {
	return Box{max(b.X0, o.X0), max(b.Y0, o.Y0), min(b.X1, o.X1), min(b.Y1, o.Y1)}
}

func (b Box) empty() bool { return b.X1 <= b.X0 || b.Y1 <= b.Y0 }

func (b Box) holds(x, y float64) bool { return x >= b.X0 && x <= b.X1 && y >= b.Y0 && y <= b.Y1 }
