package compare

import (
	"fmt"

	"pvtally/rules/site"
)

// given lists what the figures stand on, with where each comes from.
func (b *builder) given() []Given {
	s := b.Site
	var list []Given
	origin := func(name, otherwise string) string {
		if s.given[name] {
			return givenOrigin
		}
		return otherwise
	}
	value := func(id, label string, v float64, u site.Unit, decimals int, from string) {
		as := b.of(u)
		list = append(list, Given{ID: id, Label: label, Value: trimmed(as.of(v), decimals), Unit: as.sign, Origin: from})
	}
	text := func(id, label, words, from string) {
		list = append(list, Given{ID: id, Label: label, Text: words, Origin: from})
	}
	if s.Name != "" {
		text("name", "site", s.Name, givenOrigin)
	}
	if s.Target > 0 {
		value("target", "target power", s.Target, site.Watt, 1, givenOrigin)
	}
	if a := s.Area; a != nil {
		value("area_width", "area along the eaves", a.Width, site.Metre, 2, givenOrigin)
		value("area_depth", "area up the slope", a.Depth, site.Metre, 2, givenOrigin)
		for _, edge := range []struct {
			id string
			v  float64
		}{{"eaves", a.Eaves}, {"ridge", a.Ridge}, {"left", a.Left}, {"right", a.Right}} {
			if edge.v == 0 {
				continue
			}
			value("setback_"+edge.id, "free strip, "+edge.id, edge.v, site.Metre, 2, givenOrigin)
		}
	}
	if r := s.Racking; s.Target > 0 || s.Area != nil {
		value("gap", "gap between modules of a row", 1000*r.Gap, site.Millimetre, 2, origin("racking.gap_mm", assumedOrigin))
		value("row_gap", "gap between rows", 1000*r.RowGap, site.Millimetre, 2, origin("racking.row_gap_mm", assumedOrigin))
		value("rails_per_row", "rails under each row", float64(r.RailsPerRow), site.Count, 0, origin("racking.rails_per_row", assumedOrigin))
		value("overhang", "overhang of a rail at each end", 1000*r.Overhang, site.Millimetre, 2, origin("racking.overhang_mm", assumedOrigin))
		if r.MassPerMetre > 0 {
			list = append(list, Given{ID: "rail_mass", Label: "mass of a rail", Value: trimmed(r.MassPerMetre, 3), Unit: "kg/m", Origin: givenOrigin})
		}
		if s.ModulesPerUnit > 0 {
			value("modules_per_unit", "modules per electronics unit", float64(s.ModulesPerUnit), site.Count, 0, givenOrigin)
		}
	}
	c := s.Climate
	climate := s.year
	if climate == inventedClimate && !s.given["climate"] {
		climate += ", assumed"
	}
	text("climate", "climate", fmt.Sprintf("%s (%s)", c.Name, c.About), climate)
	if c.RecordLow != nil {
		value("record_low", "record low", *c.RecordLow, site.Celsius, 1, origin("record_low_c", s.year))
	} else {
		text("record_low", "record low", "not given", assumedOrigin)
	}
	for _, h := range []struct {
		id, label string
		hour      site.Hour
	}{{"sunny", "sunny hour", c.Sunny}, {"hottest", "hottest hour", c.Hottest}} {
		from := origin(h.id, s.year)
		value(h.id+"_irradiance", h.label+": irradiance", h.hour.Irradiance, site.Irradiance, 0, from)
		if h.hour.Module != nil {
			value(h.id+"_module", h.label+": cell temperature", *h.hour.Module, site.Celsius, 1, from)
			continue
		}
		value(h.id+"_ambient", h.label+": air", h.hour.Ambient, site.Celsius, 1, from)
		if h.hour.Wind != nil {
			value(h.id+"_wind", h.label+": wind at 10 m", *h.hour.Wind, site.MetrePerSec, 1, from)
		}
	}
	text("mounting", "mounting", b.mountingWords(), origin("mounting", assumedOrigin))
	for _, v := range []struct {
		id, label string
		v         float64
	}{{"max_voltage", "highest system voltage", s.Window.Limit}, {"track_min", "tracking window, lower end", s.Window.TrackMin}, {"track_max", "tracking window, upper end", s.Window.TrackMax}} {
		if v.v > 0 {
			value(v.id, v.label, v.v, site.Volt, 1, givenOrigin)
		}
	}
	if n := s.Window.Parallel; n > 0 {
		value("parallel", "strings on one input", float64(n), site.Count, 0, givenOrigin)
	}
	return append(list, b.givenPrices()...)
}

func (b *builder) mountingWords() string {
	switch m := b.Site.Mounting; {
	case m.Standoff != nil:
		return fmt.Sprintf("%s from the roof: NMOT or NOCT and %s", b.show(*m.Standoff, site.Millimetre), b.show(site.StandoffRise(*m.Standoff), site.Kelvin))
	case m.Faiman != nil:
		return fmt.Sprintf("Faiman's model, u0 %g W/m2/K, u1 %g W s/m3/K", m.Faiman.U0, m.Faiman.U1)
	case m.Sandia != nil:
		for _, k := range sandia {
			if k.mount == m.Sandia {
				return "Sandia's model, " + k.name
			}
		}
	}
	return "open rack: the sheet's NMOT or NOCT"
}

func (b *builder) givenPrices() []Given {
	if b.Prices == nil {
		return nil
	}
	var list []Given
	for _, p := range []struct {
		id, label string
		v         float64
		per       string
	}{
		{"rail", "price of rails", b.Prices.RailPerMetre, "/m"}, {"racking", "price of racking", b.Prices.RackingPerModule, "/module"},
		{"electronics", "price of electronics", b.Prices.ElectronicsUnit, "/unit"}, {"labour", "price of labour", b.Prices.LabourPerModule, "/module"},
		{"fixed", "fixed cost", b.Prices.Fixed, ""},
	} {
		if p.v > 0 {
			list = append(list, Given{ID: "price_" + p.id, Label: p.label, Value: number(p.v, 2), Unit: b.currency + p.per, Origin: givenOrigin})
		}
	}
	return list
}
