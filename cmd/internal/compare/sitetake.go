package compare

import (
	"fmt"
	"slices"
	"strings"

	"pvtally/rules/physics"
	"pvtally/rules/site"
)

// set takes a number that is given.
func set[T any](s *Site, to *T, from *T, name string) {
	if from != nil {
		*to = *from
		s.given[name] = true
	}
}

func (s *Site) place(f *siteFile) error {
	if f.Target != nil && *f.Target == 0 {
		return fmt.Errorf("target_w is 0: a target of nothing needs no module")
	}
	set(s, &s.Target, f.Target, "target_w")
	if a := f.Area; a != nil {
		if a.Width == nil || a.Depth == nil {
			return fmt.Errorf("/area: it needs width_m (along the eaves) and depth_m (up the slope)")
		}
		s.Area = &site.Area{Width: *a.Width, Depth: *a.Depth, Eaves: a.Setback.Eaves, Ridge: a.Setback.Ridge, Left: a.Setback.Left, Right: a.Setback.Right}
		s.given["area"] = true
	}
	if r := f.Racking; r != nil {
		for _, mm := range []struct {
			to   *float64
			from *float64
			name string
		}{{&s.Racking.Gap, r.Gap, "gap_mm"}, {&s.Racking.RowGap, r.RowGap, "row_gap_mm"}, {&s.Racking.Overhang, r.Overhang, "overhang_mm"}} {
			if mm.from != nil {
				*mm.to = *mm.from / 1000
				s.given["racking."+mm.name] = true
			}
		}
		set(s, &s.Racking.RailsPerRow, r.RailsPerRow, "racking.rails_per_row")
		set(s, &s.Racking.MassPerMetre, r.MassPerMetre, "racking.kg_per_m")
	}
	if f.Electronics != nil {
		set(s, &s.ModulesPerUnit, &f.Electronics.ModulesPerUnit, "electronics.modules_per_unit")
	}
	return nil
}

// hours are the two hours that a site may set instead of its climate's.
func (s *Site) hours(f *siteFile) error {
	if f.RecordLow != nil {
		s.Climate.RecordLow, s.given["record_low_c"] = f.RecordLow, true
	}
	for _, h := range []struct {
		to   *site.Hour
		from *hourFile
		name string
	}{{&s.Climate.Hottest, f.Hottest, "hottest"}, {&s.Climate.Sunny, f.Sunny, "sunny"}} {
		if h.from == nil {
			continue
		}
		if h.from.Module == nil && h.from.Ambient == nil {
			return fmt.Errorf("/%s: it needs ambient_c, or module_c where the cell's temperature is known", h.name)
		}
		set(s, &h.to.Ambient, h.from.Ambient, h.name)
		set(s, &h.to.Irradiance, h.from.Irradiance, h.name)
		h.to.Wind, h.to.Module = h.from.Wind, h.from.Module
		s.given[h.name] = true
	}
	return nil
}

type sandiaMount struct {
	name  string
	mount *physics.SandiaMount
}

// sandia are the mountings of physics.SandiaMount by name.
var sandia = []sandiaMount{
	{"glass-glass-open-rack", &physics.GlassGlassOpenRack}, {"glass-glass-close-mount", &physics.GlassGlassCloseMount},
	{"glass-polymer-open-rack", &physics.GlassPolymerOpenRack}, {"glass-polymer-insulated-back", &physics.GlassPolymerInsulatedTop},
}

func (s *Site) mounting(f *siteFile) error {
	m := f.Mounting
	if m == nil {
		return nil
	}
	s.given["mounting"] = true
	kinds := 0
	if m.Standoff != nil {
		kinds++
		s.Mounting.Standoff = m.Standoff
	}
	if m.U0 != nil || m.U1 != nil {
		kinds++
		if m.U0 == nil || m.U1 == nil {
			return fmt.Errorf("/mounting: u0_w_m2_k and u1_w_s_m3_k go together")
		}
		s.Mounting.Faiman = &site.Faiman{U0: *m.U0, U1: *m.U1}
	}
	if m.Sandia != nil {
		kinds++
		i := slices.IndexFunc(sandia, func(k sandiaMount) bool { return k.name == *m.Sandia })
		if i < 0 {
			var names []string
			for _, k := range sandia {
				names = append(names, k.name)
			}
			return fmt.Errorf("/mounting/sandia: found %q, allowed: %s", *m.Sandia, strings.Join(names, ", "))
		}
		s.Mounting.Sandia = sandia[i].mount
	}
	if kinds > 1 {
		return fmt.Errorf("/mounting: one of standoff_mm, u0_w_m2_k with u1_w_s_m3_k, and sandia, not several")
	}
	return nil
}

func (s *Site) electrics(f *siteFile) error {
	if f.Strings == nil {
		return nil
	}
	s.given["strings"] = true
	s.Window.Parallel = f.Strings.Parallel
	for _, v := range []struct {
		to   *float64
		from *float64
		name string
	}{{&s.Window.Limit, f.Strings.Limit, "max_voltage_v"}, {&s.Window.TrackMin, f.Strings.TrackMin, "track_min_v"}, {&s.Window.TrackMax, f.Strings.TrackMax, "track_max_v"}} {
		if v.from == nil {
			continue
		}
		if *v.to = *v.from; *v.to == 0 { // zero stands for not given from here on
			return fmt.Errorf("strings.%s is 0: leave it out where there is none", v.name)
		}
	}
	return nil
}
