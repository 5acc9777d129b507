package rules

import "fmt"

var limitsReverseCurrent = &Rule{
	ID:      "limits/reverse-current",
	Title:   "the reverse current rating is not below the fuse",
	Why:     "The fuse lets its rated current flow back through a faulty module for as long as it likes: the module must stand it. The test of IEC 61730-2 uses 1.35 times the rating.",
	Formula: "reverse current ≥ maximum series fuse",
	Sources: []Source{{"IEC 61730-2 MST 26", "secondary"}, {"All five real sheets that print both print them equal", "calculated"}},
	Levels:  []Threshold{{Warning, "the reverse current is below the fuse"}},
	Needs:   []string{"limits.reverse_current_a", "limits.series_fuse_a"},
	Caution: "The sheet's own limits, local code and a licensed professional decide; do not choose protection from a value in question.",
	Check: func(p *Pass) {
		l := &p.Sheet.Limits
		reverse, fuse := p.value(l.ReverseCurrent, "limits", "reverse_current_a", -1, -1), p.value(l.SeriesFuse, "limits", "series_fuse_a", -1, -1)
		if reverse.Printed() && fuse.Printed() && reverse.Hi < fuse.Lo {
			p.Report(Warning, Finding{Message: fmt.Sprintf("reverse current %s is below the maximum series fuse %s", reverse, fuse), Implied: []string{fuse.text}}, &reverse, &fuse)
		}
	},
}
