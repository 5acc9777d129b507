package rules

import (
	"slices"

	"pvtally/schema"
	"pvtally/schema/relate"
)

// Pass is one run of the book over one record: what a rule's check sees and where it reports.
type Pass struct {
	Sheet *schema.Sheet
	facts
	rule  *Rule
	set   []float64 // the rule's settings in their order
	level Level     // what a policy makes of the rule's findings, 0 for nothing
	found []Finding
}

// Setting is a number of the running rule, by its name.
func (p *Pass) Setting(name string) float64 {
	for i := range p.rule.Settings {
		if p.rule.Settings[i].Name == name {
			return p.set[i]
		}
	}
	panic("rule " + p.rule.ID + " has no setting " + name)
}

// Grade is the level of a size by the rule's thresholds note_above, warning_above and error_above; 0 for none.
func (p *Pass) Grade(size float64) (l Level) {
	for i, s := range p.rule.Settings {
		if g := gradeOf(s.Name); g > l && size > p.set[i] {
			l = g
		}
	}
	return l
}

// Report adds a finding on the printed values, the judged one first: model, pointers and literal come from them. What is no number
// (a certificate, a refusal of the reader) comes in f.Fields.
func (p *Pass) Report(l Level, f Finding, values ...*Value) {
	if l == 0 {
		return
	}
	f.Rule, f.Level, f.Caution = p.rule.ID, l, p.rule.Caution
	if p.level != 0 {
		f.Level = p.level
	}
	for _, v := range values {
		if !v.Printed() {
			continue
		}
		if len(f.Fields) == 0 {
			f.Printed = v.text
			if f.Model == "" && v.at.model >= 0 {
				f.Model = p.modelName(v.at.model)
			}
		}
		if at := v.Pointer(); !slices.Contains(f.Fields, at) {
			f.Fields = append(f.Fields, at)
		}
	}
	p.found = append(p.found, f)
}

// Compare is the project's one comparison, for a printed value.
func Compare(v *Value, expected relate.Interval) relate.Gap {
	return relate.Compare(v.Interval, v.V, expected)
}

// apart fills a finding's figures from a gap.
func apart(g relate.Gap, expected relate.Interval, message string) Finding {
	total := Percent(g.Pct + g.RoundingPct)
	return Finding{
		Message:      message + ": " + total.String() + " % apart, rounding explains " + Percent(g.RoundingPct).String() + " %",
		Implied:      span(expected),
		DeviationPct: total,
		RoundingPct:  Percent(g.RoundingPct),
	}
}

func (p *Pass) modelName(i int) string { return p.Sheet.Models[i].Name }
