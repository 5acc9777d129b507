package site

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestLayByHand: layouts worked out by hand.
func TestLayByHand(t *testing.T) {
	m := &Module{Length: Exactly(1676), Width: Exactly(965)}
	tight := Racking{RailsPerRow: 2}
	for _, c := range []struct {
		name             string
		n                int
		a                Area
		r                Racking
		portrait, lscape int // that fit
		rows             int
		rail             float64
		landscape        bool
	}{
		{"20 on 12 × 4.5 m", 20, Area{Width: 12, Depth: 4.5}, tight, 24, 28, 2, 2 * 20 * 0.965, false},
		{"the same with gaps of 20 mm and edges of 0.3 m", 20, Area{12, 4.5, 0.3, 0.3, 0.3, 0.3}, Racking{Gap: 0.02, RowGap: 0.02, RailsPerRow: 2}, 22, 18, 2, 2 * (20*0.965 + 18*0.02), false},
		{"only landscape takes all", 6, Area{Width: 5.1, Depth: 2}, tight, 5, 6, 2, 2 * 6 * 1.676, true},
		{"exactly its own size", 1, Area{Width: 0.965, Depth: 1.676}, tight, 1, 0, 1, 2 * 0.965, false},
		{"too small", 1, Area{Width: 0.9, Depth: 1.6}, tight, 0, 0, 0, 0, false},
		{"overhangs and three rails", 3, Area{Width: 10, Depth: 2}, Racking{RailsPerRow: 3, Overhang: 0.1}, 10, 10, 1, 3 * (3*0.965 + 0.2), false},
	} {
		best, p, l, why := m.Lay(c.n, c.a, c.r)
		if why != "" || p.Fits() != c.portrait || l.Fits() != c.lscape || len(best.Counts) != c.rows || math.Abs(best.Rail-c.rail) > 1e-9 || best.Landscape != c.landscape {
			t.Errorf("%s: %+v of portrait %d, landscape %d (%s)", c.name, best, p.Fits(), l.Fits(), why)
		}
	}
}

// TestLay: on any area no row leaves the inner area, one more module or row would, and every module lies exactly once.
func TestLay(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 270))
	for range 3000 {
		m := &Module{Length: Exactly(1000 + 1500*rnd.Float64()), Width: Exactly(500 + 900*rnd.Float64())}
		a := Area{1 + 30*rnd.Float64(), 1 + 12*rnd.Float64(), rnd.Float64(), rnd.Float64(), rnd.Float64(), rnd.Float64()}
		r := Racking{Gap: 0.05 * rnd.Float64(), RowGap: 0.5 * rnd.Float64(), RailsPerRow: 2}
		n := 1 + rnd.IntN(60)
		best, p, l, _ := m.Lay(n, a, r)
		width, depth := a.Inner()
		for _, lay := range []Layout{p, l} {
			over := func(columns, rows float64) bool {
				return columns*lay.Along+(columns-1)*r.Gap > width+1e-6 || rows*lay.Up+(rows-1)*r.RowGap > depth+1e-6
			}
			if lay.Fits() > 0 && over(float64(lay.Columns), float64(lay.Rows)) {
				t.Fatalf("%+v stands out of %v × %v", lay, width, depth)
			}
			if !over(float64(lay.Columns+1), 1) || !over(1, float64(lay.Rows+1)) {
				t.Fatalf("%+v leaves room in %v × %v", lay, width, depth)
			}
			if lay.Used() != min(n, lay.Fits()) {
				t.Fatalf("%d of %d lie in %+v", lay.Used(), n, lay)
			}
			if w, d := lay.Size(r); lay.Used() > 0 && (w > width+1e-6 || d > depth+1e-6) {
				t.Fatalf("%v × %v in %v × %v", w, d, width, depth)
			}
		}
		if best.Used() < max(p.Used(), l.Used()) {
			t.Fatal("the better orientation was not taken")
		}
	}
}

// TestNeeded: whole modules; nonsense makes no count.
func TestNeeded(t *testing.T) {
	m := &Module{Pmax: Exactly(270)}
	for target, want := range map[float64]float64{5400: 20, 5400.1: 21, 5399: 20, 1: 1, 270: 1, 270 * 1000: 1000} {
		near(t, "count", m.Needed(target), want, 0)
	}
	for _, target := range []float64{0, -5, math.Inf(1), math.NaN(), 1e30} {
		if v := m.Needed(target); v.Known() {
			t.Errorf("target %v: %v modules", target, v.V)
		}
	}
}

// TestInSeries: the worked module between -10 °C and 65 °C: with 600 V and Voc of 43.13 V (β), 43.09 V (model), 43.66 V (table) 13 in
// series; the window's lower end of 200 V needs 8 of the hot module's 25.40 V (model, between the reference's
// 27.4826 V at 50 °C and 24.0175 V at 75 °C) or 25.71 V (γ).
func TestInSeries(t *testing.T) {
	m := decode(t, []byte(sixtyCells))
	s := m.InSeries(Window{Limit: 600, TrackMin: 200, TrackMax: 480}, Exactly(-10), Exactly(65))
	near(t, "by coefficient", s.ByCoefficient, 13, 0)
	near(t, "by model", s.ByModel, 13, 0)
	near(t, "by table", s.ByTable, 13, 0)
	near(t, "cold Vmp", s.VmpCold, 35.9875, 1e-3) // the model's of the reference; γ gives 35.63
	near(t, "by tracking", s.ByTracking, 13, 0)
	near(t, "hot Vmp", s.VmpHot, 27.4826-0.6*(27.4826-24.0175), 0.02)
	near(t, "fewest", s.Fewest, 8, 0)
	near(t, "most", s.Most, 13, 0)
	// the safer of the bounds rules: 563 V hold 13 by β and the model, 12 by the table
	near(t, "the table rules", m.InSeries(Window{Limit: 563}, Exactly(-10), Exactly(65)).Most, 12, 0)
	near(t, "none at all", m.InSeries(Window{Limit: 40}, Exactly(-10), Exactly(65)).Most, 0, 0)
	m.Sheet.Limits.SystemVoltage = nil
	if s := m.InSeries(Window{}, None("no record low is given"), Exactly(65)); s.Most.Known() || s.Fewest.Known() || s.Limit.Known() {
		t.Error("without a limit and a record low there is no count")
	}
}

// TestEqual: against trying every length.
func TestEqual(t *testing.T) {
	for n := 1; n < 60; n++ {
		for fewest := 0; fewest < 8; fewest++ {
			for most := 0; most < 16; most++ {
				got, ok := Equal(n, fewest, most)
				want := 0
				for each := max(fewest, 1); each <= most; each++ {
					if n%each == 0 {
						want = each
					}
				}
				if ok != (want > 0) || ok && (got.Each != want || got.Each*got.Strings != n) {
					t.Fatalf("%d in %d to %d: %v %v, want %d", n, fewest, most, got, ok, want)
				}
			}
		}
	}
	if b, a := Nearest(23, 8, 13); b != 22 || a != 24 {
		t.Errorf("beside 23: %d and %d, want 22 and 24", b, a)
	}
	if b, a := Nearest(5, 8, 13); b != 0 || a != 8 {
		t.Errorf("beside 5: %d and %d, want 0 and 8", b, a)
	}
}

// TestFused: the smallest fuse of 1.5625 Isc by standard size (as cited elsewhere: up to 9.6 A 15, 12.8 A 20, 16.0 A 25, 19.2 A 30,
// 22.4 A 35) and whether the module's own limit allows it.
func TestFused(t *testing.T) {
	for _, c := range []struct{ isc, fuse float64 }{{9.6, 15}, {9.61, 20}, {12.8, 20}, {12.81, 25}, {16, 25}, {16.1, 30}, {19.2, 30}, {19.3, 35}, {22.4, 35}} {
		m := &Module{Isc: Exactly(c.isc), Fuse: Exactly(25), Bifaciality: None("-"), IscBNPI: None("-")}
		f := m.Fused(3)
		near(t, "fuse", f.NEC, c.fuse, 0)
		near(t, "fits", f.NECFits, map[bool]float64{true: 1}[c.fuse <= 25], 0)
		near(t, "reverse", f.Reverse, 2*1.25*c.isc, 1e-9)
	}
	m := &Module{Isc: Exactly(10), Fuse: Exactly(20), Bifaciality: None("-"), IscBNPI: None("-")}
	near(t, "IEC 62548: 15 A < In < 24 A and at most 20 A", m.Fused(3).IEC, 15, 0)
	near(t, "two strings: the other drives 12.5 A", m.Fused(2).Needed, 0, 0)
	near(t, "three strings: the others drive 25 A", m.Fused(3).Needed, 1, 0)
	m.Fuse = Exactly(12)
	if f := m.Fused(3); f.IEC.Known() || f.NECFits.V != 0 {
		t.Errorf("a module that allows 12 A cannot be fused: %+v", f)
	}
	m.Fuse = None("the maximum series fuse is not printed")
	if f := m.Fused(3); f.IEC.Known() || f.NECFits.Known() || f.Needed.Known() {
		t.Errorf("without the module's limit nothing can be said: %+v", f)
	}
	// IEC 61215-1:2021, BNPI: bifaciality 0.8 makes 1.108 of the current.
	m = &Module{Isc: Exactly(10), Fuse: Exactly(20), Bifaciality: Exactly(80), IscBNPI: None("-")}
	near(t, "bifacial", m.Fused(0).Isc, 11.08, 1e-9)
	m.IscBNPI = Exactly(11.1)
	near(t, "bifacial, printed", m.Fused(0).Isc, 11.1, 0)
}

// TestBill: worked by hand; break-even prices put back into the bill make the totals equal.
func TestBill(t *testing.T) {
	prices := Prices{RailPerMetre: 10, RackingPerModule: 5, ElectronicsUnit: 50, LabourPerModule: 30, Fixed: 500}
	a := NewBill(100, Quantities{Modules: 20, Units: 20, Rail: 40, Power: 5400}, prices)
	b := NewBill(90, Quantities{Modules: 21, Units: 21, Rail: 42, Power: 5460}, prices)
	if got := a.Total(); got != 2000+400+100+1000+600+500 {
		t.Errorf("total %v", got)
	}
	near(t, "per W", a.PerWatt(), 4600.0/5400, 1e-12)
	near(t, "break-even", b.BreakEven(a.Total()), (4600-(420+105+1050+630+500))/21.0, 1e-9)
	for i := range b.Parts {
		v := b.EqualAt(i, a)
		if !v.Known() {
			continue
		}
		x, y := NewBill(90, b.Quantities, prices), NewBill(100, a.Quantities, prices)
		x.Parts[i].Price = v.V
		if i > 0 {
			y.Parts[i].Price = v.V
		}
		if math.Abs(x.Total()-y.Total()) > 1e-6 {
			t.Errorf("%s at %v: %v and %v", b.Parts[i].ID, v.V, x.Total(), y.Total())
		}
	}
	if v := b.EqualAt(5, a); v.Known() {
		t.Error("a fixed cost that both have decides nothing")
	}
	if v := NewBill(1, Quantities{}, prices).BreakEven(1); v.Known() {
		t.Error("no module has no break-even price")
	}
}

// TestCheck: what makes no sense is refused with the name of the number and what it may be.
func TestCheck(t *testing.T) {
	cold, low := -200.0, -12.0
	good := func() Site { return Site{Target: 5400, Area: &Area{Width: 12, Depth: 4.5}, Climate: Climates[0]} }
	s := good()
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		edit func(*Site)
		want string
	}{
		{"negative target", func(s *Site) { s.Target = -1 }, "target_w is -1, it may be 1 to 1e+09"},
		{"area without width", func(s *Site) { s.Area = &Area{Depth: 4} }, "area.width_m is 0, it may be 0.1 to 10000"},
		{"setbacks", func(s *Site) { s.Area = &Area{12, 4.5, 3, 3, 0, 0} }, "the setbacks leave nothing of an area of 12 m × 4.5 m"},
		{"cold", func(s *Site) { s.Climate.RecordLow = &cold }, "record_low_c is -200, it may be -90 to 60"},
		{"window", func(s *Site) { s.Window = Window{TrackMin: 500, TrackMax: 200} }, "strings.track_min_v is 500, above strings.track_max_v of 200"},
		{"voltage", func(s *Site) { s.Window.Limit = -600 }, "strings.max_voltage_v is -600, it may be 1 to 5000"},
		{"sun", func(s *Site) { s.Climate.Hottest.Irradiance = math.NaN() }, "hottest.irradiance_w_m2 is NaN, it may be 0 to 1500"},
	} {
		s := good()
		s.Climate.RecordLow = &low
		c.edit(&s)
		if err := s.Check(); err == nil || err.Error() != c.want {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	if err := (Prices{LabourPerModule: -1}).Check(); err == nil {
		t.Error("a negative price passed")
	}
	if err := CheckModule("x", math.NaN()); err == nil {
		t.Error("a price that is no number passed")
	}
}
