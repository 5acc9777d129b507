package rules

import (
	"math"
	"slices"
	"strings"

	"pvtally/rules/envelope"
	"pvtally/rules/physics"
	"pvtally/schema"
	"pvtally/schema/relate"
)

// facts are what many rules ask of one record, gathered once.
type facts struct {
	env     *envelope.Ranges
	silicon bool // the sheet says a silicon technology with one junction
	stc     []Electrical
	coef    []Coefficients
	fits    []fitting
	count   Value
	series  float64 // cells in series, 0 where not known
	length  Value
	width   Value
	area    relate.Interval // m2, All where not known
	nominal []float64       // the classes' nominal powers, W
	rank    []int           // the classes by ascending nominal power
	nmot    []operating     // the classes' tables at NMOT, as far as they are printed
	noct    []operating
}

// Coefficient is a temperature coefficient in %/K from whichever form the sheet prints, with β and γ made negative: a lost sign is thermal/sign's to report, once.
type Coefficient struct {
	relate.Interval
	V   float64
	src Value
}

// Known reports that the sheet prints the coefficient in some form.
func (c *Coefficient) Known() bool { return c.src.Printed() }

// Coefficients are a class's.
type Coefficients struct{ Alpha, Beta, Gamma Coefficient }

// fitting is a class's single-diode model, solved at most once; a record that comes again with other values elsewhere, as in a diagnosis, finds it solved.
type fitting struct {
	asked, printed bool
	of             physics.Nameplate
	fit            physics.Fit
	err            error
}

// fittings makes room for n classes and keeps what was solved before.
func (f *facts) fittings(n int) []fitting {
	fits := slices.Grow(f.fits[:0], n)[:n]
	for i := range fits {
		fits[i].asked = false
	}
	return fits
}

func (f *facts) empty() facts {
	return facts{stc: f.stc[:0], coef: f.coef[:0], fits: f.fits, rank: f.rank[:0], nominal: f.nominal[:0], nmot: f.nmot[:0], noct: f.noct[:0]}
}

func (f *facts) gather(p *Pass) {
	s := p.Sheet
	*f = f.empty()
	f.env = envelope.For(s.Cell.Technology)
	f.silicon = isSilicon(s.Cell.Technology)
	f.count = p.value(s.Cell.Count, "cell", "count", -1, -1)
	f.length = p.value(s.Body.Length, "body", "length_mm", -1, -1)
	f.width = p.value(s.Body.Width, "body", "width_mm", -1, -1)
	f.area = relate.All
	if f.length.Printed() && f.width.Printed() {
		f.area = f.length.Mul(f.width.Interval).Scale(1e-6)
	}
	f.fits = f.fittings(len(s.Models))
	for i := range s.Models {
		m := &s.Models[i]
		f.stc = append(f.stc, p.electrical(&m.STC, "stc", i, -1))
		f.coef = append(f.coef, p.coefficients(i, &f.stc[i]))
	}
	f.roundEfficiencies()
	f.nominal = p.nominals(f.nominal)
	for i := range f.nominal {
		at := len(f.rank)
		f.rank = append(f.rank, i)
		for ; at > 0 && f.nominal[f.rank[at-1]] > f.nominal[i]; at-- {
			f.rank[at] = f.rank[at-1]
		}
		f.rank[at] = i
	}
	f.nmot = p.operatings(f.nmot, "nmot", func(m *schema.Model) *schema.Electrical { return &m.NMOT })
	f.noct = p.operatings(f.noct, "noct", func(m *schema.Model) *schema.Electrical { return &m.NOCT })
	if len(f.stc) > 0 {
		f.series = seriesCells(f.count.V, s.Cell, f.stc[len(f.stc)/2].Voc.V, f.env[envelope.VocCell])
	}
}

func isSilicon(technology string) bool {
	return strings.HasPrefix(technology, "mono") || strings.HasPrefix(technology, "multi") || technology == "topcon" || technology == "hjt" || technology == "ibc"
}

// seriesCells is the count of cells in series: half cells stand in two parallel halves, third cells in three. Where the words leave two readings, Voc decides.
func seriesCells(count float64, cell schema.Cell, voc float64, perCell *envelope.Range) float64 {
	if count <= 0 {
		return 0
	}
	suits := func(n float64) bool {
		v := voc / n
		return voc > 0 && perCell != nil && v >= perCell.Lo && v <= perCell.Hi
	}
	switch cell.Cut {
	case "half":
		if count < 80 && !suits(count/2) && suits(count) {
			return count // "72 half-cut cells" may count the pairs
		}
		return count / 2
	case "third":
		return count / 3
	case "shingle":
		return 0 // strips of any width in strings of any number
	}
	if isSilicon(cell.Technology) || cell.Technology == "" {
		if count > 78 && !suits(count) && (suits(count/2) || count >= 100) {
			return count / 2
		}
		return count
	}
	if !suits(count) && suits(count/2) {
		return count / 2 // thin-film modules lay two strings of cells side by side
	}
	return count
}

// coefficients finds a class's coefficients: its own before the sheet's, per cent before absolute.
func (p *Pass) coefficients(i int, stc *Electrical) Coefficients {
	own, sheet := &p.Sheet.Models[i].Thermal, &p.Sheet.Thermal
	pick := func(own, sheet schema.Number, name string) Value {
		if !own.IsZero() {
			return p.value(own, "thermal", name, i, -1)
		}
		return p.value(sheet, "thermal", name, -1, -1)
	}
	find := func(pct, abs Value, of *Value) Coefficient {
		switch {
		case pct.Printed():
			return Coefficient{pct.Interval, pct.V, pct}
		case abs.Printed() && of.V > 0:
			return Coefficient{abs.Interval.Div(of.Interval).Scale(100), abs.V / of.V * 100, abs}
		}
		return Coefficient{Interval: relate.All}
	}
	c := Coefficients{
		find(pick(own.AlphaIsc, sheet.AlphaIsc, "alpha_isc_pct_per_k"), pick(own.AlphaIscAbs, sheet.AlphaIscAbs, "alpha_isc_a_per_k"), &stc.Isc),
		find(pick(own.BetaVoc, sheet.BetaVoc, "beta_voc_pct_per_k"), pick(own.BetaVocAbs, sheet.BetaVocAbs, "beta_voc_v_per_k"), &stc.Voc),
		find(pick(own.GammaPmax, sheet.GammaPmax, "gamma_pmax_pct_per_k"), pick(own.GammaPmaxAbs, sheet.GammaPmaxAbs, "gamma_pmax_w_per_k"), &stc.Pmax),
	}
	for _, k := range []*Coefficient{&c.Beta, &c.Gamma} {
		if k.V > 0 {
			k.V, k.Interval = -k.V, k.Scale(-1)
		}
	}
	return c
}

// gapOf is the band gap of a technology whose single-diode model is one junction's; ok is false for the others.
func gapOf(technology string) (physics.Gap, bool) {
	switch {
	case isSilicon(technology):
		return physics.SiliconGap, true
	case technology == "cdte":
		return physics.CdTeGap, true
	case technology == "cigs":
		return physics.CIGSGap, true
	}
	return physics.Gap{}, false
}

// Fit is class i's single-diode model; ok is false where a value is missing or no curve exists, then err tells which condition fails.
func (p *Pass) Fit(i int) (fit *physics.Fit, ok bool, err error) {
	f := &p.fits[i]
	if !f.asked {
		n, ok := p.nameplate(i)
		if ok && n != f.of {
			f.of = n
			f.fit, f.err = physics.FitNameplate(n)
		}
		f.asked, f.printed = true, ok
	}
	if !f.printed {
		return &f.fit, false, nil
	}
	return &f.fit, f.err == nil, f.err
}

// nameplate is what a fit of class i stands on; ok is false where the sheet does not print all of it.
func (p *Pass) nameplate(i int) (n physics.Nameplate, ok bool) {
	e, c := &p.stc[i], &p.coef[i]
	gap, known := gapOf(p.Sheet.Cell.Technology)
	if !known || p.series <= 0 || !e.Full() || !c.Beta.Known() {
		return n, false
	}
	n = physics.Nameplate{Isc: e.Isc.V, Voc: e.Voc.V, Imp: e.Imp.V, Vmp: e.Vmp.V, Series: p.series, Gap: gap, Beta: c.Beta.V / 100 * e.Voc.V}
	if c.Alpha.Known() {
		n.Alpha = math.Abs(c.Alpha.V) / 100 * e.Isc.V
	}
	return n, true
}

// vocCell is Voc per cell in series.
func (p *Pass) vocCell(i int) relate.Interval {
	if p.series <= 0 || !p.stc[i].Voc.Printed() {
		return relate.All
	}
	return p.stc[i].Voc.Scale(1 / p.series)
}
