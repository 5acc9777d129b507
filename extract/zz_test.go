package extract

import (
	"context"
	"fmt"
	"os"
	"pvtally/extract/page"
	"testing"
)

func TestZ(t *testing.T) {
	for _, f := range []string{os.Getenv("PDF")} {
		data, _ := os.ReadFile(f)
		pages, err := page.PDF(context.Background(), f, data, page.Options{Cache: true})
		if err != nil {
			t.Fatal(err)
		}
		d := read(pages)
		for _, b := range d.blocks {
			fmt.Printf("block p%d cond=%q title=%q depth=%d cols=%d box=%.0f\n", b.page, b.cond, b.title, b.depth(), len(b.columns), b.box)
			for _, c := range b.columns {
				fmt.Printf("   x=%.0f cond=%q name=%q gain=%v ", c.x, c.cond, c.name, c.gain != nil)
				for _, k := range append(electricalOrder, "ff") {
					if v, ok := c.values[k]; ok {
						fmt.Printf(" %s=%s", k, v.term().Literal)
					}
					if x := c.doubt[k]; x != nil {
						fmt.Printf("?%d", len(x))
					}
				}
				fmt.Println()
			}
		}
		for i, k := range d.classes {
			fmt.Println(i, k.watts, k.name, len(k.gains), len(k.ratios))
		}
	}
}
