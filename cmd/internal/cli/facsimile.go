package cli

import (
	"bytes"
	"context"
	"image/jpeg"
	"slices"

	"pvtally/cmd/internal/report"
	"pvtally/extract/page"
)

// A page whose words were read off a picture is shown as that picture: sharp enough to compare digits, and some 200 kB.
const (
	pictureDPI     = 110
	pictureQuality = 60
)

// facsimile is what a report draws of pages: what is visible on them, without what only the reader needs; with pictures where the file's
// data are given.
func facsimile(ctx context.Context, data []byte, pages []page.Page) (list []report.Page) {
	for _, p := range pages {
		out := report.Page{Number: p.Number, Width: p.Width, Height: p.Height}
		for _, w := range p.Words {
			if w.Hidden == page.Visible {
				out.Words = append(out.Words, report.Word{Text: w.Text, X0: w.Box.X0, Y0: w.Box.Y0, X1: w.Box.X1, Y1: w.Box.Y1,
					Baseline: w.Baseline, Size: w.Size, Rotation: w.Rotation, Bold: w.Bold})
			}
		}
		for _, r := range p.Rules {
			out.Lines = append(out.Lines, report.Line{X0: r.Box.X0, Y0: r.Box.Y0, X1: r.Box.X1, Y1: r.Box.Y1, Width: r.Width})
		}
		for _, b := range p.Bands {
			out.Bands = append(out.Bands, report.Band{X0: b.Box.X0, Y0: b.Box.Y0, X1: b.Box.X1, Y1: b.Box.Y1, Dark: dark(b.Colour)})
		}
		if slices.ContainsFunc(p.Words, func(w page.Word) bool { return w.By == page.ByPicture }) {
			out.Picture = picture(ctx, data, p.Number)
		}
		list = append(list, out)
	}
	return list
}

// picture renders a page as JPEG; nil where that cannot be done: the words are then drawn instead.
func picture(ctx context.Context, data []byte, number int) []byte {
	img, err := page.Render(ctx, data, number, pictureDPI)
	if err != nil {
		return nil
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: pictureQuality}); err != nil {
		return nil
	}
	return b.Bytes()
}

// dark is how dark a colour 0xRRGGBB is, from 0 for white to 1 for black (Rec. 601 luma).
func dark(colour uint32) float64 {
	r, g, b := float64(colour>>16&0xff), float64(colour>>8&0xff), float64(colour&0xff)
	return 1 - (0.299*r+0.587*g+0.114*b)/255
}
