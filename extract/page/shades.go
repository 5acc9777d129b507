package page

import "slices"

// What tells the images of a soft shade: so many, painted one after another, each lie over most of the one before. A shade that a
// program has taken apart is a hundred images, each turned a little more; to draw them costs ten seconds, and lettering they have none.
const (
	shadeRun   = 12
	shadeShare = 0.5 // of the larger image's box that the two have in common
)

// shades marks the images of a page that are parts of a shade.
func (p *Page) shades() []bool {
	out := make([]bool, len(p.Images))
	start := 0
	for i := 1; i <= len(p.Images); i++ {
		if i < len(p.Images) && p.Images[i-1].Box.mostly(p.Images[i].Box) {
			continue
		}
		for k := start; k < i && i-start >= shadeRun; k++ {
			out[k] = true
		}
		start = i
	}
	return out
}

// mostly tells whether two boxes have most of the larger one in common.
func (b Box) mostly(o Box) bool {
	common := b.meet(o)
	return !common.empty() && common.W()*common.H() >= shadeShare*max(b.W()*b.H(), o.W()*o.H())
}

// shadeBoxes are the boxes of these images.
func (p *Page) shadeBoxes() []Box {
	var out []Box
	for i, is := range p.shades() {
		if is {
			out = append(out, p.Images[i].Box)
		}
	}
	return out
}

// leaveOut switches off the images that have one of the boxes.
func (d *drawing) leaveOut(g *guest, boxes []Box) {
	for i, image := range d.images {
		if slices.Contains(boxes, image.Box) {
			g.call("FPDFPageObj_SetIsActive", d.handles[i], 0)
		}
	}
}
