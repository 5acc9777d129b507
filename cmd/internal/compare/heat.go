package compare

import (
	"fmt"

	"pvtally/rules/site"
)

// heat is what the site's temperatures do to one option.
type heat struct {
	sunny, hottest      site.Heat
	printed, calculated site.Value // power at NMOT or NOCT
	year                site.Year
	low                 site.Value // record low, °C
	isc, voc            site.Value // spans between the record low and the hottest hour, A and V
	cold                site.Cold
	series              site.Series
	fuse                site.Fuse
}

// calculate works out everything of every option.
func (b *builder) calculate() {
	s := &b.Site.Site
	low := site.None("no record low is given, and the lowest hour of a typical year is not one (record_low_c)")
	if s.Climate.RecordLow != nil {
		low = site.Exactly(*s.Climate.RecordLow)
	}
	for _, o := range b.Options {
		b.roof = append(b.roof, b.layRoof(o.Module))
		h := heat{sunny: o.At(s.Climate.Sunny, s.Mounting), hottest: o.At(s.Climate.Hottest, s.Mounting), year: o.Over(s.Climate.Year, s.Mounting), low: low}
		h.printed, h.calculated = o.NominalPower()
		none := site.None("%s", low.Why)
		h.cold = site.Cold{Coefficient: none, Model: none, Table: none, Factor: none}
		if low.Known() {
			h.cold = o.OnColdest(low.V)
		}
		h.isc, h.voc = o.Span(low, h.hottest.Cell)
		h.series = o.InSeries(s.Window, low, h.hottest.Cell)
		h.fuse = o.Fused(s.Window.Parallel)
		b.heat = append(b.heat, h)
	}
	b.calculateBills()
}

func (b *builder) ofHeat(pick func(h *heat) site.Value) func(int) site.Value {
	return func(i int) site.Value { return pick(&b.heat[i]) }
}

func (b *builder) heatSection() *Section {
	s := &Section{ID: "heat", Title: "In the heat"}
	c := &b.Site.Climate
	for _, at := range []struct {
		id, label string
		hour      site.Hour
		pick      func(h *heat) *site.Heat
	}{
		{"sunny", "sunny hour", c.Sunny, func(h *heat) *site.Heat { return &h.sunny }},
		{"hottest", "hottest hour", c.Hottest, func(h *heat) *site.Heat { return &h.hottest }},
	} {
		of := func(pick func(h *site.Heat) site.Value) func(int) site.Value {
			return b.ofHeat(func(h *heat) site.Value { return pick(at.pick(h)) })
		}
		b.row(s, at.id+"_cell", at.label+": cell temperature", site.Celsius, b.cellFormula(at.hour), false, of(func(h *site.Heat) site.Value { return h.Cell }))
		b.row(s, at.id+"_power", at.label+": power of a module by γ", site.Watt, "Pmax × G/1000 × (1 + γ (T - 25))", true, of(func(h *site.Heat) site.Value { return h.Power }))
		b.row(s, at.id+"_model", at.label+": the same by the single-diode model", site.Watt, "De Soto et al. 2006", false, of(func(h *site.Heat) site.Value { return h.Model }))
		b.row(s, at.id+"_loss", at.label+": effect of temperature on power", site.Percent, "γ (T - 25)", true, of(func(h *site.Heat) site.Value { return h.Loss }))
		b.row(s, at.id+"_isc", at.label+": drift of Isc", site.Ampere, "Isc α (T - 25)", true, of(func(h *site.Heat) site.Value { return h.IscDrift }))
		b.row(s, at.id+"_voc", at.label+": drift of Voc", site.Volt, "Voc β (T - 25)", true, of(func(h *site.Heat) site.Value { return h.VocDrift }))
	}
	b.row(s, "span_isc", "record low to hottest hour: Isc moves by", site.Ampere, "Isc α ΔT at 1000 W/m2", false, b.ofHeat(func(h *heat) site.Value { return h.isc }))
	b.row(s, "span_voc", "record low to hottest hour: Voc moves by", site.Volt, "Voc β ΔT at 1000 W/m2", false, b.ofHeat(func(h *heat) site.Value { return h.voc }))
	b.row(s, "nominal_printed", "power at NMOT or NOCT, as printed", site.Watt, "", true, b.ofHeat(func(h *heat) site.Value { return h.printed }))
	b.row(s, "nominal", "power at NMOT or NOCT, by γ", site.Watt, "0.8 Pmax (1 + γ (NMOT - 25))", true, b.ofHeat(func(h *heat) site.Value { return h.calculated }))
	if b.Site.Target > 0 || b.Site.Area != nil {
		for _, a := range []struct {
			id, label string
			pick      func(h *heat) site.Value
		}{
			{"hottest_array", "hottest hour: power of all modules", func(h *heat) site.Value { return h.hottest.Power }},
			{"nominal_array", "power of all modules at NMOT or NOCT", func(h *heat) site.Value { return h.calculated }},
		} {
			b.row(s, a.id, a.label, site.Installed, "modules × power of one, by γ", false, func(i int) site.Value {
				return nominal(a.pick(&b.heat[i]).Product(b.roof[i].count))
			})
		}
	}
	b.row(s, "year_cell", "year: mean cell temperature, weighted with the light", site.Celsius, "Σ E T / Σ E", false, b.ofHeat(func(h *heat) site.Value { return h.year.Cell }))
	b.row(s, "year_effect", "year: effect of temperature on energy", site.Percent, "Σ E γ (T - 25) / Σ E", true, b.ofHeat(func(h *heat) site.Value { return h.year.Effect }))
	b.unlike(s)
	if c.Hourly {
		s.Notes = append(s.Notes, "The year is weighted with the light on the horizontal plane, which stands in for the modules' own.")
	}
	return s
}

// unlike takes the verdicts back where one module's temperature stands on NMOT and the first one's on NOCT: two measurements, some
// kelvin apart for the same module, so that a difference tells nothing of the modules.
func (b *builder) unlike(s *Section) {
	by := func(i int) string { return b.Options[i].TemperatureBy(b.Site.Climate.Hottest, b.Site.Mounting) }
	for i := range b.Options {
		if by(i) == "" || by(0) == "" || by(i) == by(0) {
			continue
		}
		for _, r := range s.Rows {
			if d := r.Cells[i].Difference; d != nil && d.Verdict != "" {
				d.Verdict = fmt.Sprintf("not judged: %s against %s", by(i), by(0))
			}
		}
		s.Notes = append(s.Notes, fmt.Sprintf("%s's sheet prints %s, A's %s: two measurements, some kelvin apart for one and the same module. Their temperatures compare only roughly.", b.names[i], by(i), by(0)))
	}
}

// cellFormula says how the cell temperature was found.
func (b *builder) cellFormula(h site.Hour) string {
	switch m := b.Site.Mounting; {
	case h.Module != nil:
		return "given"
	case m.Faiman != nil:
		return "Faiman 2008: ambient + G / (u0 + u1 v)"
	case m.Sandia != nil:
		return "King et al. 2004: ambient + G exp(a + b v) + G/1000 ΔT"
	case h.Wind == nil:
		return "ambient + (NMOT - 20) G/800 (Ross)"
	}
	return "NREL/TP-6A20-67399, section 10.6: ambient + (NMOT - 20) G/800 × 9.5/(5.7 + 3.8 × 0.51 v); NOCT less the energy that leaves as electricity"
}
