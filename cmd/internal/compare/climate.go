package compare

import (
	"fmt"
	"strings"

	"pvtally/rules/site"
)

// climate takes the year from one of three places: an invented climate, a weather file, twelve months.
func (s *Site) climate(f *siteFile, open func(string) ([]byte, error)) error {
	named := 0
	if f.Climate != nil {
		named++
		c, ok := site.FindClimate(*f.Climate)
		if !ok {
			var names []string
			for _, c := range site.Climates {
				names = append(names, c.Name)
			}
			return fmt.Errorf("/climate: found %q, allowed: %s", *f.Climate, strings.Join(names, ", "))
		}
		s.Climate = c
		s.given["climate"] = true
	}
	if f.Weather != nil {
		named++
		data, err := open(*f.Weather)
		if err != nil {
			return err
		}
		w, err := ParseWeather(data)
		if err != nil {
			return fmt.Errorf("weather file %q: %w", *f.Weather, err)
		}
		s.Climate, s.year = site.FromYear(w.Place, w.Says, w.Year, true), weatherFile
		s.given["weather"] = true
	}
	if f.Months != nil {
		named++
		if err := s.months(f.Months); err != nil {
			return err
		}
	}
	if named > 1 {
		return fmt.Errorf("one of climate, weather and months, not several")
	}
	return nil
}

func (s *Site) months(list []monthFile) error {
	if len(list) != 12 {
		return fmt.Errorf("/months: found %d, a year has 12", len(list))
	}
	var year []site.Sample
	for i, m := range list {
		wind := 0.0
		if m.Wind != nil {
			wind = *m.Wind
		}
		for _, b := range []site.Bound{
			{Name: "wind_m_s", Value: wind, Lo: 0, Hi: 60},
			{Name: "ambient_c", Value: m.Ambient, Lo: -60, Hi: 60},
			{Name: "irradiance_w_m2", Value: m.Irradiance, Lo: 0, Hi: 1500},
			{Name: "insolation_kwh_m2", Value: m.Insolation, Lo: 0, Hi: 500},
		} {
			if err := b.Check(); err != nil {
				return fmt.Errorf("/months/%d: %w", i, err)
			}
		}
		year = append(year, site.Sample{Hour: site.Hour{Ambient: m.Ambient, Irradiance: m.Irradiance, Wind: m.Wind}, Energy: m.Insolation})
	}
	s.Climate, s.year = site.FromYear(firstOf(s.Name, "the given site"), "twelve months", year, false), givenOrigin
	s.given["months"] = true
	return nil
}
