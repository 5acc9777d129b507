package page

import "context"

// recognised is a document's pages after recognition, and by what it was done.
type recognised struct {
	By    string // see ocr.identity
	Pages []Page
}

// openPages reads a PDF's text layer and what its pages show beyond it, or a picture's lettering. The latter takes seconds, so its
// result is kept: a second run neither renders nor recognises.
func openPages(ctx context.Context, name string, data []byte, opt Options) ([]Page, error) {
	key := keyOf(data, "pages", opt.maxPages())
	var kept recognised
	if opt.Cache && loadKept(key, &kept) {
		if o, _ := findOCR(); kept.By == o.identity() {
			return kept.Pages, nil
		}
	}
	pages, err := blank(ctx, name, data, opt)
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

// blank gives a document's pages before anything is recognised.
func blank(ctx context.Context, name string, data []byte, opt Options) ([]Page, error) {
	if Sniff(data) != KindPicture {
		return PDF(ctx, name, data, opt)
	}
	a, err := ask(ctx, job{Task: taskRead, Name: name, Opt: opt}, data)
	return a.Pages, err
}
