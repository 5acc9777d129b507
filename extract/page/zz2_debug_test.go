package page

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestDebugDoubts(t *testing.T) {
	pattern := os.Getenv("DBG_FILES")
	if pattern == "" {
		t.Skip()
	}
	files, _ := filepath.Glob(pattern)
	for _, file := range files {
		data, _ := os.ReadFile(file)
		err := withGuest(context.Background(), func(g *guest) error {
			doc, err := g.openPDF(file, data)
			if err != nil {
				return err
			}
			g.hiddenLayers = hiddenLayers(data)
			fmt.Println("layers off", g.hiddenLayers)
			for n := 1; n <= g.count("FPDF_GetPageCount", doc); n++ {
				h, v, err := g.loadPage(file, doc, n)
				if err != nil {
					return err
				}
				d := g.readObjects(h, v)
				chars := g.readChars(h, v, d)
				doubts := g.doubts(d, v, chars)
				t0 := time.Now()
				pic, err := g.render(h, v, inkDPI, Box{0, 0, v.w, v.h})
				if err != nil {
					return err
				}
				el := time.Since(t0)
				counts := map[Hidden]int{}
				ex := map[Hidden][]string{}
				for _, s := range doubts {
					verdict := pic.inkOf(chars[s.from:s.to])
					counts[verdict]++
					if len(ex[verdict]) < 12 {
						str := ""
						for _, c := range chars[s.from:s.to] {
							str += string(c.r)
						}
						tt := d.texts[chars[s.from].obj]
						why := ""
						if tt.rough {
							why += "R"
						}
						if tt.layer {
							why += "L"
						}
						ex[verdict] = append(ex[verdict], str+":"+why+fmt.Sprintf("@%.0f,%.0f", chars[s.from].x, chars[s.from].y))
					}
				}
				hid := map[Hidden]int{}
				for _, c := range chars {
					hid[c.hidden]++
				}
				fmt.Println(filepath.Base(file), n, "chars", hid, "paints", len(d.paints), "doubts", counts, "render", el)
				for k, e := range ex {
					fmt.Printf("    %q %q\n", k, e)
				}
			}
			return nil
		})
		if err != nil {
			t.Error(file, err)
		}
	}
}
