package site

import (
	"fmt"
	"math"
	"strings"

	"pvtally/rules"
	"pvtally/rules/physics"
	"pvtally/schema"
	"pvtally/schema/relate"
)

// Module is one power class with what counts on a site. Values carry printed rounding and, where the sheet states one, tolerance.
type Module struct {
	Name    string
	Aliases []string
	Sheet   *schema.Sheet
	Index   int // of the class in the sheet

	Pmax, Vmp, Imp, Voc, Isc, Efficiency Value // STC; W, V, A, %
	Alpha, Beta, Gamma                   Value // %/K of Isc, Voc, Pmax
	NMOT, NOCT                           Value // °C
	PowerNMOT, PowerNOCT                 Value // W at 800 W/m2, as printed
	Length, Width, Mass                  Value // mm, mm, kg
	Area                                 Value // m2
	Bifaciality                          Value // %
	IscBNPI                              Value // A with 135 W/m2 behind, as printed
	Fuse                                 Value // maximum series fuse, A

	Curve *Curve
	Notes []string // what was done to printed values before they could be used
}

// Curve is a class's single-diode model, moved with irradiance and temperature.
type Curve struct {
	physics.Fit
	plate physics.Nameplate
}

// At is the curve at an irradiance in W/m2 and a cell temperature in °C.
func (c *Curve) At(irradiance, celsius float64) physics.Diode {
	return c.Fit.At(irradiance, celsius, c.plate.Alpha, c.plate.Gap)
}

// Modules are a record's power classes.
func Modules(s *schema.Sheet) []Module {
	classes := rules.Classes(s)
	list := make([]Module, len(classes))
	for i := range list {
		list[i] = moduleOf(s, i, &classes[i])
	}
	return list
}

func moduleOf(s *schema.Sheet, i int, c *rules.Class) Module {
	own := &s.Models[i]
	sheet := func(pointer, what string) Value { return printed(s, pointer, what) }
	class := func(pointer, what string) Value { return printed(s, fmt.Sprintf("/models/%d%s", i, pointer), what) }
	m := Module{
		Name: own.Name, Aliases: own.Aliases, Sheet: s, Index: i,
		Pmax: class("/stc/pmax_w", "Pmax"), Vmp: class("/stc/vmp_v", "Vmp"), Imp: class("/stc/imp_a", "Imp"),
		Voc: class("/stc/voc_v", "Voc"), Isc: class("/stc/isc_a", "Isc"), Efficiency: class("/stc/efficiency_pct", "the efficiency"),
		Alpha: coefficient(&c.Alpha, "α(Isc)"), Beta: coefficient(&c.Beta, "β(Voc)"), Gamma: coefficient(&c.Gamma, "γ(Pmax)"),
		NMOT:      sheet("/thermal/nmot_c", "NMOT").widened(s.Thermal.NMOTTolerance.Float(), s.Thermal.NMOTTolerance.Float()),
		NOCT:      sheet("/thermal/noct_c", "NOCT").widened(s.Thermal.NOCTTolerance.Float(), s.Thermal.NOCTTolerance.Float()),
		PowerNMOT: class("/nmot/pmax_w", "Pmax at NMOT"), PowerNOCT: class("/noct/pmax_w", "Pmax at NOCT"),
		Length: sheet("/body/length_mm", "the length"), Width: sheet("/body/width_mm", "the width"), Mass: sheet("/body/mass_kg", "the mass"),
		Bifaciality: sheet("/bifacial/factor_pct", "the bifaciality").widened(s.Bifacial.FactorTolerance.Float(), s.Bifacial.FactorTolerance.Float()),
		IscBNPI:     class("/bnpi/isc_a", "Isc at BNPI"),
		Fuse:        sheet("/limits/series_fuse_a", "the maximum series fuse").rating(),
	}
	if m.Name == "" {
		m.Name = strings.TrimSpace(s.Series + " " + m.Pmax.Literal + " W")
	}
	m.Area = m.Length.Product(m.Width).Times(1e-6)
	t := &s.Tolerance
	if minus, plus := powerTolerance(t, m.Pmax.V); m.Pmax.Known() && m.Pmax.V > 0 {
		m.Efficiency = m.Efficiency.widened(m.Efficiency.V*minus/m.Pmax.V, m.Efficiency.V*plus/m.Pmax.V)
		for _, p := range []*Value{&m.PowerNMOT, &m.PowerNOCT, &m.Pmax} {
			*p = p.widened(p.V*minus/m.Pmax.V, p.V*plus/m.Pmax.V)
		}
	}
	voc, isc := m.Voc.V*t.VocPct.Float()/100, m.Isc.V*t.IscPct.Float()/100
	m.Voc, m.Isc = m.Voc.widened(voc, voc), m.Isc.widened(isc, isc)
	for _, k := range []struct {
		of   *rules.Coefficient
		name string
	}{{&c.Beta, "β(Voc)"}, {&c.Gamma, "γ(Pmax)"}} {
		if k.of.Known() && k.of.Mended() {
			m.Notes = append(m.Notes, k.name+" is printed without its minus and is taken as negative")
		}
	}
	if c.Fit != nil {
		m.Curve = &Curve{*c.Fit, c.Nameplate}
	} else if c.NoFit != nil {
		m.Notes = append(m.Notes, "no single-diode curve: "+c.NoFit.Error())
	}
	return m
}

// printed is a value of the record with its printed rounding.
func printed(s *schema.Sheet, pointer, what string) Value {
	n, ok := s.At(pointer)
	if !ok {
		return None("%s is not printed", what)
	}
	return Value{V: n.Float(), Interval: relate.Of(n, s.HalfStep(pointer)), Literal: n.String()}
}

func coefficient(c *rules.Coefficient, what string) Value {
	if !c.Known() {
		return None("%s is not printed", what)
	}
	return Value{V: c.V, Interval: c.Interval, Literal: c.Literal()}
}

// widened adds a printed tolerance in the value's unit; both are positive numbers.
func (v Value) widened(minus, plus float64) Value {
	if v.Known() {
		v.Interval = relate.Interval{Lo: v.Lo - math.Abs(minus), Hi: v.Hi + math.Abs(plus)}
	}
	return v
}

// powerTolerance is the printed tolerance of Pmax in W; a sheet that prints it in W and in per cent means the wider.
func powerTolerance(t *schema.Tolerance, pmax float64) (minus, plus float64) {
	return max(t.PowerMinusW.Float(), pmax*t.PowerMinusPct.Float()/100), max(t.PowerPlusW.Float(), pmax*t.PowerPlusPct.Float()/100)
}

// PowerTolerance is the wider side of the printed power tolerance in per cent of Pmax.
func (m *Module) PowerTolerance() Value {
	t := &m.Sheet.Tolerance
	switch {
	case !m.Pmax.Known() || m.Pmax.V <= 0:
		return None("Pmax is not printed")
	case t.PowerPlusW.IsZero() && t.PowerMinusW.IsZero() && t.PowerPlusPct.IsZero() && t.PowerMinusPct.IsZero():
		return None("no power tolerance is printed")
	}
	minus, plus := powerTolerance(t, m.Pmax.V)
	return Exactly(100 * max(minus, plus) / m.Pmax.V)
}
