package extract

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"pvtally/extract/page"
	"pvtally/schema"
)

// How far values may lie from what the others make of them; what rounding, binning and a maker's slip explain lies within.
const (
	farPower      = 0.12 // power against voltage times current
	nearPower     = 0.03 // the same where two cells are interchanged
	farEfficiency = 0.12 // efficiency against power by area
	farVoltage    = 1.5  // open-circuit against maximum-power voltage, and the same of currents
	glassMass     = 2.5  // kg a mm and m²: soda-lime glass, 2500 kg/m³
	lightMass     = 4.5  // kg a m²: less are only flexible modules
	heavyMass     = 25.0
	voltageStep   = 50.0 // V
)

// underLess is how values at 800 W/m² and the nominal temperature stand to those at STC: the power falls by a quarter, the current with the
// light, the voltage by a twentieth to a tenth.
var underLess = []struct {
	field       string
	least, most float64
}{{"pmax_w", 0.6, 0.9}, {"imp_a", 0.6, 1.0}, {"isc_a", 0.6, 1.0}, {"vmp_v", 0.75, 1.05}, {"voc_v", 0.75, 1.05}}

// misreadVoltages opens the system voltages that are no round figures; the others move up.
func misreadVoltages(s *schema.Sheet) {
	at := func(i int) string { return fmt.Sprintf("/limits/system_voltage_v/%d", i) }
	all := s.Limits.SystemVoltage
	var round []schema.Number
	for i, v := range all {
		e, known := s.Evidence[at(i)]
		delete(s.Evidence, at(i))
		if e.By == string(page.ByPicture) && (v.Float() < voltageStep || math.Mod(v.Float(), voltageStep) != 0) {
			s.Unresolved = append(s.Unresolved, schema.Unresolved{Field: "/limits/system_voltage_v", Label: e.Label, Candidates: []string{e.Printed}, Page: e.Page, Box: e.Box, Why: "read from a picture, and no round figure"})
			continue
		}
		if known {
			s.Evidence[at(len(round))] = e
		}
		round = append(round, v)
	}
	s.Limits.SystemVoltage = round
}

// misreadBody weighs the module: less than its glass, or more than any of its size, is misread.
func misreadBody(s *schema.Sheet) {
	area := s.Body.Length.Float() * s.Body.Width.Float() / 1e6
	if s.Body.Mass.IsZero() || area == 0 {
		return
	}
	glass := glassMass * area * (s.Body.FrontGlass.Float() + s.Body.RearGlass.Float())
	if m := s.Body.Mass.Float(); m < glass || m < lightMass*area || m > heavyMass*area {
		leaveOpen(s, fmt.Sprintf("read from a picture, and hardly the weight of %.2f m²", area), "/body/mass_kg")
	}
}

// thinFilm are the technologies whose cells may have more voltage than a crystalline one.
var thinFilm = map[string]bool{"cdte": true, "cigs": true, "a-si": true, "tandem": true}

// misreadCells divides the voltage among the cells: no crystalline cell has more than 0.8 V (common practice, no source), and no module
// has more than eight strings of them beside each other, as shingled ones do.
func misreadCells(s *schema.Sheet) {
	if s.Cell.Count.IsZero() {
		return
	}
	for _, m := range s.Models {
		if v := m.STC.Voc.Float() / s.Cell.Count.Float(); v > 0 && (v < 0.08 || v > 0.8 && !thinFilm[s.Cell.Technology]) {
			leaveOpen(s, fmt.Sprintf("read from a picture, and %.2f V would be a cell's voltage", v), "/cell/count")
			return
		}
	}
}

// misreadClass opens the values of a class that hold together in no way.
func misreadClass(s *schema.Sheet, i int, several bool) {
	m := &s.Models[i]
	for _, under := range []struct {
		name string
		*schema.Electrical
	}{{"nmot", &m.NMOT}, {"noct", &m.NOCT}, {"bnpi", &m.BNPI}, {"stc", &m.STC}} { // STC last: the others are measured against it
		name, e := under.name, under.Electrical
		at := func(fields ...string) []string {
			for k, f := range fields {
				fields[k] = fmt.Sprintf("/models/%d/%s/%s", i, name, f)
			}
			return fields
		}
		was := *e
		p, v, c, voc, isc := e.Pmax.Float(), e.Vmp.Float(), e.Imp.Float(), e.Voc.Float(), e.Isc.Float()
		swapped := voc*c != 0 && v > voc && apart(p, voc*c) < nearPower // a maker's slip that explains itself
		if p*v*c != 0 && apart(p, v*c) > farPower && !swapped {
			leaveOpen(s, fmt.Sprintf("read from a picture, and %s W are far from %s V times %s A", was.Pmax, was.Vmp, was.Imp), at("pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a")...) // columns may have been interchanged
		}
		if v*voc != 0 && max(v/voc, voc/v) > farVoltage {
			leaveOpen(s, fmt.Sprintf("read from a picture, and Voc %s V and Vmp %s V are too far apart", was.Voc, was.Vmp), at("vmp_v", "voc_v")...)
		}
		if c*isc != 0 && max(c/isc, isc/c) > farVoltage {
			leaveOpen(s, fmt.Sprintf("read from a picture, and Isc %s A and Imp %s A are too far apart", was.Isc, was.Imp), at("imp_a", "isc_a")...)
		}
		area := s.Body.Length.Float() * s.Body.Width.Float() / 1e6
		if eff := e.Efficiency.Float(); name == "stc" && eff*area*p != 0 && !several && apart(eff, p/area/10) > farEfficiency {
			leaveOpen(s, fmt.Sprintf("read from a picture, and %s W on %.2f m² are not %s %%", was.Pmax, area, was.Efficiency), at("pmax_w", "efficiency_pct", "vmp_v", "imp_a", "voc_v", "isc_a")...)
		}
		if name == "nmot" || name == "noct" {
			for _, x := range underLess {
				f, reference := at(x.field)[0], fmt.Sprintf("/models/%d/stc/%s", i, x.field)
				n, _ := s.At(f)
				stc, _ := s.At(reference)
				if k := n.Float() / stc.Float(); n.Float()*stc.Float() != 0 && (k < x.least || k > x.most) {
					leaveOpen(s, fmt.Sprintf("read from a picture, and at 800 W/m² hardly what %s is at STC", stc), f)
				}
			}
		}
		for _, f := range at("pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a") {
			if n, ok := s.At(f); ok && n.Float() <= 0 {
				leaveOpen(s, "read from a picture, and not positive", f)
			}
		}
	}
}

// apart is how far two positive numbers lie apart, as a share of the second.
func apart(a, b float64) float64 { return abs(a/b - 1) }

// misreadNames opens the names that are built otherwise than the other classes': one letter read as another, an end lost. Letters are
// read once only, so nothing else tells. Two ways that are as frequent are two kinds of module.
func misreadNames(s *schema.Sheet) {
	builds := make([]string, len(s.Models))
	count := map[string]int{}
	for i, m := range s.Models {
		if m.Name != "" {
			builds[i] = buildOf(m.Name)
			count[builds[i]]++
		}
	}
	for i, own := range builds {
		if own == "" {
			continue
		}
		why := ""
		if strings.ContainsAny(own, "[]{}|¢£€“”‘’\"<>=^«»§©®°*") || strings.Count(own, "(") != strings.Count(own, ")") {
			why = "read from a picture, with signs that no name has"
		}
		for other, n := range count {
			if twins := n == count[own] && n > 1; other != own && !twins && (strings.HasPrefix(other, own) || strings.HasPrefix(own, other) || n >= count[own] && alike(own, other)) {
				why = "read from a picture, and another class's name is built otherwise"
			}
		}
		if why != "" {
			leaveOpen(s, why, fmt.Sprintf("/models/%d/name", i))
		}
	}
}

// buildOf is a name without its numbers.
func buildOf(name string) string {
	var b strings.Builder
	digits := false
	for _, r := range name {
		if unicode.IsDigit(r) {
			if !digits {
				b.WriteByte('#')
			}
			digits = true
			continue
		}
		digits = false
		b.WriteRune(r)
	}
	return b.String()
}

// alike tells whether two names' builds differ in one or two letters only, as a misread one does.
func alike(a, b string) bool {
	x, y := []rune(a), []rune(b)
	n := 0
	if len(x) != len(y) {
		return abs(float64(len(x)-len(y))) <= 2 && (common(x, y)+common(reversed(x), reversed(y)) >= min(len(x), len(y)))
	}
	for i := range x {
		if x[i] != y[i] {
			n++
		}
	}
	return n <= 2 && n < len(x)/2
}

func common(a, b []rune) int {
	n := 0
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	return n
}

func reversed(a []rune) []rune {
	out := slices.Clone(a)
	slices.Reverse(out)
	return out
}
