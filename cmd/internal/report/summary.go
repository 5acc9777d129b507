package report

import "pvtally/rules"

// summary counts what a run came to.
type summary struct {
	Sheets   int `json:"sheets"`
	Models   int `json:"models"`
	Errors   int `json:"errors"`
	Warnings int `json:"warnings"`
	Notes    int `json:"notes"`
	Unread   int `json:"unread"`
}

func (s *summary) add(e Entry) {
	if e.Unread != nil {
		s.Unread++
		return
	}
	s.Sheets++
	s.Models += len(e.Sheet.Record.Models)
	for _, f := range e.Sheet.Findings {
		switch f.Level {
		case rules.Error:
			s.Errors++
		case rules.Warning:
			s.Warnings++
		case rules.Note:
			s.Notes++
		}
	}
}
