package page

// figure is a filled outline before it is known whether it may be a letter.
type figure struct {
	box      Box
	segments int    // of its path
	path     uint64 // PDFium's handle
	m        matrix // to user space
	evenOdd  bool
}

// Bounds of outlines; a page of outlined lettering has five thousand, of thirty points each.
const (
	maxFigures      = 20_000
	maxFigurePoints = 1_500_000
)

// figure notes a filled outline that may be a letter.
func (d *drawing) figure(f figure) {
	if !f.box.empty() && f.box.H() <= letterMost && len(d.figures) < maxFigures {
		d.figures = append(d.figures, f)
	}
}

// outlines gives the contours of figures.
func (g *guest) outlines(figures []figure, v view) []Figure {
	points := 0
	var out []Figure
	for _, f := range figures {
		shown := Figure{Box: f.box, EvenOdd: f.evenOdd}
		for _, p := range g.outline(paint{path: f.path, m: f.m}, v) {
			if len(p) < 3 {
				continue
			}
			contour := make([]float32, 0, 2*len(p))
			for _, c := range p {
				contour = append(contour, float32(c.x), float32(c.y))
			}
			shown.Contours = append(shown.Contours, contour)
			points += len(p)
		}
		if points > maxFigurePoints {
			break
		}
		out = append(out, shown)
	}
	return out
}

// isPhoto tells whether an image is stored as photographs are: by a compression that blurs (ISO 32000-1, table 6).
func (g *guest) isPhoto(obj uint64) bool {
	n := g.call("FPDFImageObj_GetImageFilter", obj, 0, g.at(0), 64)
	if n < 2 || n > 64 {
		return false
	}
	switch string(g.bytes(g.at(0), int(n)-1)) {
	case "DCTDecode", "JPXDecode":
		return true
	}
	return false
}
