package compare

import (
	"fmt"

	"pvtally/rules/site"
)

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
