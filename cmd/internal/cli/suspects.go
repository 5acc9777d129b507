package cli

import (
	"slices"

	"pvtally/cmd/internal/policy"
	"pvtally/cmd/internal/report"
	"pvtally/rules"
	"pvtally/rules/diagnose"
)

// diagnosis is what the suspects of a record were found for. It is made where the record is loaded, on many goroutines, before policy and
// baseline have had their say.
type diagnosis struct {
	findings []rules.Finding
	suspects []diagnose.Suspect
}

// diagnose finds the suspects of a record that has just been judged.
func (l *law) diagnose(s *report.Sheet) diagnosis {
	suspects := diagnose.Suspects(s.Record, s.Findings, l.options)
	if suspects == nil {
		return diagnosis{}
	}
	return diagnosis{slices.Clone(s.Findings), suspects}
}

// causes are the suspects as a policy's waivers see them.
func (d diagnosis) causes() (list []policy.Cause) {
	for _, x := range d.suspects {
		c := policy.Cause{Findings: x.Findings}
		for _, cell := range x.Cells {
			c.Cells = append(c.Cells, cell.Field)
		}
		list = append(list, c)
	}
	return list
}

// accuse gives a sheet its suspects. Findings may have come since the diagnosis (across records, from the policy) without changing it;
// where some have gone, what is left is diagnosed anew.
func (l *law) accuse(s *report.Sheet, d diagnosis) {
	now := make([]int, len(d.findings))
	for i := range d.findings {
		f := &d.findings[i]
		now[i] = slices.IndexFunc(s.Findings, func(g rules.Finding) bool {
			return g.Rule == f.Rule && g.Message == f.Message && slices.Equal(g.Fields, f.Fields)
		})
		if now[i] < 0 {
			s.Suspects = diagnose.Suspects(s.Record, s.Findings, l.options)
			return
		}
	}
	for i := range d.suspects {
		for k, f := range d.suspects[i].Findings {
			d.suspects[i].Findings[k] = now[f]
		}
	}
	s.Suspects = d.suspects
}
