package site

import "pvtally/rules/physics"

// Fuse is the check of overcurrent protection for parallel strings of one module; currents in A.
type Fuse struct {
	Isc     Value  // one string's, for a bifacial module with light from behind
	Rear    string // how the light from behind was counted, "" for one-sided modules
	Circuit Value  // 1.25 Isc: maximum circuit current of a string, NEC 690.8(A)
	NEC     Value  // smallest standard fuse of at least 1.25 × 1.25 Isc, NEC 690.8(B), 690.9
	NECFits Value  // 1 where that is at most the module's maximum series fuse, else 0
	Lowest  Value  // 1.5 Isc, and
	Highest Value  // the lower of 2.4 Isc and the module's maximum: between the two lies the fuse of IEC 62548
	IEC     Value  // smallest standard fuse between the two
	Reverse Value  // what the other strings may drive through a faulty one: (strings - 1) × 1.25 Isc
	Needed  Value  // 1 where that exceeds the module's maximum, else 0
}

// standardFuses are the ratings in A of NEC 240.6 that occur in strings (as cited elsewhere); IEC 60269-6 has them too, among others.
var standardFuses = []float64{10, 15, 20, 25, 30, 35, 40, 45, 50, 60}

// Factors of NEC 690.8: irradiance above 1000 W/m2, and continuous duty.
const (
	necIrradiance = 1.25
	necContinuous = 1.25
)

// Factors of IEC 62548:2016, 6.5 (from memory): 1.5 Isc < In < 2.4 Isc.
const (
	iecLowest  = 1.5
	iecHighest = 2.4
)

// Fused checks the module for a count of strings on one input; 0 strings leaves out what depends on it.
func (m *Module) Fused(strings int) Fuse {
	var f Fuse
	f.Isc, f.Rear = m.designIsc()
	f.Circuit = f.Isc.Times(necIrradiance)
	f.NEC = nextFuse(f.Circuit.Times(necContinuous), None("no end"))
	f.NECFits = compare(f.NEC, m.Fuse, func(fuse, limit float64) bool { return fuse <= limit })
	f.Lowest, f.Highest = f.Isc.Times(iecLowest), least(f.Isc.Times(iecHighest), m.Fuse)
	if !m.Fuse.Known() {
		f.Highest = m.Fuse
	}
	f.IEC = nextFuse(f.Lowest, f.Highest)
	if !f.Highest.Known() {
		f.IEC = f.Highest
	}
	if strings < 1 {
		f.Reverse = None("the count of parallel strings is not given")
	} else {
		f.Reverse = f.Circuit.Times(float64(strings - 1))
	}
	f.Needed = compare(f.Reverse, m.Fuse, func(reverse, limit float64) bool { return reverse > limit })
	return f
}

// designIsc is one string's Isc. Of a bifacial module it is the one with 135 W/m2 behind (BNPI, IEC 61215-1:2021): as printed, else by
// the bifaciality.
func (m *Module) designIsc() (isc Value, rear string) {
	switch {
	case m.IscBNPI.Known():
		return m.IscBNPI, "as printed for BNPI, 135 W/m2 behind"
	case m.Bifaciality.Known() && m.Bifaciality.V > 0 && m.Bifaciality.V <= 100:
		gain := physics.EquivalentIrradiance(m.Bifaciality.V/100, physics.BNPIRear) / physics.STCIrradiance
		return m.Isc.Times(gain), "Isc × (1 + bifaciality × 135/1000)"
	}
	return m.Isc, ""
}

// nextFuse is the smallest standard fuse from a current up to a limit.
func nextFuse(from, limit Value) Value {
	if !from.Known() {
		return from
	}
	for _, rating := range standardFuses {
		if rating >= from.V-1e-9 && (!limit.Known() || rating <= limit.V) {
			return Exactly(rating)
		}
	}
	if limit.Known() {
		return None("no standard fuse lies between %.3g A and %.3g A", from.V, limit.V)
	}
	return None("no standard fuse of strings reaches %.3g A", from.V)
}

func compare(a, b Value, holds func(a, b float64) bool) Value {
	if why := Missing(a, b); why != "" {
		return None("%s", why)
	}
	if holds(a.V, b.V) {
		return Exactly(1)
	}
	return Exactly(0)
}
