package page

// readPage gives one page, 1 being the first.
func (g *guest) readPage(name string, doc uint64, number int) (Page, error) {
	handle, v, err := g.loadPage(name, doc, number)
	if err != nil {
		return Page{}, err
	}
	defer g.call("FPDF_ClosePage", handle)
	drawn := g.readObjects(handle, v)
	chars := g.readChars(handle, v, drawn)
	looked, err := g.judge(handle, v, drawn, chars)
	if err != nil {
		return Page{}, err
	}
	p := Page{Number: number, Width: v.w, Height: v.h, Words: joinWords(chars), Rules: drawn.rules, Bands: drawn.bands, Digits: digitsOf(chars), Looked: looked, Images: drawn.images}
	if p.hasText() {
		p.Figures = g.outlines(p.lettered(drawn.figures), v)
	}
	return p, nil
}

// loadPage gives PDFium's handle of a page and the page's view.
func (g *guest) loadPage(name string, doc uint64, number int) (uint64, view, error) {
	handle := g.ptr("FPDF_LoadPage", doc, uint64(number-1))
	if handle == 0 {
		return 0, view{}, &Error{File: name, Page: number, Problem: "the page is damaged", Remedy: "save the file anew from a viewer"}
	}
	v := g.view(handle)
	if !(v.w > 0 && v.h > 0) {
		return 0, view{}, &Error{File: name, Page: number, Problem: "the page has no area", Remedy: "save the file anew from a viewer"}
	}
	return handle, v, nil
}

// view maps PDF user space (origin at the bottom left, before rotation) to the page as shown.
type view struct {
	l, b, r, t float64 // the crop box in user space
	turn       int     // clockwise quarter turns
	w, h       float64 // of the page as shown
}

func (g *guest) view(handle uint64) view {
	g.call("FPDF_GetPageBoundingBox", handle, g.at(0))
	v := view{l: g.readF32(0), t: g.readF32(4), r: g.readF32(8), b: g.readF32(12)}
	v.turn = int(g.call("FPDFPage_GetRotation", handle)) & 3
	v.w, v.h = v.r-v.l, v.t-v.b
	if v.turn%2 == 1 {
		v.w, v.h = v.h, v.w
	}
	return v
}

// point maps a point of user space.
func (v view) point(x, y float64) (float64, float64) {
	switch v.turn {
	case 1:
		return y - v.b, x - v.l
	case 2:
		return v.r - x, y - v.b
	case 3:
		return v.t - y, v.r - x
	}
	return x - v.l, v.t - y
}

// box maps an upright rectangle of user space given by two opposite corners.
func (v view) box(x0, y0, x1, y1 float64) Box {
	ax, ay := v.point(x0, y0)
	bx, by := v.point(x1, y1)
	return Box{min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)}
}
