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

func (b *builder) coldSection() *Section {
	s := &Section{ID: "cold", Title: "On the coldest morning, and in strings", Caution: site.Caution}
	b.row(s, "voc_coefficient", "Voc of one module by β", site.Volt, "Voc (1 + β (T - 25)): IEC 62548; NEC 690.7(A)(1)", true, b.ofHeat(func(h *heat) site.Value { return h.cold.Coefficient }))
	b.row(s, "voc_model", "the same by the single-diode model", site.Volt, "De Soto et al. 2006 at 1000 W/m2", false, b.ofHeat(func(h *heat) site.Value { return h.cold.Model }))
	b.row(s, "voc_table", "the same by NEC Table 690.7(A)", site.Volt, b.tableFormula(), true, b.ofHeat(func(h *heat) site.Value { return h.cold.Table }))
	b.row(s, "limit", "highest voltage of the string", site.VoltageLimit, "the site's, or the sheet's where that is lower", false, b.ofHeat(func(h *heat) site.Value { return h.series.Limit }))
	for _, r := range []struct {
		id, label, how string
		pick           func(s *site.Series) site.Value
	}{
		{"most_coefficient", "most in series by β", "limit / Voc, rounded down", func(s *site.Series) site.Value { return s.ByCoefficient }},
		{"most_model", "most in series by the model", "the same", func(s *site.Series) site.Value { return s.ByModel }},
		{"most_table", "most in series by NEC Table 690.7(A)", "the same", func(s *site.Series) site.Value { return s.ByTable }},
		{"most_tracking", "most in series for the tracking window", "its upper end / cold Vmp (the higher of model and γ), rounded down", func(s *site.Series) site.Value { return s.ByTracking }},
		{"most", "most in series: the least of these", "", func(s *site.Series) site.Value { return s.Most }},
		{"fewest", "fewest in series for the tracking window", "its lower end / hot Vmp (the lower of model and γ), rounded up", func(s *site.Series) site.Value { return s.Fewest }},
	} {
		if w := b.Site.Window; r.id == "most_tracking" && w.TrackMax == 0 || r.id == "fewest" && w.TrackMin == 0 {
			continue
		}
		b.row(s, r.id, r.label, site.Count, r.how, false, b.ofHeat(func(h *heat) site.Value { return r.pick(&h.series) }))
	}
	if b.Site.Target > 0 || b.Site.Area != nil {
		b.words(s, "strings", "equal strings for the modules mounted", b.strings)
	}
	if b.Site.Climate.Invented && !b.Site.given["record_low_c"] {
		s.Notes = append(s.Notes, "The record low is that of an invented climate: give the site's own (record_low_c) before any string is sized.")
	}
	return s
}

func (b *builder) tableFormula() string {
	how := "Voc × factor of the table for silicon"
	if low := b.Site.Climate.RecordLow; low != nil {
		if f, ok := site.VoltageFactor(*low); ok {
			how = fmt.Sprintf("Voc × %.2f (%s), silicon", f, b.show(*low, site.Celsius))
		}
	}
	return how
}

// strings says how the mounted modules part.
func (b *builder) strings(i int) (text, why string) {
	count, h := b.roof[i].count, &b.heat[i].series
	if why := site.Missing(count, h.Most); why != "" {
		return "", why
	}
	n, most, fewest := int(count.V), int(h.Most.V), 1
	if h.Fewest.Known() {
		fewest = int(h.Fewest.V)
	}
	switch {
	case most < 1:
		return "", "one module alone exceeds the voltage"
	case most < fewest:
		return "", fmt.Sprintf("no length of string keeps both: at least %d for the tracking window, at most %d for the voltage", fewest, most)
	}
	if s, ok := site.Equal(n, fewest, most); ok {
		if s.Strings == 1 {
			return fmt.Sprintf("1 string of %d", s.Each), ""
		}
		return fmt.Sprintf("%d strings of %d", s.Strings, s.Each), ""
	}
	below, above := site.Nearest(n, fewest, most)
	near := fmt.Sprintf("%d", above)
	if below > 0 {
		near = fmt.Sprintf("%d or %d", below, above)
	}
	return fmt.Sprintf("%d modules make no equal strings of %d to %d: %s would", n, fewest, most, near), ""
}

func (b *builder) fuseSection() *Section {
	s := &Section{ID: "fuse", Title: "Overcurrent protection of parallel strings", Caution: site.Caution}
	of := func(pick func(f *site.Fuse) site.Value) func(int) site.Value {
		return b.ofHeat(func(h *heat) site.Value { return pick(&h.fuse) })
	}
	yes := func(pick func(f *site.Fuse) site.Value, yes, no string) func(int) (string, string) {
		return func(i int) (string, string) {
			v := pick(&b.heat[i].fuse)
			return map[bool]string{true: yes, false: no}[v.V == 1 && v.Known()], v.Why
		}
	}
	b.row(s, "string_isc", "Isc of a string", site.Ampere, "STC; of a bifacial module with 135 W/m2 behind (BNPI, IEC 61215-1:2021)", true, of(func(f *site.Fuse) site.Value { return f.Isc }))
	b.row(s, "circuit", "maximum circuit current of a string", site.Ampere, "1.25 Isc: NEC 690.8(A)", false, of(func(f *site.Fuse) site.Value { return nominal(f.Circuit) }))
	b.row(s, "nec_fuse", "smallest standard fuse by the NEC", site.Rating, "at least 1.25 × 1.25 Isc: NEC 690.8(B), 690.9; sizes of 240.6", false, of(func(f *site.Fuse) site.Value { return f.NEC }))
	b.words(s, "nec_fits", "does the module allow it?", yes(func(f *site.Fuse) site.Value { return f.NECFits }, "yes", "no: it exceeds the maximum series fuse"))
	b.row(s, "iec_lowest", "fuse by IEC 62548, above", site.Ampere, "1.5 Isc", false, of(func(f *site.Fuse) site.Value { return nominal(f.Lowest) }))
	b.row(s, "iec_highest", "fuse by IEC 62548, at most", site.Ampere, "the lower of 2.4 Isc and the maximum series fuse", false, of(func(f *site.Fuse) site.Value { return nominal(f.Highest) }))
	b.row(s, "iec_fuse", "smallest standard fuse by IEC 62548", site.Rating, "", false, of(func(f *site.Fuse) site.Value { return f.IEC }))
	if b.Site.Window.Parallel > 0 {
		b.row(s, "reverse", "what the other strings may drive through a faulty one", site.Ampere, "(strings - 1) × 1.25 Isc", false, of(func(f *site.Fuse) site.Value { return nominal(f.Reverse) }))
		b.words(s, "needed", "is protection of each string needed?", yes(func(f *site.Fuse) site.Value { return f.Needed },
			"yes: it exceeds the maximum series fuse", "not by this current"))
	}
	for i := range b.Options {
		if how := b.heat[i].fuse.Rear; how != "" {
			s.Notes = append(s.Notes, fmt.Sprintf("%s is bifacial; its current: %s.", b.names[i], how))
		}
	}
	return s
}
