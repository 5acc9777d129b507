package page

import (
	"image"
	"slices"
)

// blob is a connected piece of ink: a letter, a part of one, or several that touch.
type blob struct {
	box  image.Rectangle
	area int // pixels
	runs []run3
	text bool // the page's text explains it
}

// run3 is a horizontal run of pixels: row, first, one after the last.
type run3 struct{ y, x0, x1 int32 }

// maxRuns bounds the runs of one picture; a page full of lettering has half a million.
const maxRuns = 6_000_000

// blobsOf gathers the pixels of a kind that touch, corners included, in the order of their first pixel.
func blobsOf(mask []uint8, w, h int, kind uint8) []blob {
	var runs []run3
	var parent []int32
	above, start := 0, 0 // the row above's runs are runs[above:start]
	for y := range h {
		row := mask[y*w : (y+1)*w]
		k := above
		first := len(runs)
		for x := 0; x < w; x++ {
			if row[x] != kind {
				continue
			}
			x0 := x
			for x < w && row[x] == kind {
				x++
			}
			if len(runs) >= maxRuns {
				break
			}
			n := int32(len(runs))
			runs = append(runs, run3{int32(y), int32(x0), int32(x)})
			parent = append(parent, n)
			for k < start && int(runs[k].x1) < x0 {
				k++
			}
			for j := k; j < start && int(runs[j].x0) <= x; j++ {
				join(parent, n, int32(j))
			}
		}
		above, start = first, len(runs)
	}
	return gather(runs, parent)
}

// gather makes blobs of runs by their set.
func gather(runs []run3, parent []int32) []blob {
	at := make([]int32, len(runs)) // blob of a root, plus 1
	var out []blob
	var sizes []int
	for i := range runs {
		r := root(parent, int32(i))
		if at[r] == 0 {
			out = append(out, blob{})
			sizes = append(sizes, 0)
			at[r] = int32(len(out))
		}
		sizes[at[r]-1]++
	}
	store := make([]run3, 0, len(runs))
	for i := range out {
		out[i].runs = store[len(store) : len(store) : len(store)+sizes[i]]
		store = store[:len(store)+sizes[i]]
	}
	for i, r := range runs {
		b := &out[at[root(parent, int32(i))]-1]
		b.runs = append(b.runs, r)
		b.area += int(r.x1 - r.x0)
		b.box = b.box.Union(image.Rect(int(r.x0), int(r.y), int(r.x1), int(r.y)+1))
	}
	return slices.Clip(out)
}
