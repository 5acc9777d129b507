package compare

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

func plotOf(t *testing.T, d *Doc, id string) *Plot {
	t.Helper()
	for i := range d.Plots {
		if d.Plots[i].ID == id {
			return &d.Plots[i]
		}
	}
	t.Fatalf("no plot %q", id)
	return nil
}

// shapes are the elements of a picture by name.
func shapes(t *testing.T, p *Plot, name string) (list []map[string]string) {
	t.Helper()
	root, err := html.Parse(strings.NewReader(string(picture(p))))
	if err != nil {
		t.Fatal(err)
	}
	var walk func(*html.Node)
	walk = func(n *html.Node) {
		if n.Data == name {
			m := map[string]string{}
			for _, a := range n.Attr {
				m[a.Key] = a.Val
			}
			list = append(list, m)
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
	}
	walk(root)
	return list
}

func attr(t *testing.T, m map[string]string, name string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(m[name], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestCurves: a drawn curve goes through the points of the data: equal distances are equal numbers on both axes.
func TestCurves(t *testing.T) {
	d := build(t, roofInput(t))
	for _, id := range []string{"power", "iv"} {
		p := plotOf(t, d, id)
		lines := shapes(t, p, "polyline")
		x, y := p.X.scale(frameLeft, frameRight), p.Y.scale(frameBottom, frameTop)
		if x.at(x.lo) != frameLeft || x.at(x.hi) != frameRight || y.at(y.lo) != frameBottom || y.at(y.hi) != frameTop {
			t.Fatalf("%s: the axes do not fill the frame", id)
		}
		for i, l := range p.Lines {
			points := strings.Fields(lines[2*i]["points"]) // each curve is followed by its piece of the legend
			if len(points) != len(l.Curve) {
				t.Fatalf("%s: %d points of %d", id, len(points), len(l.Curve))
			}
			for k, at := range points {
				px, py, _ := strings.Cut(at, ",")
				gx, _ := strconv.ParseFloat(px, 64)
				gy, _ := strconv.ParseFloat(py, 64)
				wx := frameLeft + (l.Curve[k][0].Float()-x.lo)/(x.hi-x.lo)*(frameRight-frameLeft)
				wy := frameBottom - (l.Curve[k][1].Float()-y.lo)/(y.hi-y.lo)*(frameBottom-frameTop)
				if math.Abs(gx-wx) > 0.06 || math.Abs(gy-wy) > 0.06 || gy < frameTop-0.1 || gy > frameBottom+0.1 {
					t.Fatalf("%s %s, point %d at %s, want %.1f,%.1f within the frame", id, l.Option, k, at, wx, wy)
				}
			}
		}
	}
	// The I-V curve goes through the printed points.
	for _, l := range plotOf(t, d, "iv").Lines {
		first, last := l.Curve[0], l.Curve[len(l.Curve)-1]
		if math.Abs(first[1].Float()-l.Points[0][1].Float()) > 0.01 || math.Abs(last[0].Float()-l.Points[2][0].Float()) > 0.01 {
			t.Errorf("%s: from %v to %v, printed are %v", l.Option, first, last, l.Points)
		}
	}
}

// TestRoofToScale: every module is drawn once, of its true proportions, within the setbacks and beside no other.
func TestRoofToScale(t *testing.T) {
	p := plotOf(t, build(t, roofInput(t)), "roof")
	rects := shapes(t, p, "rect")
	k := 0
	for _, r := range p.Roofs {
		area, inner := rects[k], rects[k+1]
		k += 2
		scale := attr(t, area, "width") / r.Width.Float()
		if math.Abs(attr(t, area, "height")/r.Depth.Float()-scale) > 0.02 {
			t.Errorf("%s: not one scale", r.Option)
		}
		var laid [][4]float64
		for _, n := range r.Counts {
			for range n {
				m := rects[k]
				k++
				x, y, w, h := attr(t, m, "x"), attr(t, m, "y"), attr(t, m, "width"), attr(t, m, "height")
				if math.Abs(w/scale-r.Along.Float()) > 0.01 || math.Abs(h/scale-r.Up.Float()) > 0.01 {
					t.Fatalf("%s: a module of %.1f × %.1f at %.2f to the unit", r.Option, w, h, scale)
				}
				ix, iy := attr(t, inner, "x"), attr(t, inner, "y")
				if x < ix-0.2 || y < iy-0.2 || x+w > ix+attr(t, inner, "width")+0.2 || y+h > iy+attr(t, inner, "height")+0.2 {
					t.Fatalf("%s: a module lies over the setbacks", r.Option)
				}
				for _, o := range laid {
					if x+0.2 < o[0]+o[2] && o[0]+0.2 < x+w && y+0.2 < o[1]+o[3] && o[1]+0.2 < y+h {
						t.Fatalf("%s: two modules overlap", r.Option)
					}
				}
				laid = append(laid, [4]float64{x, y, w, h})
			}
		}
	}
	if k != len(rects) {
		t.Errorf("%d rectangles, %d accounted for", len(rects), k)
	}
}

// TestBars: a bar's pieces are as long as their cost, and end where the total is.
func TestBars(t *testing.T) {
	p := plotOf(t, build(t, roofInput(t)), "cost")
	rects := shapes(t, p, "rect")
	k, scale := 0, 0.0
	for _, bar := range p.Bars {
		sum := 0.0
		for _, part := range bar.Parts {
			w := attr(t, rects[k], "width")
			if k++; scale == 0 {
				scale = w / part.Value.Float()
			}
			if math.Abs(w-scale*part.Value.Float()) > 0.11 {
				t.Errorf("%s, %s: %v for %s", bar.Option, part.Label, w, part.Value)
			}
			sum += part.Value.Float()
		}
		if math.Abs(sum-bar.Total.Float()) > 0.03 {
			t.Errorf("%s: the parts make %v, the total says %s", bar.Option, sum, bar.Total)
		}
	}
}

// TestTicks: round numbers that hold both ends, not too many.
func TestTicks(t *testing.T) {
	round := regexp.MustCompile(`^-?0*\.?0*[125]?0*\.?0*$`)
	for _, c := range [][2]float64{{0, 1}, {0, 14.2}, {347, 512}, {-36, 80}, {0.001, 0.0023}, {5, 5}, {0, 123456}, {-10, -3}} {
		list := ticks(c[0], c[1])
		if n := len(list); n < 3 || n > 10 || list[0].Float() > c[0]+1e-9 || list[n-1].Float() < c[1]-1e-9 {
			t.Errorf("%v: %v", c, list)
		}
		step := number(list[1].Float()-list[0].Float(), max(list[0].Decimals(), list[1].Decimals()))
		if !round.MatchString(step.String()) {
			t.Errorf("%v: a step of %s", c, step)
		}
	}
}
