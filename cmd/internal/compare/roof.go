package compare

import (
	"fmt"
	"slices"

	"pvtally/rules/site"
)

// roof is one option's layout: how many modules the target needs, how many lie, and how.
type roof struct {
	needed                    site.Value // for the target
	count                     site.Value // that are mounted: all further sums stand on it
	best, portrait, landscape site.Layout
	laid                      bool   // best holds a layout
	short                     bool   // the area takes fewer than the target needs
	why                       string // no layout
}

// layRoof counts and lays the modules of one option.
func (b *builder) layRoof(m *site.Module) (r roof) {
	s := &b.Site.Site
	r.needed = site.None("no target is given")
	if s.Target > 0 {
		r.needed = m.Needed(s.Target)
	}
	r.count = r.needed
	if s.Area == nil {
		if !r.needed.Known() {
			return r
		}
		r.best, r.why = m.Row(int(r.needed.V), s.Racking)
		r.laid = r.why == ""
		return r
	}
	wanted := int(1e7) // without a target the area is filled
	if r.needed.Known() {
		wanted = int(r.needed.V)
	} else if s.Target > 0 {
		return r
	}
	r.best, r.portrait, r.landscape, r.why = m.Lay(wanted, *s.Area, s.Racking)
	if r.why == "" && r.best.Used() == 0 {
		r.why = b.tooSmall(m)
	}
	if r.why != "" {
		r.needed, r.count = site.None("%s", r.why), site.None("%s", r.why)
		return r
	}
	r.laid = true
	r.short = r.needed.Known() && r.best.Used() < wanted
	r.count = site.Exactly(float64(r.best.Used()))
	return r
}

// tooSmall says that an area takes no module.
func (b *builder) tooSmall(m *site.Module) string {
	w, d := b.Site.Area.Inner()
	return fmt.Sprintf("the area leaves %s × %s within its setbacks, which takes no module of %s × %s",
		b.show(w, site.Metre), b.show(d, site.Metre), b.showTo(m.Length.V/1000, site.Metre, 3), b.showTo(m.Width.V/1000, site.Metre, 3))
}

// units is the count of module-level electronics.
func (b *builder) units(r roof) site.Value {
	per := float64(b.Site.ModulesPerUnit)
	switch {
	case !r.count.Known():
		return r.count
	case per == 0:
		return site.None("no module-level electronics are given")
	}
	return site.Exactly(float64((int(r.count.V) + int(per) - 1) / int(per)))
}

// rail is the length of all rails in m.
func (r roof) rail() site.Value {
	if !r.laid {
		return site.None("%s", firstOf(r.why, r.count.Why))
	}
	return site.Exactly(r.best.Rail)
}

func firstOf(texts ...string) string {
	for _, t := range texts {
		if t != "" {
			return t
		}
	}
	return ""
}

// power is what is installed, in W at STC.
func (b *builder) power(i int) site.Value { return b.Options[i].Pmax.Product(b.roof[i].count) }

// loadOf is the mass of modules and rails in kg.
func (b *builder) loadOf(i int) site.Value {
	m := b.Options[i].Mass.Product(b.roof[i].count)
	if extra := b.roof[i].rail(); b.Site.Racking.MassPerMetre > 0 {
		return m.Sum(extra.Times(b.Site.Racking.MassPerMetre))
	}
	return m
}

// roofSection is the table of counts and layouts.
func (b *builder) roofSection() *Section {
	s := &Section{ID: "roof", Title: "On the roof"}
	st := &b.Site.Site
	if st.Target == 0 && st.Area == nil {
		s.Notes = append(s.Notes, "Neither a target power nor an area is given: counts, layout and cost are left out (--target, --area).")
		return s
	}
	of := func(pick func(r roof) site.Value) func(int) site.Value {
		return func(i int) site.Value { return pick(b.roof[i]) }
	}
	if st.Target > 0 {
		b.row(s, "needed", "modules for the target", site.Count, "target / Pmax, rounded up", false, of(func(r roof) site.Value { return r.needed }))
	}
	if st.Area != nil {
		fits := func(l func(roof) site.Layout) func(int) site.Value {
			return func(i int) site.Value {
				if why := firstOf(b.roof[i].why, b.roof[i].count.Why); why != "" {
					return site.None("%s", why)
				}
				return site.Exactly(float64(l(b.roof[i]).Fits()))
			}
		}
		b.row(s, "fit_portrait", "modules that fit in portrait", site.Count, "whole columns × whole rows within the setbacks", false, fits(func(r roof) site.Layout { return r.portrait }))
		b.row(s, "fit_landscape", "modules that fit in landscape", site.Count, "the same", false, fits(func(r roof) site.Layout { return r.landscape }))
	}
	b.row(s, "count", "modules mounted", site.Count, "the target's, as far as the area takes them", false, of(func(r roof) site.Value { return r.count }))
	b.row(s, "installed", "installed power at STC", site.Installed, "modules × Pmax", false, func(i int) site.Value { return nominal(b.power(i)) })
	b.words(s, "layout", "layout", func(i int) (string, string) { return b.roof[i].describe() })
	b.row(s, "module_area", "area of the modules", site.SquareMetre, "modules × length × width", false, func(i int) site.Value {
		return nominal(b.Options[i].Area.Product(b.roof[i].count))
	})
	b.row(s, "rail", "rails", site.Metre, fmt.Sprintf("%d under each row, gaps and overhangs with them", st.Racking.RailsPerRow), false, of(roof.rail))
	if st.ModulesPerUnit > 0 {
		b.row(s, "units", "module-level electronics", site.Count, "modules / modules per unit, rounded up", false, of(b.units))
	}
	b.row(s, "load", "mass on the roof", site.Kilogram, "modules, and rails where their mass is given", false, func(i int) site.Value { return nominal(b.loadOf(i)) })
	b.row(s, "load_per_area", "the same per area covered", site.KilogramPerM2, "mass / outer rectangle of the rows", false, func(i int) site.Value {
		r := b.roof[i]
		if w, d := r.best.Size(st.Racking); r.laid && w*d > 0 {
			return nominal(b.loadOf(i).Times(1 / (w * d)))
		}
		return r.rail()
	})
	if slices.ContainsFunc(b.roof, func(r roof) bool { return r.best.Used() > maxDrawn }) {
		s.Notes = append(s.Notes, fmt.Sprintf("A roof of more than %d modules is not drawn.", maxDrawn))
	}
	if st.Area == nil {
		s.Notes = append(s.Notes, "No area is given: rails are those of one long row in portrait (--area).")
	} else if a := st.Area; a.Eaves+a.Ridge+a.Left+a.Right == 0 {
		s.Notes = append(s.Notes, "No setbacks are given: local fire and wind rules usually ask for free edges.")
	}
	return s
}

// nominal drops the interval: sums over many modules do not carry each module's doubt.
func nominal(v site.Value) site.Value {
	if !v.Known() {
		return v
	}
	return site.Exactly(v.V)
}

// describe says how the modules lie.
func (r roof) describe() (text, why string) {
	if !r.laid {
		return "", firstOf(r.why, r.count.Why)
	}
	way := "portrait"
	if r.best.Landscape {
		way = "landscape"
	}
	counts := r.best.Counts
	rows := fmt.Sprintf("%d rows of %d", len(counts), counts[0])
	if last := counts[len(counts)-1]; len(counts) == 1 {
		rows = fmt.Sprintf("1 row of %d", counts[0])
	} else if last != counts[0] {
		rows = fmt.Sprintf("%d rows of %d and %d", len(counts), counts[0], last)
	}
	return rows + ", " + way, ""
}
