package page

import (
	"context"
	"fmt"
	"image"
	"math"
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
	shown, _, err := show(ctx, data, number, dpi, nil)
	if err != nil {
		return nil, err
	}
	if len(shown) == 0 {
		return nil, fmt.Errorf("could not render page %d: it has no area", number)
	}
	whole := shown[0]
	whole.Rect = whole.Rect.Sub(whole.Rect.Min)
	return whole, nil
}

// show draws parts of a page, or all of it where none are named, and gives the resolution too; 0 leaves that to the page's size. The
// pictures' rectangles are those of the parts on the whole page.
func show(ctx context.Context, data []byte, number int, dpi float64, parts []Box) ([]*image.RGBA, float64, error) {
	const name = "page to render"
	if err := sniffPDF(name, data); err != nil {
		return nil, 0, err
	}
	a, err := ask(ctx, job{Task: taskRender, Name: name, Number: number, DPI: dpi, Parts: parts}, data)
	if err != nil {
		return nil, 0, err
	}
	shown := make([]*image.RGBA, len(a.Parts))
	for i, p := range a.Parts {
		size := 4 * p.W * p.H
		if p.W <= 0 || p.H <= 0 || size > len(a.Raw) {
			return nil, 0, &Error{File: name, Page: number, Problem: "the rendered page is incomplete"}
		}
		shown[i] = &image.RGBA{Pix: a.Raw[:size:size], Stride: 4 * p.W, Rect: image.Rect(p.Left, p.Top, p.Left+p.W, p.Top+p.H)}
		a.Raw = a.Raw[size:]
	}
	return shown, a.DPI, nil
}

// part is the place of a rendered part on the whole page, in pixels.
type part struct{ Left, Top, W, H int }

// renderPDF does the work of show in this process.
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
		if a.DPI = j.DPI; a.DPI == 0 {
			a.DPI = dpiFor(v.w, v.h)
		}
		if len(j.Parts) == 0 {
			j.Parts = []Box{{0, 0, v.w, v.h}}
		}
		for _, box := range j.Parts {
			pic, err := g.render(handle, v, a.DPI, box)
			if err != nil {
				return err
			}
			if pic.w > 0 && pic.h > 0 {
				a.Parts = append(a.Parts, part{pic.left, pic.top, pic.w, pic.h})
				if len(j.Parts) == 1 {
					a.Raw = pic.rgba
				} else {
					a.Raw = append(a.Raw, pic.rgba...)
				}
			}
		}
		return nil
	})
	if err != nil {
		return answer{}, asError(ctx, j.Name, j.Number, j.Opt, err)
	}
	return a, nil
}

// picture is a rendered part of a page: four bytes a pixel, red first, rows without gaps.
type picture struct {
	left, top int // of the part on the whole rendered page
	w, h      int
	scale     float64 // pixels for one point
	rgba      []byte
}

// PDFium's bitmap format with blue first and an unused byte, and its flag to draw annotations, which are seen as well.
const (
	formatBGRx  = 3
	flagAnnots  = 1
	opaqueWhite = 0xFFFFFFFF
)

// render draws the part of a page; what lies outside costs little.
func (g *guest) render(page uint64, v view, dpi float64, part Box) (picture, error) {
	if !(dpi >= minDPI && dpi <= maxDPI) {
		return picture{}, fmt.Errorf("%g dpi is not between %d and %d", dpi, minDPI, maxDPI)
	}
	p := picture{scale: dpi / pointsPerInch}
	whole := Box{0, 0, math.Ceil(v.w * p.scale), math.Ceil(v.h * p.scale)}
	if whole.W()*whole.H() > maxPixels {
		return picture{}, fmt.Errorf("the page has %.0f million pixels at %g dpi, the limit is %d", whole.W()*whole.H()/1e6, dpi, maxPixels/1_000_000)
	}
	part = Box{math.Floor(part.X0 * p.scale), math.Floor(part.Y0 * p.scale), math.Ceil(part.X1 * p.scale), math.Ceil(part.Y1 * p.scale)}.meet(whole)
	if part.empty() {
		return p, nil
	}
	p.left, p.top, p.w, p.h = int(part.X0), int(part.Y0), int(part.W()), int(part.H())
	bitmap := g.ptr("FPDFBitmap_CreateEx", uint64(p.w), uint64(p.h), formatBGRx, 0, 0)
	if bitmap == 0 {
		return picture{}, errNoMemory
	}
	defer g.call("FPDFBitmap_Destroy", bitmap)
	g.call("FPDFBitmap_FillRect", bitmap, 0, 0, uint64(p.w), uint64(p.h), opaqueWhite)
	g.call("FPDF_RenderPageBitmap", bitmap, page, signed(-p.left), signed(-p.top), uint64(whole.W()), uint64(whole.H()), 0, flagAnnots)
	stride := g.count("FPDFBitmap_GetStride", bitmap)
	raw, ok := g.mem.Read(uint32(g.ptr("FPDFBitmap_GetBuffer", bitmap)), uint32(stride*p.h))
	if !ok {
		return picture{}, errNoMemory
	}
	p.rgba = make([]byte, 4*p.w*p.h)
	for y := range p.h {
		from, to := raw[y*stride:], p.rgba[4*y*p.w:]
		for x := 0; x < 4*p.w; x += 4 {
			to[x], to[x+1], to[x+2], to[x+3] = from[x+2], from[x+1], from[x], 0xFF
		}
	}
	return p, nil
}

const pointsPerInch = 72

// signed passes a C int.
func signed(n int) uint64 { return uint64(uint32(int32(n))) }
