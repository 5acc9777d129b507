package report

import (
	"fmt"
	"strings"

	"pvtally/rules"
	"pvtally/rules/diagnose"
	"pvtally/schema"
)

// problem is one thing that is wrong, for the forms that give one line to each: a suspect with all findings it explains, or a finding that
// no suspect explains. A cause is then told once, however many rules it breaks.
type problem struct {
	rules.Finding                   // of a suspect, the gravest of those it explains
	finding       string            // that finding's own message
	suspect       *diagnose.Suspect // nil for a finding alone
	others        []rules.Finding   // what the suspect explains besides
}

// problems are a sheet's: suspects in their order, then what they leave, the gravest first. A finding that two suspects would explain goes to the likelier;
// a suspect that is left with none is a rival's second thought and no problem of its own.
func (s *Sheet) problems() (list []problem) {
	taken := make([]bool, len(s.Findings))
	for i := range s.Suspects {
		x := &s.Suspects[i]
		var own []rules.Finding
		for _, f := range x.Findings {
			if f >= 0 && f < len(taken) && !taken[f] {
				taken[f] = true
				own = append(own, s.Findings[f])
			}
		}
		if len(own) == 0 {
			continue
		}
		worst := 0
		for k := range own {
			if own[k].Level > own[worst].Level {
				worst = k
			}
		}
		p := problem{Finding: own[worst], finding: own[worst].Message, suspect: x, others: append(own[:worst:worst], own[worst+1:]...)}
		p.Implied = nil // of the finding's judged value, which may not be the wrong one
		p.Message = accusation(s, x, own[worst], p.others)
		list = append(list, p)
	}
	for _, i := range gravestFirst(s.Findings) {
		if f := s.Findings[i]; !taken[i] {
			list = append(list, problem{Finding: f, finding: f.Message})
		}
	}
	return list
}

// cells are the values a problem is about, the wrong ones first.
func (p *problem) cells() (pointers []string) {
	if p.suspect != nil {
		for _, c := range p.suspect.Cells {
			pointers = append(pointers, c.Field)
		}
		return pointers
	}
	return p.Fields
}

// accusation says in one sentence which value is wrong, what it would be, and what tells.
func accusation(s *Sheet, x *diagnose.Suspect, main rules.Finding, others []rules.Finding) string {
	var cells []string
	for i, c := range x.Cells {
		if i == maxSuspectCells {
			cells = append(cells, fmt.Sprintf("and %d more", len(x.Cells)-i))
			break
		}
		text := fmt.Sprintf("%s is printed %s", spoken(s.Record, c.Field), c.Printed)
		if !c.WouldBe.IsZero() {
			text += fmt.Sprintf(" and would be %s", c.WouldBe)
		}
		cells = append(cells, text)
	}
	text := strings.Join(cells, "; ") + ": " + mistakes[x.Mistake] + fmt.Sprintf(" (%.0f %% sure)", 100*x.Confidence)
	if x.Because != "" {
		text += ", " + x.Because
	}
	text += ". " + main.Message
	if n := len(others); n > 0 {
		text += fmt.Sprintf(" (and %s of the same cause)", plural(n, "finding"))
	}
	return text
}

// name is the problem's value without positions in the record, and what is printed there.
func (s *Sheet) name(p *problem) (key, printed string) {
	if p.suspect == nil {
		return s.key(p.Finding), p.Printed
	}
	c := p.suspect.Cells[0]
	return schema.Key(s.Record, c.Field), c.Printed.String()
}
