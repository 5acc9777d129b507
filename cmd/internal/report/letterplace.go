package report

import (
	"fmt"
	"path"
	"slices"
	"strings"
)

// title names the values of a question: "Vmp at STC, Voc at STC, KR-405".
func (l *letter) title(fields []string) string {
	var names, classes []string
	for _, f := range fields {
		if name := l.words.name(l.sheet, f); !slices.Contains(names, name) {
			names = append(names, name)
		}
		if class, _, ok := splitClass(f); ok && class < len(l.sheet.Models) {
			if name := className(l.sheet, class); !slices.Contains(classes, name) {
				classes = append(classes, name)
			}
		}
	}
	names = l.atMost(names, 4)
	if len(classes) == 1 {
		names = append(names, classes[0])
	}
	return strings.Join(names, ", ")
}

// cellName names one value: "Vmp at STC, KR-405".
func (l *letter) cellName(field string) string {
	name := l.words.name(l.sheet, field)
	if class, _, ok := splitClass(field); ok && class < len(l.sheet.Models) {
		return name + ", " + className(l.sheet, class)
	}
	return name
}

// printedGroup is values of one quantity that stand in one row of the sheet.
type printedGroup struct {
	name, row string
	values    []printedValue
}

type printedValue struct{ class, text string }

// places says where values are printed and how, a row at a time: "Vmp at STC (page 2, row “Vmp [V]”, column KR-405): 41.55 V".
func (l *letter) places(fields []string) (out []string) {
	var groups []printedGroup
	for _, f := range fields {
		n, ok := l.sheet.At(f)
		if !ok {
			continue
		}
		g := printedGroup{name: l.words.name(l.sheet, f), row: l.row(f)}
		v := printedValue{text: l.verbatim(f, n)}
		if class, _, ok := splitClass(f); ok && class < len(l.sheet.Models) {
			v.class = className(l.sheet, class)
		}
		i := slices.IndexFunc(groups, func(o printedGroup) bool { return o.name == g.name && o.row == g.row })
		if i < 0 {
			groups = append(groups, g)
			i = len(groups) - 1
		}
		groups[i].values = append(groups[i].values, v)
	}
	for _, g := range groups {
		out = append(out, l.place(g))
	}
	return l.atMost(out, maxValues)
}

// row is the page and the row's label, as far as they are known.
func (l *letter) row(field string) string {
	e := l.sheet.Evidence[field]
	var at []string
	if e.Page > 0 {
		at = append(at, l.words.say("page", "n", fmt.Sprint(e.Page)))
	}
	if e.Label != "" {
		at = append(at, l.words.say("row", "label", e.Label))
	}
	return strings.Join(at, ", ")
}

func (l *letter) place(g printedGroup) string {
	colon := l.words.say("colon") + " "
	if len(g.values) == 1 {
		return g.name + l.bracketed(g.row, g.values[0].class) + colon + g.values[0].text
	}
	var columns []string
	for _, v := range g.values {
		columns = append(columns, v.class+colon+v.text)
	}
	return g.name + l.bracketed(g.row, "") + colon + strings.Join(l.atMost(columns, maxValues), l.words.say("semicolon")+" ")
}

// where is a value's name with its place, without the value.
func (l *letter) where(field string) string {
	class, _, ok := splitClass(field)
	if !ok || class >= len(l.sheet.Models) {
		return l.words.name(l.sheet, field) + l.bracketed(l.row(field), "")
	}
	return l.words.name(l.sheet, field) + l.bracketed(l.row(field), className(l.sheet, class))
}

// bracketed is " (page 2, row “Vmp [V]”, column KR-405)", as far as it is known.
func (l *letter) bracketed(row, class string) string {
	var at []string
	if row != "" {
		at = append(at, row)
	}
	if class != "" {
		at = append(at, l.words.say("column", "class", class))
	}
	if len(at) == 0 {
		return ""
	}
	return " (" + strings.Join(at, ", ") + ")"
}

// head are the lines that say whom and what it is about.
func (l *letter) head() (lines [][2]string) {
	s := l.sheet
	to := s.Maker
	if to == "" {
		to = l.words.say("nobody")
	}
	add := func(key, text string) {
		if text != "" {
			lines = append(lines, [2]string{l.words.say(key), text})
		}
	}
	add("to", to)
	about := path.Base(l.of.File) // the maker knows the sheet's name, not our folders
	if s.Source.File != "" {
		about = path.Base(s.Source.File)
	}
	switch {
	case s.Source.Pages == 1:
		about += ", " + l.words.say("page_one")
	case s.Source.Pages > 1:
		about += ", " + l.words.say("pages", "n", fmt.Sprint(s.Source.Pages))
	}
	if s.Source.SHA256 != "" {
		about += ", SHA-256 " + s.Source.SHA256
	}
	add("about", about)
	add("revision", s.Revision)
	add("issued", s.Issued)
	return lines
}

func (l *letter) heading() string {
	name := l.sheet.Series
	if name == "" {
		name = l.words.say("untitled")
	}
	return l.words.say("title", "sheet", name)
}

func (l *letter) intro() string {
	if len(l.questions) == 1 {
		return l.words.say("intro_one")
	}
	return l.words.say("intro", "n", fmt.Sprint(len(l.questions)))
}
