package compare

import (
	"fmt"
	"math"

	"pvtally/rules/site"
	"pvtally/schema"
)

// plots are the pictures' data.
func (b *builder) plots() []Plot {
	var list []Plot
	for _, p := range []*Plot{b.warmPlot(), b.curvePlot(), b.costPlot(), b.roofPlot()} {
		if p != nil {
			list = append(list, *p)
		}
	}
	return list
}

// warmPlot is power against cell temperature by γ.
func (b *builder) warmPlot() *Plot {
	p := &Plot{ID: "power", Title: "Power of a module against cell temperature", Note: "By γ at 1000 W/m2; the slope is what heat costs."}
	c := &b.Site.Climate
	lo, hi := -10.0, 75.0
	if c.RecordLow != nil {
		lo = min(lo, *c.RecordLow)
		p.Marks = append(p.Marks, b.mark("record low", *c.RecordLow))
	}
	for _, m := range []struct {
		label string
		pick  func(h *heat) site.Value
	}{{"sunny hour", func(h *heat) site.Value { return h.sunny.Cell }}, {"hottest hour", func(h *heat) site.Value { return h.hottest.Cell }}} {
		if t := m.pick(&b.heat[0]); t.Known() { // the first option's: the others' are near it
			hi = max(hi, t.V)
			p.Marks = append(p.Marks, b.mark(m.label, t.V))
		}
	}
	lo, hi = 10*math.Floor(lo/10), 10*math.Ceil(hi/10)
	var top, bottom = 0.0, math.Inf(1)
	for i, o := range b.Options {
		line := Line{Option: b.names[i]}
		for t := lo; t <= hi; t += 5 {
			v := o.PowerAt(t)
			if !v.Known() {
				break
			}
			top, bottom = max(top, v.V), min(bottom, v.V)
			line.Curve = append(line.Curve, [2]schema.Number{number(b.of(site.Celsius).of(t), 0), number(v.V, 1)})
		}
		if len(line.Curve) > 0 {
			line.Points = [][2]schema.Number{{number(b.of(site.Celsius).of(25), 0), number(o.Pmax.V, 1)}}
			p.Lines = append(p.Lines, line)
		}
	}
	if len(p.Lines) == 0 {
		return nil
	}
	as := b.of(site.Celsius)
	p.X = Axis{"cell temperature", as.sign, ticks(as.of(lo), as.of(hi))}
	p.Y = Axis{"power", "W", ticks(bottom, top)}
	return p
}

func (b *builder) mark(label string, celsius float64) Mark {
	return Mark{label, number(b.of(site.Celsius).of(celsius), 0)}
}

// curveSteps is how many pieces an I-V curve has.
const curveSteps = 60

// curvePlot lays the I-V curves at STC over each other, with the printed points.
func (b *builder) curvePlot() *Plot {
	p := &Plot{ID: "iv", Title: "I–V curves at STC", Note: "Single-diode model (De Soto et al. 2006) through the printed points."}
	volts, amperes := 0.0, 0.0
	for i, o := range b.Options {
		if o.Curve == nil {
			continue
		}
		d := o.Curve.At(1000, 25)
		voc := d.Voc()
		line := Line{Option: b.names[i]}
		for k := 0; k <= curveSteps; k++ {
			v := voc * (1 - math.Pow(1-float64(k)/curveSteps, 2)) // closer together where the curve bends
			line.Curve = append(line.Curve, [2]schema.Number{number(v, 2), number(max(d.Current(v), 0), 3)})
		}
		for _, at := range [][2]float64{{0, o.Isc.V}, {o.Vmp.V, o.Imp.V}, {o.Voc.V, 0}} {
			line.Points = append(line.Points, [2]schema.Number{number(at[0], 2), number(at[1], 3)})
		}
		volts, amperes = max(volts, voc, o.Voc.V), max(amperes, d.Isc(), o.Isc.V)
		p.Lines = append(p.Lines, line)
	}
	if len(p.Lines) == 0 {
		return nil
	}
	p.X, p.Y = Axis{"voltage", "V", ticks(0, volts)}, Axis{"current", "A", ticks(0, amperes)}
	return p
}

// maxDrawn is how many modules a roof is drawn with: more could not be told apart.
const maxDrawn = 600

// roofPlot draws the layouts to one scale.
func (b *builder) roofPlot() *Plot {
	if b.Site.Area == nil {
		return nil
	}
	p := &Plot{ID: "roof", Title: "The roof, to scale", Note: "The eaves are below; the dashed line is where the setbacks end."}
	a, r, m := b.Site.Area, b.Site.Racking, b.of(site.Metre)
	length := func(v float64) schema.Number { return number(m.of(v), 3) }
	for i, name := range b.names {
		lay := b.roof[i]
		if !lay.laid || lay.best.Used() > maxDrawn {
			continue
		}
		caption, _ := lay.describe()
		p.Roofs = append(p.Roofs, Roof{Option: name, Caption: fmt.Sprintf("%d × %s: %s", lay.best.Used(), name, caption),
			Width: length(a.Width), Depth: length(a.Depth), Left: length(a.Left), Right: length(a.Right), Eaves: length(a.Eaves), Ridge: length(a.Ridge),
			Along: length(lay.best.Along), Up: length(lay.best.Up), Gap: length(r.Gap), RowGap: length(r.RowGap), Landscape: lay.best.Landscape, Counts: lay.best.Counts})
	}
	if len(p.Roofs) == 0 {
		return nil
	}
	p.X = Axis{"along the eaves", m.sign, []schema.Number{number(0, 0), trimmed(m.of(a.Width), 2)}}
	p.Y = Axis{"up the slope", m.sign, []schema.Number{number(0, 0), trimmed(m.of(a.Depth), 2)}}
	return p
}

// costPlot stacks what each option costs.
func (b *builder) costPlot() *Plot {
	p := &Plot{ID: "cost", Title: "What it costs"}
	top := 0.0
	for i, name := range b.names {
		x := &b.bills[i]
		if x.why != "" {
			continue
		}
		bar := Bar{Option: name, Total: number(x.Total(), 2)}
		for k, part := range x.Parts {
			if b.priced(k) {
				bar.Parts = append(bar.Parts, BarPart{part.Label, number(part.Cost(), 2)})
			}
		}
		top = max(top, x.Total())
		p.Bars = append(p.Bars, bar)
	}
	if top == 0 {
		return nil
	}
	p.X = Axis{"in all", b.currency, ticks(0, top)}
	return p
}

// ticks are round numbers from below lo to above hi, some six of them: steps of 1, 2 or 5 times a power of ten.
func ticks(lo, hi float64) []schema.Number {
	if !(hi > lo) {
		lo, hi = lo-1, lo+1
	}
	step := math.Pow(10, math.Floor(math.Log10((hi-lo)/4)))
	for _, k := range []float64{1, 2, 5, 10} {
		if (hi-lo)/(k*step) <= 7 {
			step *= k
			break
		}
	}
	decimals := max(0, int(-math.Floor(math.Log10(step)+1e-9)))
	var list []schema.Number
	for v := math.Floor(lo/step+1e-9) * step; ; v += step {
		list = append(list, number(v, decimals))
		if v >= hi-1e-9*step {
			return list
		}
	}
}
