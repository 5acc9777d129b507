package page

import "context"

// recognised is a document's pages after recognition, and by what it was done.
type recognised struct {
	By    string // see ocr.identity
	Pages []Page
}

// openPDF reads a PDF's text layer and what its pages show beyond it. The latter takes seconds, so its result is kept: a second run
// neither renders nor recognises.
func openPDF(ctx context.Context, name string, data []byte, opt Options) ([]Page, error) {
	key := keyOf(data, "pages", opt.maxPages())
	var kept recognised
	if opt.Cache && loadKept(key, &kept) {
		if o, _ := findOCR(); kept.By == o.identity() {
			return kept.Pages, nil
		}
	}
	pages, err := PDF(ctx, name, data, opt)
	if err != nil {
		return nil, err
	}
	looked, err := readPictures(ctx, name, data, pages)
	if err != nil {
		return nil, err
	}
	for i := range pages {
		pages[i].Figures = nil // they have been looked at, and are large
	}
	if opt.Cache && looked {
		o, _ := findOCR()
		saveKept(key, recognised{o.identity(), pages})
	}
	return pages, nil
}
