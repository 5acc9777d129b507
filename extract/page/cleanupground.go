package page

import (
	"image"
	"math"
)

// ground is the colour behind the lettering, at a coarser grid than the picture's. It is found as the zones of one colour (or a soft
// shade) that are too large and too solid for letters; around these it is carried on under whatever stands there.
type ground struct {
	w, h  int
	step  int      // picture pixels for one of the grid
	rgb   []uint32 // the picture's colours, then the ground's: noGround where none is near
	bands []Band
}

const noGround = 1 << 31

const (
	groundDPI    = 150
	groundStep   = 12   // of 255: the most that neighbouring pixels of one zone differ
	groundReach  = 30.0 // points: farther from any ground stands no lettering, but the middle of a photograph
	groundThick  = 6.0  // points: side of a square that a zone must hold
	groundArea   = 2500 // square points, from which on a zone is ground whatever its shape
	groundFill   = 0.7  // share of its box that a smaller zone, a band, must fill
	groundWidth  = 18.0 // points
	paperThick   = 2.5  // points, for the parts of the paper that rules and letters fence in
	paperLike    = 16   // of 255: difference of colour from the paper's
	minBandShade = 10   // of 255: the least difference from the paper of a band worth telling
)

// zone is a connected area of one colour.
type zone struct {
	area           int32
	x0, y0, x1, y1 int32
	thick          int32
	first          int32
	isGround       bool
}

func findGround(p *image.RGBA, scale float64) *ground {
	step := max(1, int(math.Round(scale*pointsPerInch/groundDPI)))
	g := &ground{w: max(1, p.Rect.Dx()/step), h: max(1, p.Rect.Dy()/step), step: step}
	g.rgb = make([]uint32, g.w*g.h)
	for y := range g.h {
		row := p.Pix[y*step*p.Stride:]
		for x := range g.w {
			i := 4 * x * step
			g.rgb[y*g.w+x] = uint32(row[i])<<16 | uint32(row[i+1])<<8 | uint32(row[i+2])
		}
	}
	label := g.zones()
	zones := g.measure(label)
	g.choose(zones, scale/float64(step))
	g.spread(label, zones, int(groundReach*scale)/step)
	return g
}

// zones gives every pixel the number of its zone, which is that of the zone's first pixel.
func (g *ground) zones() []int32 {
	parent := make([]int32, len(g.rgb))
	for y := range g.h {
		for x := range g.w {
			i := int32(y*g.w + x)
			parent[i] = i
			if x > 0 && sameShade(g.rgb[i], g.rgb[i-1], groundStep) {
				join(parent, i, i-1)
			}
			if y > 0 && sameShade(g.rgb[i], g.rgb[i-int32(g.w)], groundStep) {
				join(parent, i, i-int32(g.w))
			}
		}
	}
	for i := range parent {
		parent[i] = root(parent, int32(i))
	}
	return parent
}

// root finds a set's number and shortens the way to it.
func root(parent []int32, i int32) int32 {
	for parent[i] != i {
		parent[i] = parent[parent[i]]
		i = parent[i]
	}
	return i
}

// join makes two sets one, under the smaller number.
func join(parent []int32, a, b int32) {
	if a, b = root(parent, a), root(parent, b); a < b {
		parent[b] = a
	} else {
		parent[a] = b
	}
}

// sameShade tells whether no part of two colours differs by more than most.
func sameShade(a, b uint32, most int) bool { return a == b || apart(a, b) <= most }

// apart is the greatest difference of the parts of two colours, 0xRRGGBB.
func apart(a, b uint32) int {
	worst := 0
	for shift := 0; shift < 24; shift += 8 {
		d := int(a>>shift&0xFF) - int(b>>shift&0xFF)
		worst = max(worst, d, -d)
	}
	return worst
}

// measure gives each zone's size by its number, and the largest square it holds.
func (g *ground) measure(label []int32) map[int32]*zone {
	area := make([]int32, len(label))
	for _, l := range label {
		area[l]++
	}
	zones := map[int32]*zone{}
	const worth = 40 // pixels; smaller zones are never ground
	square := make([]int32, g.w)
	for y := range g.h {
		diagonal := int32(0)
		for x := range g.w {
			i := y*g.w + x
			l := label[i]
			above := square[x]
			s := int32(1)
			if x > 0 && y > 0 && label[i-1] == l && label[i-g.w] == l && label[i-g.w-1] == l {
				s = 1 + min(square[x-1], above, diagonal)
			}
			diagonal, square[x] = above, s
			if area[l] < worth {
				continue
			}
			z := zones[l]
			if z == nil {
				z = &zone{area: area[l], x0: int32(x), y0: int32(y), first: l}
				zones[l] = z
			}
			z.x0, z.x1, z.y1 = min(z.x0, int32(x)), max(z.x1, int32(x)+1), int32(y)+1
			z.thick = max(z.thick, s)
		}
	}
	return zones
}

// choose tells which zones are ground; scale is grid pixels for one point.
func (g *ground) choose(zones map[int32]*zone, scale float64) {
	var paper *zone
	for _, z := range zones {
		if paper == nil || z.area > paper.area || z.area == paper.area && z.first < paper.first {
			paper = z
		}
	}
	if paper == nil {
		return
	}
	white := g.rgb[paper.first]
	for _, z := range zones {
		w, h := float64(z.x1-z.x0)/scale, float64(z.y1-z.y0)/scale
		area, thick := float64(z.area)/(scale*scale), float64(z.thick)/scale
		solid := area >= groundFill*w*h && w >= groundWidth && w > h
		like := sameShade(g.rgb[z.first], white, paperLike)
		z.isGround = z == paper || thick >= groundThick && (area >= groundArea || solid) || like && thick >= paperThick
		if z.isGround && !like && area >= groundFill*w*h {
			g.bands = append(g.bands, Band{Box{float64(z.x0) / scale, float64(z.y0) / scale, float64(z.x1) / scale, float64(z.y1) / scale}, g.rgb[z.first]})
		}
	}
}

// spread carries the ground on into what is none, up to so many pixels.
func (g *ground) spread(label []int32, zones map[int32]*zone, reach int) {
	var edge []int32
	last, lastIs := int32(-1), false // most pixels lie in the zone of the one before
	for i, l := range label {
		if l != last {
			z := zones[l]
			last, lastIs = l, z != nil && z.isGround
		}
		if !lastIs {
			g.rgb[i] = noGround
		}
	}
	w := int32(g.w)
	at := func(i int32, do func(int32)) {
		if x := i % w; x > 0 {
			do(i - 1)
		}
		if x := i % w; x < w-1 {
			do(i + 1)
		}
		if i >= w {
			do(i - w)
		}
		if i < int32(len(label))-w {
			do(i + w)
		}
	}
	for i := range label {
		if g.rgb[i] == noGround {
			continue
		}
		rim := false
		at(int32(i), func(j int32) { rim = rim || g.rgb[j] == noGround })
		if rim {
			edge = append(edge, int32(i))
		}
	}
	for range reach {
		var next []int32
		for _, i := range edge {
			at(i, func(j int32) {
				if g.rgb[j] == noGround {
					g.rgb[j] = g.rgb[i]
					next = append(next, j)
				}
			})
		}
		edge = next
	}
}

// inkOf is the difference of each pixel from its ground; none where no ground is near.
func (g *ground) inkOf(p *image.RGBA) []uint8 {
	w, h := p.Rect.Dx(), p.Rect.Dy()
	ink := make([]uint8, w*h)
	for y := range h {
		row, line := p.Pix[y*p.Stride:], min(y/g.step, g.h-1)*g.w
		for x := range w {
			c := g.rgb[line+min(x/g.step, g.w-1)]
			if c == noGround {
				continue
			}
			i := 4 * x
			worst := 0
			for k, shift := range [3]int{16, 8, 0} {
				d := int(row[i+k]) - int(c>>shift&0xFF)
				worst = max(worst, d, -d)
			}
			ink[y*w+x] = uint8(worst)
		}
	}
	return ink
}
