package rules

import "fmt"

var bodySides = &Rule{
	ID:      "body/sides",
	Title:   "length, width and thickness are those of a module",
	Why:     "The longest side, the middle and the shortest are a module's length, width and thickness in millimetres. A side in centimetres or of another thing breaks the order or the usual sizes.",
	Formula: "length ≥ width ≥ thickness; 20 ≤ thickness ≤ 60 mm with a frame; 300 ≤ width, length ≤ 2700 mm",
	Sources: []Source{{"Sizes of some 10,000 modules of the California Energy Commission's list and of 41 real sheets", "calculated"}},
	Levels:  []Threshold{{Note, "a side is outside the usual sizes"}, {Warning, "far outside"}, {Error, "the sides are not in order"}},
	Settings: []Setting{
		{"thickness_lo", 20, "mm", "usual thickness with a frame"},
		{"thickness_hi", 60, "mm", "usual thickness with a frame"},
		{"side_lo", 300, "mm", "usual smallest width"},
		{"side_hi", 2700, "mm", "usual greatest length"},
	},
	Needs: []string{"body.length_mm", "body.width_mm"},
	Check: func(p *Pass) {
		depth := p.value(p.Sheet.Body.Depth, "body", "depth_mm", -1, -1)
		l, w := &p.length, &p.width
		if l.Printed() && w.Printed() && l.Hi < w.Lo {
			text := fmt.Sprintf("length %s is shorter than width %s", l, w)
			if 10*l.V > w.V {
				text += "; a length in centimetres?"
			}
			p.Report(Error, Finding{Message: text}, l, w)
			return
		}
		if w.Printed() && depth.Printed() && w.Hi < depth.Lo {
			p.Report(Error, Finding{Message: fmt.Sprintf("width %s is smaller than thickness %s", w, depth)}, w, &depth)
			return
		}
		for _, c := range []struct {
			v      *Value
			lo, hi float64
		}{{l, p.Setting("side_lo"), p.Setting("side_hi")}, {w, p.Setting("side_lo"), p.Setting("side_hi")}, {&depth, p.Setting("thickness_lo"), p.Setting("thickness_hi")}} {
			if !c.v.Printed() || c.v.V >= c.lo && c.v.V <= c.hi {
				continue
			}
			level := Note
			if c.v.V < c.lo/3 || c.v.V > 1.5*c.hi {
				level = Warning
			}
			p.Report(level, Finding{Message: fmt.Sprintf("%s %s, usual is %s to %s mm", c.v.Symbol(), c.v, around(c.lo), around(c.hi)), Implied: []string{around(c.lo), around(c.hi)}}, c.v)
		}
	},
}
