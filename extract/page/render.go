package page

import (
	"context"
	"fmt"
	"image"
	"math"
	"slices"
)

// Limits of a rendered page: an A3 page at 600 dpi has 70 million pixels.
const (
	maxPixels = 80_000_000
	minDPI    = 10
	maxDPI    = 1200
)

// Render draws a page, 1 being the first, as a viewer shows it, on white. One point becomes dpi/72 pixels. A document that cannot
// be read or a page beyond its end is an *Error.
func Render(ctx context.Context, data []byte, number int, dpi float64) (image.Image, error) {
	if !(dpi >= minDPI && dpi <= maxDPI) {
		return nil, fmt.Errorf("could not render page %d: %g dpi is not between %d and %d", number, dpi, minDPI, maxDPI)
	}
	j := job{Task: taskRender, Name: "page to render", Number: number, DPI: dpi}
	if Sniff(data) != KindPicture {
		if err := sniffPDF(j.Name, data); err != nil {
			return nil, err
		}
	}
	a, err := ask(ctx, j, data)
	if err != nil {
		return nil, err
	}
	if len(a.Parts) != 1 || a.Parts[0].size() <= 0 || len(a.Raw) != 4*a.Parts[0].size() {
		return nil, fmt.Errorf("could not render page %d: it has no area", number)
	}
	w, h := a.Parts[0].W, a.Parts[0].H
	return &image.RGBA{Pix: a.Raw, Stride: 4 * w, Rect: image.Rect(0, 0, w, h)}, nil
}

// part is a rendered part of a page: its place on the whole page, in pixels, and for a task of ink what was found there.
type part struct {
	Left, Top, W, H int
	Scale           float64
	Rules           []Rule
	Bands           []Band
}

// size is the number of pixels.
func (p part) size() int { return p.W * p.H }

// renderPDF does the work of Render and inked in this process.
func renderPDF(ctx context.Context, j job, data []byte) (answer, error) {
	limited, cancel := context.WithTimeout(ctx, j.Opt.deadline())
	defer cancel()
	var a answer
	err := withGuest(limited, func(g *guest) error {
		doc, err := g.openPDF(j.Name, data)
		if err != nil {
			return err
		}
		if count := g.count("FPDF_GetPageCount", doc); j.Number < 1 || j.Number > count {
			return &Error{File: j.Name, Page: j.Number, Problem: fmt.Sprintf("the PDF has %d pages", count)}
		}
		handle, v, err := g.loadPage(j.Name, doc, j.Number)
		if err != nil {
			return err
		}
		if j.DPI == 0 {
			j.DPI = dpiFor(v.w, v.h)
		}
		if len(j.Bare) > 0 {
			g.readObjects(handle, v).leaveOut(g, j.Bare)
		}
		askew := len(j.Parts) == 0 && (j.Task == taskInk || !g.hasChars(handle))
		if len(j.Parts) == 0 {
			j.Parts = []Box{{0, 0, v.w, v.h}}
		}
		for _, box := range j.Parts {
			err := g.render(handle, v, j.DPI, box, func(shown *image.RGBA) { a.add(j, shown, askew) })
			if err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return answer{}, asError(ctx, j.Name, j.Number, j.Opt, err)
	}
	return a, nil
}

// hasChars tells whether a page has text; one without may lie askew.
func (g *guest) hasChars(page uint64) bool {
	text := g.ptr("FPDFText_LoadPage", page)
	if text == 0 {
		return false
	}
	defer g.call("FPDFText_ClosePage", text)
	return g.count("FPDFText_CountChars", text) > 0
}

// renderScan does the same for a page that came as a picture.
func renderScan(j job, data []byte) (answer, error) {
	shown, dpi, err := showScan(j.Name, data, j.Number, j.DPI, j.Opt)
	if err != nil {
		return answer{}, err
	}
	var a answer
	j.DPI = dpi
	a.add(j, shown, true)
	return a, nil
}

// add takes over what the job wants of a picture, which may lie askew.
func (a *answer) add(j job, shown *image.RGBA, askew bool) {
	p := part{Left: shown.Rect.Min.X, Top: shown.Rect.Min.Y, W: shown.Rect.Dx(), H: shown.Rect.Dy(), Scale: j.DPI / pointsPerInch}
	var c *canvas
	if askew || j.Task == taskInk {
		c = newCanvas(shown, j.DPI)
	}
	if askew {
		if angle := c.skew(); angle != 0 {
			shown = turned(shown, angle)
			c = newCanvas(shown, j.DPI)
		}
	}
	if j.Task == taskInk {
		p.Rules, p.Bands = c.rules, c.bands
		a.Raw = append(append(slices.Grow(a.Raw, 2*p.size()), c.ink...), c.mask...)
	} else {
		a.Raw = slices.Grow(a.Raw, 4*p.size())
		for y := range p.H {
			a.Raw = append(a.Raw, shown.Pix[y*shown.Stride:][:4*p.W]...)
		}
	}
	a.Parts = append(a.Parts, p)
}

// inked gives the ink of parts of a page, or of all of it where the job names none.
func inked(ctx context.Context, data []byte, j job) ([]*canvas, error) {
	j.Task, j.Name = taskInk, "page to recognise"
	a, err := ask(ctx, j, data)
	if err != nil {
		return nil, err
	}
	out := make([]*canvas, len(a.Parts))
	for i, p := range a.Parts {
		n := p.size()
		if n <= 0 || 2*n > len(a.Raw) {
			return nil, &Error{File: j.Name, Page: j.Number, Problem: "the rendered page is incomplete"}
		}
		out[i] = &canvas{left: p.Left, top: p.Top, w: p.W, h: p.H, scale: p.Scale, ink: a.Raw[:n:n], mask: a.Raw[n : 2*n : 2*n], rules: p.Rules, bands: p.Bands}
		a.Raw = a.Raw[2*n:]
	}
	return out, nil
}

// PDFium's bitmap format with blue first and an unused byte, and its flag to draw annotations, which are seen as well.
const (
	formatBGRx  = 3
	flagAnnots  = 1
	opaqueWhite = 0xFFFFFFFF
)

// render draws a part of a page; what lies outside costs little. The picture's rectangle is that of the part on the whole page; its
// pixels are the sandbox's memory, and gone after use. A part without area is passed over.
func (g *guest) render(page uint64, v view, dpi float64, part Box, use func(*image.RGBA)) error {
	if !(dpi >= minDPI && dpi <= maxDPI) {
		return fmt.Errorf("%g dpi is not between %d and %d", dpi, minDPI, maxDPI)
	}
	scale := dpi / pointsPerInch
	whole := Box{0, 0, math.Ceil(v.w * scale), math.Ceil(v.h * scale)}
	if whole.W()*whole.H() > maxPixels {
		return fmt.Errorf("the page has %.0f million pixels at %g dpi, the limit is %d", whole.W()*whole.H()/1e6, dpi, maxPixels/1_000_000)
	}
	part = Box{math.Floor(part.X0 * scale), math.Floor(part.Y0 * scale), math.Ceil(part.X1 * scale), math.Ceil(part.Y1 * scale)}.meet(whole)
	if part.empty() {
		return nil
	}
	left, top, w, h := int(part.X0), int(part.Y0), int(part.W()), int(part.H())
	bitmap := g.ptr("FPDFBitmap_CreateEx", uint64(w), uint64(h), formatBGRx, 0, 0)
	if bitmap == 0 {
		return errNoMemory
	}
	defer g.call("FPDFBitmap_Destroy", bitmap)
	g.call("FPDFBitmap_FillRect", bitmap, 0, 0, uint64(w), uint64(h), opaqueWhite)
	g.call("FPDF_RenderPageBitmap", bitmap, page, signed(-left), signed(-top), uint64(whole.W()), uint64(whole.H()), 0, flagAnnots)
	stride := g.count("FPDFBitmap_GetStride", bitmap)
	raw, ok := g.mem.Read(uint32(g.ptr("FPDFBitmap_GetBuffer", bitmap)), uint32(stride*h))
	if !ok || stride < 4*w {
		return errNoMemory
	}
	for i := 0; i+3 < len(raw); i += 4 {
		raw[i], raw[i+2], raw[i+3] = raw[i+2], raw[i], 0xFF
	}
	use(&image.RGBA{Pix: raw, Stride: stride, Rect: image.Rect(left, top, left+w, top+h)})
	return nil
}

const pointsPerInch = 72

// signed passes a C int.
func signed(n int) uint64 { return uint64(uint32(int32(n))) }
