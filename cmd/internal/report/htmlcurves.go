package report

import (
	"fmt"
	"html/template"
	"strings"

	"pvtally/cmd/internal/draw"
	"pvtally/rules"
	"pvtally/rules/physics"
	"pvtally/schema"
)

// curves are one class's I-V and P-V curves by the single-diode model through its printed values.
type curves struct {
	Model   string
	Others  bool   // the sheet has more classes
	Missing string // why there are none
	IV, PV  template.HTML
	Rows    []curveRow
	Fit     string
}

// curveRow is one condition: what the model says, and what the sheet prints.
type curveRow struct {
	Class, Name, Model string // Model is the conditions in words
	Isc, Voc           string
	Imp, Vmp, Pmax     string
	Printed            []string // Isc, Voc, Imp, Vmp, Pmax as printed; empty where the sheet has no such table
}

// The third condition: a clear winter morning, when voltage is highest.
const (
	coldCelsius    = -10.0
	coldIrradiance = 1000.0
)

// condition is where a curve stands.
type condition struct {
	class, name, words  string
	irradiance, celsius float64
	printed             *schema.Electrical
	shape               draw.Shape
}

func (v *htmlSheet) curves(s *Sheet) *curves {
	classes := rules.Classes(s.Record)
	if len(classes) == 0 {
		return nil
	}
	i := v.soundest(classes)
	c := &classes[i]
	out := &curves{Model: Plain(className(s.Record, i)), Others: len(classes) > 1}
	if c.Fit == nil {
		out.Missing = upper(c.NoFit.Error()) + "."
		return out
	}
	out.Fit = fmt.Sprintf("Light current %s A, saturation current %s A, series resistance %s Ω, shunt resistance %s, ideality %s; %s cells in series.",
		figures(c.Fit.IL), figures(c.Fit.Io), figures(c.Fit.Rs), shunt(c.Fit.Rsh), figures(c.Fit.Ideality), figures(c.Series))
	var list []condition
	m := &s.Record.Models[i]
	list = append(list, condition{"stc", "STC", "1000 W/m², cell 25 °C", physics.STCIrradiance, physics.STCTemperature, &m.STC, draw.Dot})
	if t, name, printed := operatingAt(s.Record, m); name != "" {
		list = append(list, condition{"nmot", name, fmt.Sprintf("800 W/m², cell %s °C", figures(t)), 800, t, printed, draw.Square})
	}
	list = append(list, condition{"cold", "Cold morning", fmt.Sprintf("1000 W/m², cell −%.0f °C", -coldCelsius), coldIrradiance, coldCelsius, nil, draw.Triangle})

	iv := draw.Chart{ID: v.ID + "-iv", Title: "I–V curves of " + out.Model, Width: 420, Height: 300, X: draw.Axis{Label: "voltage (V)", Ticks: 8}, Y: draw.Axis{Label: "current (A)"}}
	pv := draw.Chart{ID: v.ID + "-pv", Title: "P–V curves of " + out.Model, Width: 420, Height: 300, X: draw.Axis{Label: "voltage (V)", Ticks: 8}, Y: draw.Axis{Label: "power (W)"}}
	var says []string
	for _, at := range list {
		d := c.Fit.At(at.irradiance, at.celsius, c.Nameplate.Alpha, c.Nameplate.Gap)
		isc, voc, mpp := d.Isc(), d.Voc(), d.MPP()
		out.Rows = append(out.Rows, curveRow{Class: at.class, Name: at.name, Model: at.words, Isc: fixed(isc, 2), Voc: fixed(voc, 2), Imp: fixed(mpp.I, 2),
			Vmp: fixed(mpp.V, 2), Pmax: fixed(mpp.Power(), 1), Printed: literals(at.printed)})
		says = append(says, fmt.Sprintf("%s: Isc %.2f A, Voc %.2f V, Pmax %.1f W at %.2f V", at.name, isc, voc, mpp.Power(), mpp.V))
		current, power := sampled(d, voc)
		iv.Lines = append(iv.Lines, draw.Line{Class: at.class, Points: current})
		pv.Lines = append(pv.Lines, draw.Line{Class: at.class, Points: power})
		iv.Marks = append(iv.Marks, marksOf(at, false)...)
		pv.Marks = append(pv.Marks, marksOf(at, true)...)
		iv.X.Hi, iv.Y.Hi, pv.Y.Hi = max(iv.X.Hi, 1.04*voc), max(iv.Y.Hi, 1.08*isc), max(pv.Y.Hi, 1.08*mpp.Power())
	}
	pv.X.Hi = iv.X.Hi
	iv.Desc, pv.Desc = strings.Join(says, "; "), strings.Join(says, "; ")
	out.IV, out.PV = iv.SVG(), pv.SVG()
	return out
}

// soundest is the class whose curves are drawn: one with a curve and nothing wrong in it, the nearest to the middle.
func (v *htmlSheet) soundest(classes []rules.Class) int {
	wrong := map[int]bool{}
	for pointer, m := range v.marks {
		if class, _, ok := splitClass(pointer); ok && m.wrong() {
			wrong[class] = true
		}
	}
	best, rank := len(classes)/2, 1<<30
	for i := range classes {
		r := max(i-len(classes)/2, len(classes)/2-i)
		if classes[i].Fit == nil {
			r += 2 << 20
		}
		if wrong[i] {
			r += 1 << 20
		}
		if r < rank {
			best, rank = i, r
		}
	}
	return best
}

// operatingAt is the printed cell temperature of the condition at 800 W/m2 that the class has a table for, else of whichever is printed.
func operatingAt(s *schema.Sheet, m *schema.Model) (celsius float64, name string, table *schema.Electrical) {
	nmot, noct := s.Thermal.NMOT, s.Thermal.NOCT
	switch {
	case !nmot.IsZero() && (noct.IsZero() || !m.NMOT.Pmax.IsZero()):
		return nmot.Float(), "NMOT", &m.NMOT
	case !noct.IsZero():
		return noct.Float(), "NOCT", &m.NOCT
	}
	return 0, "", nil
}

// sampled is a curve as points: dense where it bends.
func sampled(d physics.Diode, voc float64) (current, power []draw.Point) {
	const n = 90
	for i := range n + 1 {
		u := float64(i) / n
		v := voc * (1 - (1-u)*(1-u)) // towards Voc the steps shorten
		a := max(d.Current(v), 0)
		current, power = append(current, draw.Point{X: v, Y: a}), append(power, draw.Point{X: v, Y: v * a})
	}
	return current, power
}

// marksOf are the printed points of a condition.
func marksOf(at condition, power bool) (list []draw.Mark) {
	e := at.printed
	if e == nil {
		return nil
	}
	put := func(x, y float64, title string) {
		list = append(list, draw.Mark{Point: draw.Point{X: x, Y: y}, Shape: at.shape, Class: at.class, Title: "printed at " + at.name + ": " + title})
	}
	if power {
		if !e.Pmax.IsZero() && !e.Vmp.IsZero() {
			put(e.Vmp.Float(), e.Pmax.Float(), fmt.Sprintf("%s W, %s V", e.Pmax, e.Vmp))
		}
		return list
	}
	if !e.Isc.IsZero() {
		put(0, e.Isc.Float(), "Isc "+e.Isc.String()+" A")
	}
	if !e.Imp.IsZero() && !e.Vmp.IsZero() {
		put(e.Vmp.Float(), e.Imp.Float(), fmt.Sprintf("%s A, %s V", e.Imp, e.Vmp))
	}
	if !e.Voc.IsZero() {
		put(e.Voc.Float(), 0, "Voc "+e.Voc.String()+" V")
	}
	return list
}

// literals are a table's printed values in the order of the rows' columns; nil where nothing is printed.
func literals(e *schema.Electrical) []string {
	if e == nil {
		return nil
	}
	list := []string{e.Isc.String(), e.Voc.String(), e.Imp.String(), e.Vmp.String(), e.Pmax.String()}
	if strings.Join(list, "") == "" {
		return nil
	}
	return list
}
