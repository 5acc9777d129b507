package page

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"io"
	"math"

	"golang.org/x/image/tiff"
)

// Scans and photographs are pages that came as picture files: PNG, JPEG, and TIFF with any number of pages. They are decoded in the
// helper process, like everything untrusted.

// Limits of a picture file, looked at before any pixel is decoded.
const (
	maxScanSide  = 30_000
	maxScanBytes = 240 << 20 // of its decoded pixels
)

// A picture's page is taken to be as large as the file says if that is a size of paper, else to be A4.
const (
	paperLeast  = 3.0   // inches
	paperMost   = 18.0  // inches; A3 is 16.5
	paperLonger = 11.69 // inches: A4, ISO 216
	scannedFrom = 100   // dpi; less is what programs write that know of no paper
)

// scan is one page of a picture file.
type scan struct {
	described
	at            uint32 // of a TIFF's directory
	width, height int    // pixels as stored
}

// dpiOf is the resolution at which the scan's longer side gives a size of paper.
func (s scan) dpiOf() float64 {
	long := float64(max(s.width, s.height))
	if s.dpi >= scannedFrom && long/s.dpi >= paperLeast && long/s.dpi <= paperMost {
		return s.dpi
	}
	return long / paperLonger
}

// page gives the empty page, upright.
func (s scan) page(number int) Page {
	w, h := float64(s.width)*pointsPerInch/s.dpiOf(), float64(s.height)*pointsPerInch/s.dpiOf()
	if s.orientation > 4 {
		w, h = h, w
	}
	return Page{Number: number, Width: w, Height: h}
}

// scansOf looks at a picture file's pages without decoding them.
func scansOf(name string, data []byte, opt Options) ([]scan, error) {
	if len(data) > maxBytes {
		return nil, tooLarge(name, data)
	}
	var scans []scan
	switch {
	case bytes.HasPrefix(data, []byte(pngStart)), bytes.HasPrefix(data, []byte(jpegStart)):
		scans = []scan{{described: describe(data, 0)}}
	case bytes.HasPrefix(data, []byte("II*\x00")), bytes.HasPrefix(data, []byte("MM\x00*")):
		for _, at := range tiffPages(data, opt.maxPages()) {
			scans = append(scans, scan{described: describe(data, at), at: at})
		}
	default:
		return nil, &Error{File: name, Problem: "pictures of this kind are not read", Remedy: "save it as PNG, JPEG or TIFF"}
	}
	if len(scans) == 0 {
		return nil, &Error{File: name, Problem: "the picture holds no pages", Remedy: "fetch the file again, it may be cut short"}
	}
	if len(scans) > opt.maxPages() {
		return nil, &Error{File: name, Problem: fmt.Sprintf("more pages than the limit of %d", opt.maxPages()), Remedy: "split the file and give the datasheet's pages alone"}
	}
	for i := range scans {
		if err := scans[i].measure(name, i+1, data); err != nil {
			return nil, err
		}
	}
	return scans, nil
}

// measure finds a scan's size and refuses one that would take too much memory.
func (s *scan) measure(name string, number int, data []byte) error {
	config, err := s.codec(data).config()
	if err != nil {
		return &Error{File: name, Page: number, Problem: "the picture is damaged, or of a kind that is not read", Remedy: "save it anew as PNG", Cause: err}
	}
	s.width, s.height = config.Width, config.Height
	if s.width <= 0 || s.height <= 0 {
		return &Error{File: name, Page: number, Problem: "the picture has no area", Remedy: "scan the page anew"}
	}
	if s.width > maxScanSide || s.height > maxScanSide || s.width*s.height > maxScanBytes/pixelBytes(config.ColorModel, s.progressive) {
		return &Error{File: name, Page: number, Problem: fmt.Sprintf("the picture of %d × %d pixels is larger than can be read", s.width, s.height), Remedy: "scan the page at 300 dpi, or scale the picture down"}
	}
	return nil
}

// pixelBytes is the most memory that decoding takes for a pixel.
func pixelBytes(m color.Model, progressive bool) int {
	switch {
	case progressive:
		return 15 // a JPEG's coefficients are kept until its last pass
	case m == color.GrayModel:
		return 1
	case m == color.RGBA64Model, m == color.NRGBA64Model:
		return 8
	}
	return 4
}

// codec decodes one kind of picture.
type codec struct {
	from   func() io.Reader
	header func(io.Reader) (image.Config, error)
	pixels func(io.Reader) (image.Image, error)
}

func (s *scan) codec(data []byte) codec {
	from := func() io.Reader { return bytes.NewReader(data) }
	switch {
	case bytes.HasPrefix(data, []byte(pngStart)):
		return codec{from, png.DecodeConfig, png.Decode}
	case bytes.HasPrefix(data, []byte(jpegStart)):
		return codec{from, jpeg.DecodeConfig, jpeg.Decode}
	}
	return codec{func() io.Reader { return newTIFFPage(data, s.at) }, tiff.DecodeConfig, tiff.Decode}
}

func (c codec) config() (image.Config, error) { return c.header(c.from()) }

// readScans gives a picture file's pages, without words as yet.
func readScans(name string, data []byte, opt Options) ([]Page, error) {
	scans, err := scansOf(name, data, opt)
	if err != nil {
		return nil, err
	}
	var pages []Page
	for i, s := range scans {
		pages = append(pages, s.page(i+1))
	}
	return pages, nil
}

// showScan gives a page of a picture file, upright, and its resolution; 0 leaves that to the page's size.
func showScan(name string, data []byte, number int, dpi float64, opt Options) (*image.RGBA, float64, error) {
	scans, err := scansOf(name, data, opt)
	if err != nil {
		return nil, 0, err
	}
	if number < 1 || number > len(scans) {
		return nil, 0, &Error{File: name, Page: number, Problem: fmt.Sprintf("the picture has %d pages", len(scans))}
	}
	s := scans[number-1]
	p := s.page(number)
	if dpi == 0 {
		dpi = dpiFor(p.Width, p.Height)
	}
	c := s.codec(data)
	full, err := c.pixels(c.from())
	if err != nil {
		return nil, 0, &Error{File: name, Page: number, Problem: "the picture is damaged", Remedy: "save it anew as PNG", Cause: err}
	}
	scale := dpi / s.dpiOf()
	small := shrunk(full, max(1, int(1/scale+0.01)))
	w, h := int(math.Ceil(float64(s.width)*scale)), int(math.Ceil(float64(s.height)*scale))
	return upright(resized(small, w, h), s.orientation), dpi, nil
}
