package compare

import (
	"fmt"

	"pvtally/rules/site"
)

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
