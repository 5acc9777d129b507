package page

// outline is the line around a path's area, as shown, curves as short straight pieces.
func (g *guest) outline(p paint, v view) outline {
	n := min(g.count("FPDFPath_CountSegments", p.path), maxSegments)
	m := p.m
	if g.ok("FPDFPageObj_GetMatrix", p.path, g.at(0)) {
		m = g.readMatrix(0).then(m)
	}
	var all outline
	var now polygon
	var bend []corner // control points of a curve
	for i := range n {
		s := g.segmentByCall(g.ptr("FPDFPath_GetPathSegment", p.path, uint64(i)))
		x, y := v.point(m.point(s.x, s.y))
		at := corner{x, y}
		switch s.kind {
		case segMove:
			all, now = append(all, now), polygon{at}
		case segBezier:
			if bend = append(bend, at); len(bend) == 3 && len(now) > 0 {
				now = now.curve(bend[0], bend[1], bend[2])
				bend = nil
			}
		default:
			now = append(now, at)
		}
	}
	return append(all, now)
}

type outline []polygon

// curveSteps is how many straight pieces stand for a cubic curve.
const curveSteps = 6

// curve appends a cubic Bézier curve from the polygon's last corner.
func (p polygon) curve(b, c, d corner) polygon {
	a := p[len(p)-1]
	for i := 1; i <= curveSteps; i++ {
		t := float64(i) / curveSteps
		u := 1 - t
		wa, wb, wc, wd := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		p = append(p, corner{wa*a.x + wb*b.x + wc*c.x + wd*d.x, wa*a.y + wb*b.y + wc*c.y + wd*d.y})
	}
	return p
}

// holds tells whether a point lies inside by the non-zero winding rule. Where a path is filled by the even-odd rule that takes its
// holes for area; the rendered page decides.
func (o outline) holds(x, y float64) bool {
	winding := 0
	for _, poly := range o {
		for i := range poly {
			a, b := poly[i], poly[(i+1)%len(poly)]
			if (a.y > y) == (b.y > y) || x >= a.x+(y-a.y)/(b.y-a.y)*(b.x-a.x) {
				continue
			}
			if a.y > y {
				winding++
			} else {
				winding--
			}
		}
	}
	return winding != 0
}
