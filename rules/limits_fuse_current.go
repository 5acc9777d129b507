package rules

import (
	"fmt"
	"slices"
)

// fuseSizes are the standard ratings of string fuses, A.
var fuseSizes = []float64{1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 16, 20, 25, 30, 32, 35, 40, 45, 50, 60}

var limitsFuseCurrent = &Rule{
	ID:      "limits/fuse-current",
	Title:   "the maximum series fuse carries the module's current",
	Why:     "A fuse of less than 1.25 times Isc could blow in the sun by itself; one far above protects nothing. A sheet whose fuse suits another current has the fuse of another module, or a misprinted Isc.",
	Formula: "fuse ≥ 1.25 Isc; usual 1.5 Isc ≤ fuse ≤ 2.6 Isc, a standard size",
	Sources: []Source{
		{"NEC 690.8 and 690.9; IEC 62548:2016 clause 6.5", "secondary"},
		{"24 of 29 real sheets lie within 1.5…2.6 Isc", "calculated"},
	},
	Levels: []Threshold{{Note, "outside 1.5 to 2.6 Isc, or no standard size"}, {Warning, "above 5 Isc"}, {Error, "below 1.25 Isc"}},
	Settings: []Setting{
		{"least", 1.25, "times Isc", "below it the finding is an error"},
		{"usual_lo", 1.5, "times Isc", "lower end of the usual"},
		{"usual_hi", 2.6, "times Isc", "upper end of the usual"},
	},
	Needs:   []string{"limits.series_fuse_a", "models[].stc.isc_a"},
	Caution: "The sheet's own limits, local code and a licensed professional decide; do not choose protection from a value in question.",
	Check: func(p *Pass) {
		fuse := p.value(p.Sheet.Limits.SeriesFuse, "limits", "series_fuse_a", -1, -1)
		if !fuse.Printed() {
			return
		}
		// the class with the highest current decides
		var isc *Value
		for i := range p.stc {
			if v := &p.stc[i].Isc; v.Printed() && (isc == nil || v.V > isc.V) {
				isc = v
			}
		}
		least, lo, hi := p.Setting("least"), p.Setting("usual_lo"), p.Setting("usual_hi")
		report := func(l Level, why string) {
			f := Finding{Message: fmt.Sprintf("maximum series fuse %s for Isc %s is %s times Isc, %s", fuse, isc, around(fuse.V/isc.V), why), Implied: []string{around(lo * isc.V), around(hi * isc.V)}}
			p.Report(l, f, &fuse, isc)
		}
		switch {
		case isc == nil || isc.V <= 0:
		case fuse.Hi < least*isc.Lo:
			report(Error, "less than the "+around(least)+" times that it must carry")
			return
		case fuse.Lo > 5*isc.Hi:
			report(Warning, "too much to protect the module")
			return
		case fuse.Hi < lo*isc.Lo || fuse.Lo > hi*isc.Hi:
			report(Note, fmt.Sprintf("usual is %s to %s times", around(lo), around(hi)))
			return
		}
		if !slices.Contains(fuseSizes, fuse.V) {
			p.Report(Note, Finding{Message: fmt.Sprintf("maximum series fuse %s is no standard size", fuse)}, &fuse)
		}
	},
}
