package extract

import (
	"strings"
	"testing"

	"pvtally/extract/page"
	"pvtally/schema"
)

// FuzzRecord takes any text, laid out as a page, all the way to a record: no panic, and what comes out is valid.
func FuzzRecord(f *testing.F) {
	f.Add("Electrical data STC\nPmax (W)  400  405  410\nVoc (V)  37,1  37,3  37,5\nIsc (A)  13.7 13.8 13.9\nVmp 31.0 31.2 31.4\nImp 12.90 12.98 13.06")
	f.Add("Dimensions  1722 x 1134 x 30 mm\nWeight  24.5 kg\n25 year product warranty, 30 year linear power warranty, 0.4 % a year")
	f.Add("Gain  5%  10%\nPmax  431  451\nPacking 36 pcs/pallet, 26 pallets, 936 pcs/40' HC\n(-0.28±0.03)%/°C")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 4000 {
			return
		}
		for _, s := range read([]page.Page{layOut(text)}).records() {
			out, err := schema.EncodeLine(s)
			if err != nil {
				t.Fatal(err)
			}
			if problems := schema.Validate(out); len(problems) > 0 {
				t.Errorf("%v", problems)
			}
		}
	})
}

// layOut sets a text in a fixed pitch: a page as plain as can be.
func layOut(text string) page.Page {
	p := page.Page{Number: 1, Width: 595, Height: 842}
	for row, line := range strings.Split(text, "\n") {
		x := 0.0
		for _, field := range strings.SplitAfter(line, " ") {
			if w := strings.TrimSpace(field); w != "" {
				p.Words = append(p.Words, wordAt(strings.ToValidUTF8(w, "\uFFFD"), 40+x, 50+float64(row)*12))
			}
			x += 4 * float64(len(field))
		}
	}
	return p
}

func wordAt(text string, x, baseline float64) page.Word {
	w := page.Word{Text: text, Baseline: baseline, Size: 8, By: page.ByText, Box: page.Box{X0: x, Y0: baseline - 6, Y1: baseline + 2}}
	for range len([]rune(text)) + 1 {
		w.Edges = append(w.Edges, x)
		x += 4
	}
	w.Box.X1 = w.Edges[len(w.Edges)-1]
	return w
}
