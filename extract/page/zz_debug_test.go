package page

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
)

func TestDebugChars(t *testing.T) {
	file := os.Getenv("DBG_FILE")
	if file == "" {
		t.Skip()
	}
	number, _ := strconv.Atoi(os.Getenv("DBG_PAGE"))
	data, _ := os.ReadFile(file)
	err := withGuest(context.Background(), func(g *guest) error {
		doc, err := g.openPDF(file, data)
		if err != nil {
			return err
		}
		h := g.ptr("FPDF_LoadPage", doc, uint64(number-1))
		v := g.view(h)
		d := g.readObjects(h, v)
		chars := g.readChars(h, v, d)
		var sb strings.Builder
		var pos []int
		for i, c := range chars {
			for range string(c.r) {
				pos = append(pos, i)
			}
			sb.WriteRune(c.r)
		}
		rs := []rune(sb.String())
		find := []rune(os.Getenv("DBG_FIND"))
		for i := range rs {
			if i+len(find) <= len(rs) && string(rs[i:i+len(find)]) == string(find) {
				for j := max(0, i-4); j < min(len(chars), i+len(find)+12); j++ {
					c := chars[j]
					gap := 0.0
					if j > 0 {
						gap = (c.along() - chars[j-1].end()) / c.size
					}
					fmt.Printf("%q obj %d x %.2f..%.2f y %.2f size %.2f gap %.3f em w %.3f rot %d %s\n", c.r, c.obj, c.box.X0, c.box.X1, c.y, c.size, gap, c.box.W()/c.size, c.rotation, c.hidden)
				}
				fmt.Println()
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
