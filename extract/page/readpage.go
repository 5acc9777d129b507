package page

// readPage gives one page, 1 being the first.
func (g *guest) readPage(name string, doc uint64, number int) (Page, error) {
	handle := g.ptr("FPDF_LoadPage", doc, uint64(number-1))
	if handle == 0 {
		return Page{}, &Error{File: name, Page: number, Problem: "the page is damaged", Remedy: "save the file anew from a viewer"}
	}
	defer g.call("FPDF_ClosePage", handle)
	view := g.view(handle)
	p := Page{Number: number, Width: view.w, Height: view.h}
	if p.Width <= 0 || p.Height <= 0 {
		return Page{}, &Error{File: name, Page: number, Problem: "the page has no area", Remedy: "save the file anew from a viewer"}
	}
	drawn := g.readObjects(handle, view)
	p.Rules, p.Bands = drawn.rules, drawn.bands
	p.Words = joinWords(g.readChars(handle, view, drawn))
	return p, nil
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
