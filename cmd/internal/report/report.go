// Package report writes what a check found, in one form for each reader: a person at a terminal, a program, a stream. It must not
// decide anything: levels, order and messages come from the rules, verdicts follow from the levels.
package report

import (
	"io"
	"iter"
	"slices"

	"pvtally/rules"
	"pvtally/rules/diagnose"
	"pvtally/schema"
)

// Format is one form of report.
type Format struct {
	Name   string
	Binary bool // not for a terminal
	Stream bool // keeps no entry: for runs of any length
	Pages  bool // draws the datasheet's pages
	Lines  bool // points at lines of the records' files
	Write  func(io.Writer, Run) error
}

// String is the format's name.
func (f Format) String() string { return f.Name }

// formats in the order in which they are listed. Adding one is its file and its line here.
var formats = Forms[Format]{
	{Name: "text", Write: writeText},
	{Name: "json", Write: writeJSON},
	{Name: "jsonl", Write: writeJSONLines, Stream: true},
	{Name: "sarif", Write: writeSARIF, Lines: true},
	{Name: "junit", Write: writeJUnit},
	{Name: "markdown", Write: writeMarkdown},
	{Name: "html", Write: writeHTML, Pages: true},
	{Name: "csv", Write: writeCSV},
	{Name: "xlsx", Write: writeXLSX, Binary: true},
}

// Lookup finds a format by its name.
func Lookup(name string) (Format, bool) { return formats.Lookup(name) }

// Names lists the formats for a message.
func Names() string { return formats.Names() }

// Run is what a check hands to a format.
type Run struct {
	Version string
	Colour  bool
	// Limit is the level from which a finding fails the check; above rules.Error none does.
	Limit rules.Level
	// Rules are all that may have spoken, for the forms that explain them.
	Rules []*rules.Rule
	// Silenced is what a policy and a baseline took out; nil without them. It is complete once Entries is drained.
	Silenced func() Silenced
	// Entries are in input order and can be drained once; a format that keeps none of them runs in flat memory.
	Entries iter.Seq[Entry]
}

// Entry is one record judged, or one input that could not be read: exactly one of the two.
type Entry struct {
	Sheet  *Sheet
	Unread *Unread
}

// Sheet is one record judged.
type Sheet struct {
	File     string // what the user calls it: a path, or "-:12" in a stream
	Record   *schema.Sheet
	Findings []rules.Finding
	// Suspects are the printed values that are wrong, the likeliest first; their Findings are indices into Findings.
	Suspects []diagnose.Suspect
	// Pages are the datasheet's, for a format that draws them, where the datasheet is at hand.
	Pages []Page
	// Locate finds the value at a JSON Pointer, or what is nearest to it, in the record's file, for a format that points there; nil else.
	Locate func(pointer string) (Region, bool)
}

// Region is a piece of one line of a text file. The line begins at 1; Column and End count UTF-16 code units from 1, the end excluded,
// and are 0 where only the line is meant.
type Region struct {
	File        string // without the line that a stream's records have in their name
	Line        int
	Column, End int
}

// place is where the sheet prints what a finding is about.
type place struct {
	Page  int
	Box   schema.Box
	Label string
}

// placeOf is the place of the first value that has one.
func (s *Sheet) placeOf(pointers []string) place {
	for _, field := range pointers {
		if e, ok := s.Record.Evidence[field]; ok && e.Page > 0 {
			return place{e.Page, e.Box, e.Label}
		}
	}
	return place{}
}

// key names the value that a finding judges without positions in the record.
func (s *Sheet) key(f rules.Finding) string {
	if len(f.Fields) == 0 {
		return ""
	}
	return schema.Key(s.Record, f.Fields[0])
}

// Verdict is what the findings come to: "reject" with an error among them, "query" with a warning, else "clear".
func (s *Sheet) Verdict() string {
	worst := rules.Level(0)
	for _, f := range s.Findings {
		worst = max(worst, f.Level)
	}
	return verdictOf(worst)
}

func verdictOf(worst rules.Level) string {
	switch worst {
	case rules.Error:
		return "reject"
	case rules.Warning:
		return "query"
	}
	return "clear"
}

// about says whose sheet it is.
func (s *Sheet) about() string {
	if s.Record.Series == "" || s.Record.Maker == "" {
		return s.Record.Series + s.Record.Maker
	}
	return s.Record.Series + ", " + s.Record.Maker
}

// graveFirst is the findings for a reader: the gravest first, else as the rules order them.
func (s *Sheet) graveFirst() []rules.Finding {
	list := slices.Clone(s.Findings)
	slices.SortStableFunc(list, func(a, b rules.Finding) int { return int(b.Level) - int(a.Level) })
	return list
}
