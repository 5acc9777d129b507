package page

import (
	"context"
	"fmt"
	"os"
	"testing"
)

func TestDebugWhy(t *testing.T) {
	file := os.Getenv("DBG_WHY")
	if file == "" {
		t.Skip()
	}
	data, _ := os.ReadFile(file)
	withGuest(context.Background(), func(g *guest) error {
		doc, _ := g.openPDF(file, data)
		for n := 1; n <= 2; n++ {
			h, v, _ := g.loadPage(file, doc, n)
			d := g.readObjects(h, v)
			chars := g.readChars(h, v, d)
			for _, s := range g.doubts(d, v, chars) {
				str := ""
				for _, c := range chars[s.from:s.to] {
					str += string(c.r)
				}
				c := chars[s.from]
				tt := d.texts[c.obj]
				x, y := c.box.centre()
				fmt.Printf("p%d %q colour %06x order %d rough %v\n", n, str, c.colour, tt.order, tt.rough)
				for _, p := range d.paints {
					if p.box.holds(x, y) {
						fmt.Printf("     paint %d solid %v %06x %.0f\n", p.order, p.solid, p.colour, p.box)
					}
				}
			}
		}
		return nil
	})
}
