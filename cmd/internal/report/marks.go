package report

import (
	"slices"

	"pvtally/rules"
)

// mark is what a report says of one printed value.
type mark struct {
	level    rules.Level // of the gravest finding it is part of
	judged   bool        // a finding judges this value, or a suspect names it
	suspect  int         // number of the first suspect that names it, from 1; 0 for none
	guess    bool        // that suspect is no more than one of several that could be wrong
	findings []int
}

// likely is the confidence from which a suspect is shown as wrong; below it, as one to ask about.
const likely = 0.5

// wrong tells the values a reader should look at from those that only took part.
func (m *mark) wrong() bool { return m != nil && m.judged && m.level >= rules.Warning }

// marks are the values that suspects and findings speak of, by pointer. Where there are suspects they say which values are wrong; a
// finding that none of them explains says it by the value it judges.
func (s *Sheet) marks() map[string]*mark {
	all := map[string]*mark{}
	at := func(pointer string) *mark {
		if all[pointer] == nil {
			all[pointer] = &mark{}
		}
		return all[pointer]
	}
	explained := map[int]bool{}
	for i, suspect := range s.Suspects {
		for _, f := range suspect.Findings {
			explained[f] = true
		}
		for _, cell := range suspect.Cells {
			m := at(cell.Field)
			m.judged = true
			if m.suspect == 0 {
				m.suspect, m.guess = i+1, suspect.Confidence < likely
			}
			for _, f := range suspect.Findings {
				if f >= 0 && f < len(s.Findings) {
					m.level = max(m.level, s.Findings[f].Level)
				}
			}
		}
	}
	for i, f := range s.Findings {
		for k, pointer := range f.Fields {
			m := at(pointer)
			m.level = max(m.level, f.Level)
			m.judged = m.judged || k == 0 && !explained[i]
			if !slices.Contains(m.findings, i) {
				m.findings = append(m.findings, i)
			}
		}
	}
	return all
}
