package cli

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf16"

	"pvtally/cmd/internal/report"
)

// locator finds values in the text of a record, for reports that point at a line; nil for a datasheet, which has pages instead.
func locator(in loaded) func(pointer string) (report.Region, bool) {
	if in.doc == nil {
		return nil
	}
	find := func(pointer string) (report.Region, bool) {
		start, end, ok := in.doc.Span(pointer)
		missing := !ok
		for !ok && pointer != "" { // a field that is not there is missing from the object that should hold it
			pointer = pointer[:max(0, strings.LastIndexByte(pointer, '/'))]
			start, end, ok = in.doc.Span(pointer)
		}
		if !ok {
			return report.Region{}, false
		}
		value := in.data[start:end]
		r := report.Region{File: in.name, Line: 1 + bytes.Count(in.data[:start], []byte("\n"))}
		if in.line > 0 {
			r.File, r.Line = strings.TrimSuffix(in.name, fmt.Sprintf(":%d", in.line)), in.line
		}
		if !missing && !bytes.ContainsRune(value, '\n') {
			line := in.data[bytes.LastIndexByte(in.data[:start], '\n')+1 : start]
			r.Column = 1 + units(line)
			r.End = r.Column + units(value)
		}
		return r, true
	}
	type place struct {
		report.Region
		ok bool
	}
	known := map[string]place{} // findings name the same values over and over, and each search runs through the text
	return func(pointer string) (report.Region, bool) {
		at, asked := known[pointer]
		if !asked {
			at.Region, at.ok = find(pointer)
			known[pointer] = at
		}
		return at.Region, at.ok
	}
}

// units is the length of a text in UTF-16 code units, which is what reports count columns in.
func units(text []byte) (n int) {
	for _, r := range string(text) {
		n += utf16.RuneLen(r)
	}
	return n
}
