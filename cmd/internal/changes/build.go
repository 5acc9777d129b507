package changes

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"pvtally/cmd/internal/report"
	"pvtally/rules"
	"pvtally/rules/revision"
	"pvtally/rules/site"
	"pvtally/schema"
)

// Edition is one side: what it is called, its records, its lines where it is a datasheet.
type Edition struct {
	Name   string
	Sheets []*schema.Sheet
	Pages  []report.Page
}

// Build compares two editions.
func Build(version string, old, new Edition) *Doc {
	d := &Doc{Format: Format, Tool: Tool{"pvtally", version}, Old: old.Name, New: new.Name, Sheets: []Sheet{}}
	for _, p := range pairs(old.Sheets, new.Sheets) {
		d.Sheets = append(d.Sheets, sheetOf(p[0], p[1]))
	}
	if len(old.Pages) > 0 && len(new.Pages) > 0 {
		d.Text, d.Left = moved(old.Pages, new.Pages)
	}
	d.sum()
	return d
}

func (d *Doc) sum() {
	s := &d.Summary
	for _, sheet := range d.Sheets {
		for _, c := range sheet.Changes {
			s.Changes++
			switch c.Effect {
			case revision.Hurts:
				s.Hurts++
			case revision.Depends:
				s.Depends++
			case revision.Helps:
				s.Helps++
			default:
				s.Neutral++
			}
		}
		s.Classes += len(sheet.Classes)
		s.Strings += len(sheet.Strings)
		if sheet.Only != "" {
			s.Changes++
			s.Depends++
		}
	}
	s.Text = len(d.Text) + d.Left
	if s.Strings > 0 {
		d.Caution = site.Caution
	}
}

// pairs matches records by series, then what is left in order; nil stands for none.
func pairs(old, new []*schema.Sheet) (list [][2]*schema.Sheet) {
	rest := slices.Clone(new)
	take := func(i int) *schema.Sheet {
		s := rest[i]
		rest = slices.Delete(rest, i, i+1)
		return s
	}
	partner := make([]*schema.Sheet, len(old))
	for i, s := range old {
		if k := slices.IndexFunc(rest, func(o *schema.Sheet) bool { return o.Series == s.Series }); k >= 0 {
			partner[i] = take(k)
		}
	}
	for i, s := range old {
		if partner[i] == nil && len(rest) > 0 {
			partner[i] = take(0)
		}
		list = append(list, [2]*schema.Sheet{s, partner[i]})
	}
	for _, s := range rest {
		list = append(list, [2]*schema.Sheet{nil, s})
	}
	return list
}

func sheetOf(old, new *schema.Sheet) Sheet {
	switch {
	case old == nil:
		return Sheet{Series: new.Series, Only: "new"}
	case new == nil:
		return Sheet{Series: old.Series, Only: "old"}
	}
	j := revision.Judge(old, new)
	out := Sheet{Series: cmp.Or(new.Series, old.Series), Silent: j.Silent}
	for i := range j.Changes {
		out.Changes = append(out.Changes, changeOf(&j.Changes[i], old, new))
	}
	for _, c := range j.Classes {
		out.Classes = append(out.Classes, Class{c.Name, map[bool]string{true: "old", false: "new"}[c.Gone]})
	}
	for _, s := range j.Strings {
		line := String{Model: s.Model, Limit: s.Limit}
		if s.Now != s.Limit {
			line.Now = s.Now
		}
		for _, f := range s.Falls {
			line.Falls = append(line.Falls, Fall(f))
		}
		out.Strings = append(out.Strings, line)
	}
	return out
}

func changeOf(c *revision.Change, old, new *schema.Sheet) Change {
	out := Change{Key: c.Key, Old: side(c.Old, old), New: side(c.New, new), Effect: c.Effect, Why: c.Why, Strings: c.Strings}
	in, at := new, c.New.Pointer
	if c.New.IsZero() {
		in, at = old, c.Old.Pointer
	}
	out.Name = report.Spoken(in, at)
	if d, ok := schema.Describe(at); ok {
		out.Unit = d.Unit
	}
	if c.Numeric() && c.Delta != 0 {
		decimals := max(c.Old.Number.Decimals(), c.New.Number.Decimals())
		if n, err := schema.ParseNumber(strconv.FormatFloat(c.Delta, 'f', decimals, 64)); err == nil {
			out.Delta = n
		}
		if !math.IsNaN(c.Pct) {
			out.Percent = rules.Percent(c.Pct)
		}
		out.Steps = rules.Percent(c.Steps)
	}
	return out
}

func side(p schema.Printed, s *schema.Sheet) *Printed {
	if p.IsZero() {
		return nil
	}
	e := s.Evidence[p.Pointer]
	return &Printed{p.Text, e.Page, e.Box}
}
