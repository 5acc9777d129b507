package report

import (
	"fmt"
	"html/template"
	"math"

	"pvtally/cmd/internal/draw"
	"pvtally/rules"
	"pvtally/rules/envelope"
)

// envelopeRow is one quantity beside what is usual for the technology.
type envelopeRow struct {
	Name, Unit, Own, Usual string
	Origin                 string
	Outside                bool
	SVG                    template.HTML
}

// compared are the quantities in the order shown; of gives a class's value, not a number where there is none.
var compared = []struct {
	q          envelope.Quantity
	name, unit string
	decimals   int
	of         func(*Sheet, *rules.Class) float64
}{
	{envelope.Alpha, "α (Isc)", "%/K", 3, func(_ *Sheet, c *rules.Class) float64 { return known(&c.Alpha) }},
	{envelope.Beta, "β (Voc)", "%/K", 3, func(_ *Sheet, c *rules.Class) float64 { return known(&c.Beta) }},
	{envelope.Gamma, "γ (Pmax)", "%/K", 3, func(_ *Sheet, c *rules.Class) float64 { return known(&c.Gamma) }},
	{envelope.Efficiency, "Efficiency", "%", 1, func(_ *Sheet, c *rules.Class) float64 { return value(&c.STC.Efficiency) }},
	{envelope.FillFactor, "Fill factor", "", 3, func(_ *Sheet, c *rules.Class) float64 {
		return value(&c.STC.Pmax) / (value(&c.STC.Voc) * value(&c.STC.Isc))
	}},
	{envelope.VocCell, "Voc per cell", "V", 3, func(_ *Sheet, c *rules.Class) float64 {
		if c.Series <= 0 {
			return math.NaN()
		}
		return value(&c.STC.Voc) / c.Series
	}},
	{envelope.VmpVoc, "Vmp / Voc", "", 3, func(_ *Sheet, c *rules.Class) float64 { return value(&c.STC.Vmp) / value(&c.STC.Voc) }},
	{envelope.ImpIsc, "Imp / Isc", "", 3, func(_ *Sheet, c *rules.Class) float64 { return value(&c.STC.Imp) / value(&c.STC.Isc) }},
	{envelope.Density, "Isc per area", "mA/cm²", 1, func(s *Sheet, c *rules.Class) float64 {
		area := s.Record.Body.Length.Float() * s.Record.Body.Width.Float() / 100 // cm2
		if area <= 0 || c.Series <= 0 {
			return math.NaN()
		}
		return 1000 * value(&c.STC.Isc) * c.Series / area
	}},
	{envelope.Operating, "NMOT, NOCT", "°C", 0, func(s *Sheet, _ *rules.Class) float64 {
		for _, n := range []float64{s.Record.Thermal.NMOT.Float(), s.Record.Thermal.NOCT.Float()} {
			if n > 0 {
				return n
			}
		}
		return math.NaN()
	}},
	{envelope.Ideality, "Ideality of the fit", "", 2, func(_ *Sheet, c *rules.Class) float64 {
		if c.Fit == nil {
			return math.NaN()
		}
		return c.Fit.Ideality
	}},
}

func known(c *rules.Coefficient) float64 {
	if !c.Known() {
		return math.NaN()
	}
	return c.V
}

func value(v *rules.Value) float64 {
	if !v.Printed() {
		return math.NaN()
	}
	return v.V
}

// envelopeRows compares the classes with what is usual for the sheet's technology, or for any where it prints none.
func envelopeRows(s *Sheet) (list []envelopeRow, technology string) {
	technology = s.Record.Cell.Technology
	if technology == "" {
		technology = envelope.Any
	}
	ranges := envelope.For(technology)
	classes := rules.Classes(s.Record)
	for _, q := range compared {
		r := ranges[q.q]
		if r == nil {
			continue
		}
		var values []float64
		for i := range classes {
			if v := q.of(s, &classes[i]); !math.IsNaN(v) && !math.IsInf(v, 0) {
				values = append(values, v)
			}
		}
		if len(values) == 0 {
			continue
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, v := range values {
			lo, hi = min(lo, v), max(hi, v)
		}
		row := envelopeRow{Name: q.name, Unit: q.unit, Own: span(lo, hi, q.decimals), Usual: span(r.Lo, r.Hi, q.decimals), Outside: lo < r.Lo || hi > r.Hi}
		row.Origin = r.LoOrigin
		if r.HiOrigin != r.LoOrigin {
			row.Origin = fmt.Sprintf("from below: %s; from above: %s", r.LoOrigin, r.HiOrigin)
		}
		row.SVG = strip(r.Lo, r.Hi, values)
		list = append(list, row)
	}
	return list, technology
}

// span writes a range, or one value where both ends are written alike.
func span(lo, hi float64, decimals int) string {
	a, b := fixed(lo, decimals), fixed(hi, decimals)
	if a == b {
		return a
	}
	return a + " to " + b
}

// strip is a range as a bar with the sheet's values on it. What stands in it stands in words beside it, so a reader's program passes it over.
func strip(lo, hi float64, values []float64) template.HTML {
	const w, h = 200.0, 26.0
	from, to := lo, hi
	for _, v := range values {
		from, to = min(from, v), max(to, v)
	}
	room := 0.12 * (to - from)
	if room <= 0 {
		room = 1
	}
	from, to = from-room, to+room
	x := func(v float64) float64 { return w * (v - from) / (to - from) }
	var d draw.SVG
	d.Open("svg", "class", "strip", "viewBox", "0 0 200 26", "aria-hidden", "true", "focusable", "false")
	d.Empty("path", "class", "track", "d", "M0 13H200")
	d.Empty("rect", "class", "usual", "x", x(lo), "y", 7, "width", x(hi)-x(lo), "height", 12, "rx", 2)
	for _, v := range values {
		if class, y := "own", h/2; v < lo || v > hi {
			d.Empty("path", "class", "wrong", "d", fmt.Sprintf("M%s %sl6 6l-6 6l-6 -6Z", draw.Short(x(v)), draw.Short(y-6)))
		} else {
			d.Empty("circle", "class", class, "cx", x(v), "cy", y, "r", 4)
		}
	}
	d.Close("svg")
	return d.HTML()
}
