package site

import "fmt"

// Site is where the modules are to stand. What is zero or nil is not given.
type Site struct {
	Name           string
	Target         float64 // W at STC
	Area           *Area
	Racking        Racking
	ModulesPerUnit int // of module-level electronics; 0 where there is none
	Climate        Climate
	Mounting       Mounting
	Window         Window
}

// Bound is a number of a site with what it may be.
type Bound struct {
	Name   string
	Value  float64
	Lo, Hi float64
}

// Check is an error that names the number, what it is and what it may be.
func (b Bound) Check() error {
	if b.Value >= b.Lo && b.Value <= b.Hi {
		return nil
	}
	return fmt.Errorf("%s is %g, it may be %g to %g", b.Name, b.Value, b.Lo, b.Hi)
}

// Limits within which a site makes sense; beyond them it is a slip of unit or sign.
const (
	MaxTarget = 1e9   // W
	MaxSide   = 10000 // m
	MinSide   = 0.1   // m
)

// Names are as in the site file, so that a message leads to the line.
func (h Hour) bounds(name string) []Bound {
	list := []Bound{
		{name + ".ambient_c", h.Ambient, -90, 65},
		{name + ".irradiance_w_m2", h.Irradiance, 0, 1500},
	}
	if h.Wind != nil {
		list = append(list, Bound{name + ".wind_m_s", *h.Wind, 0, 60})
	}
	if h.Module != nil {
		list = append(list, Bound{name + ".module_c", *h.Module, -90, 130})
	}
	return list
}

// Check finds the first number of a site that makes no sense.
func (s *Site) Check() error {
	var list []Bound
	add := func(name string, value, lo, hi float64) { list = append(list, Bound{name, value, lo, hi}) }
	if s.Target != 0 {
		add("target_w", s.Target, 1, MaxTarget)
	}
	if a := s.Area; a != nil {
		add("area.width_m", a.Width, MinSide, MaxSide)
		add("area.depth_m", a.Depth, MinSide, MaxSide)
		for _, edge := range []struct {
			name string
			v    float64
		}{{"eaves_m", a.Eaves}, {"ridge_m", a.Ridge}, {"left_m", a.Left}, {"right_m", a.Right}} {
			add("area.setback."+edge.name, edge.v, 0, MaxSide)
		}
	}
	r := s.Racking
	add("racking.gap_mm", 1000*r.Gap, 0, 5000)
	add("racking.row_gap_mm", 1000*r.RowGap, 0, 50000)
	add("racking.rails_per_row", float64(r.RailsPerRow), 0, 10)
	add("racking.overhang_mm", 1000*r.Overhang, 0, 5000)
	add("racking.kg_per_m", r.MassPerMetre, 0, 100)
	add("electronics.modules_per_unit", float64(s.ModulesPerUnit), 0, 100)
	if low := s.Climate.RecordLow; low != nil {
		add("record_low_c", *low, -90, 60)
	}
	list = append(list, s.Climate.Hottest.bounds("hottest")...)
	list = append(list, s.Climate.Sunny.bounds("sunny")...)
	if m := s.Mounting; m.Standoff != nil {
		add("mounting.standoff_mm", *m.Standoff, 0, 5000)
	} else if m.Faiman != nil {
		add("mounting.u0_w_m2_k", m.Faiman.U0, 1, 200)
		add("mounting.u1_w_s_m3_k", m.Faiman.U1, 0, 100)
	}
	list = append(list, s.Window.bounds()...)
	for _, b := range list {
		if err := b.Check(); err != nil {
			return err
		}
	}
	if a := s.Area; a != nil {
		if w, d := a.Inner(); w <= 0 || d <= 0 {
			return fmt.Errorf("the setbacks leave nothing of an area of %g m × %g m", a.Width, a.Depth)
		}
	}
	if w := s.Window; w.TrackMax > 0 && w.TrackMin > w.TrackMax {
		return fmt.Errorf("strings.track_min_v is %g, above strings.track_max_v of %g", w.TrackMin, w.TrackMax)
	}
	return nil
}

func (w Window) bounds() []Bound {
	list := []Bound{{"strings.parallel", float64(w.Parallel), 0, 1000}}
	for _, v := range []struct {
		name string
		v    float64
	}{{"max_voltage_v", w.Limit}, {"track_min_v", w.TrackMin}, {"track_max_v", w.TrackMax}} {
		if v.v != 0 {
			list = append(list, Bound{"strings." + v.name, v.v, 1, 5000})
		}
	}
	return list
}

// Check finds a price that makes no sense.
func (p Prices) Check() error {
	for _, b := range []Bound{
		{"rail_per_m", p.RailPerMetre, 0, maxPrice}, {"racking_per_module", p.RackingPerModule, 0, maxPrice},
		{"electronics_per_unit", p.ElectronicsUnit, 0, maxPrice}, {"labour_per_module", p.LabourPerModule, 0, maxPrice}, {"fixed", p.Fixed, 0, maxPrice},
	} {
		if err := b.Check(); err != nil {
			return err
		}
	}
	return nil
}

// CheckModule finds a module's price that makes no sense.
func CheckModule(name string, price float64) error {
	return Bound{fmt.Sprintf("the price of %q", name), price, 0, maxPrice}.Check()
}

const maxPrice = 1e9
