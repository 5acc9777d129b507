package changes

import (
	"fmt"
	"strings"

	"pvtally/rules/revision"
)

// The sentences that every form shows.

// answer is the one sentence at the top.
func (d *Doc) answer() string {
	s := &d.Summary
	if !s.Any() {
		return "Nothing changed: every value and every line of text is the same."
	}
	if s.Changes+s.Classes == 0 {
		return fmt.Sprintf("No value changed; %s of text moved.", plural(s.Text, "place"))
	}
	text := fmt.Sprintf("%s changed: %d to the buyer's harm, %d depending on the site or the stock, %d to the buyer's good, %d without effect.",
		plural(s.Changes, "value"), s.Hurts, s.Depends, s.Helps, s.Neutral)
	if s.Classes > 0 {
		text += fmt.Sprintf(" %s came or went.", plural(s.Classes, "power class"))
	}
	if s.Strings > 0 {
		text += " Strings that used to fit no longer do."
	}
	return text
}

// silent is what is said of a sheet that hides its changes.
const silent = "The sheet does not say that it was revised: revision and date are the old ones."

// value is one side with its unit.
func (c *Change) value(p *Printed) string {
	if p == nil {
		return "not found"
	}
	if c.Unit == "" {
		return p.Text
	}
	return p.Text + " " + c.Unit
}

// size is how large a change is: "+0.70 V, +1.9 %, 70 printed steps"; a change of a share is in points. It is "" for a text.
func (c *Change) size() string {
	if c.Delta.IsZero() {
		return ""
	}
	sign := func(text string) string {
		if strings.HasPrefix(text, "-") {
			return text
		}
		return "+" + text
	}
	unit := c.Unit
	if unit == "%" {
		unit = "points"
	}
	parts := []string{strings.TrimSpace(sign(c.Delta.String()) + " " + unit)}
	if c.Percent != 0 && c.Unit != "°C" { // a share of a temperature means nothing
		parts = append(parts, sign(c.Percent.String())+" %")
	}
	if c.Steps != 0 {
		noun := " printed steps"
		if c.Steps.String() == "1" {
			noun = " printed step"
		}
		parts = append(parts, c.Steps.String()+noun)
	}
	return strings.Join(parts, ", ")
}

// fall says what one class's string loses.
func (s *String) fall(f Fall) string {
	at := fmt.Sprintf("%d °C", f.From)
	if f.From != f.To {
		at = fmt.Sprintf("%d to %d °C", f.From, f.To)
	}
	return fmt.Sprintf("record low %s: %d modules, now %d", at, f.Old, f.New)
}

// limit is the voltage a string was built to.
func (s *String) limit() string {
	if s.Now > 0 {
		return fmt.Sprintf("%g V, now %g V", s.Limit, s.Now)
	}
	return fmt.Sprintf("%g V", s.Limit)
}

// maxFalls is how many spans of record lows are told of one class.
const maxFalls = 5

func (s *String) falls() (list []string) {
	for i, f := range s.Falls {
		if i == maxFalls {
			return append(list, fmt.Sprintf("and at %d more spans of record lows", len(s.Falls)-i))
		}
		list = append(list, s.fall(f))
	}
	return list
}

// with are a sheet's changes of one effect.
func (s *Sheet) with(e revision.Effect) (list []Change) {
	for _, c := range s.Changes {
		if c.Effect == e {
			list = append(list, c)
		}
	}
	return list
}

// only says that one edition lacks a sheet.
func (s *Sheet) only() string {
	name := s.Series
	if name == "" {
		name = "one record"
	}
	if s.Only == "old" {
		return name + " stands only in the old edition."
	}
	return name + " stands only in the new edition."
}

func (c Class) says() string {
	if c.Only == "old" {
		return c.Name + " is gone"
	}
	return c.Name + " is new"
}

func plural(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case strings.HasSuffix(noun, "s"):
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
