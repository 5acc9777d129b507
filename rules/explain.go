package rules

import (
	"cmp"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Explain writes one rule's page as plain text: what it asks, why, the formula, its source, examples, settings.
func Explain(w io.Writer, r *Rule) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n    %s\n\nwhy\n%s\n\nformula\n%s\n\nsources\n", r.ID, r.Title, wrap(r.Why, "    ", 96), wrap(r.Formula, "    ", 96))
	for _, s := range r.Sources {
		fmt.Fprintf(&b, "%s\n", wrap(s.Name+" ("+s.Tag+")", "    ", 96))
	}
	b.WriteString("\nlevels\n")
	for _, t := range r.Levels {
		fmt.Fprintf(&b, "    %-8s %s\n", t.Level, t.When)
	}
	fmt.Fprintf(&b, "\nneeds\n%s\n", wrap(strings.Join(r.Needs, "; "), "    ", 96))
	if len(r.Settings) > 0 {
		b.WriteString("\nsettings\n")
		for _, s := range r.Settings {
			fmt.Fprintf(&b, "    %-16s %-8s %s: %s\n", s.Name, plain(s.Default), s.Unit, s.Doc)
		}
	}
	if len(r.Yields) > 0 {
		fmt.Fprintf(&b, "\nquiet where these found as much on the same value\n%s\n", wrap(strings.Join(r.Yields, ", "), "    ", 96))
	}
	if e := r.Example(); e.Finding != "" {
		fmt.Fprintf(&b, "\nwrong\n%s%s\n", lines(e.Wrong), wrap("→ "+e.Finding, "    ", 96))
		if e.Right != "" {
			fmt.Fprintf(&b, "\nright\n%s", lines(e.Right))
		}
	}
	if r.Caution != "" {
		fmt.Fprintf(&b, "\ncaution\n%s\n", wrap(r.Caution, "    ", 96))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func lines(s string) string {
	if s == "" {
		return ""
	}
	return wrap(s, "    ", 96) + "\n"
}

// ExplainAll writes the table of all rules.
func ExplainAll(w io.Writer) error {
	var b strings.Builder
	for _, r := range book {
		fmt.Fprintf(&b, "%-26s %-8s %s\n", r.ID, r.Gravest(), r.Title)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// Gravest is the highest level the rule can reach.
func (r *Rule) Gravest() (l Level) {
	for _, t := range r.Levels {
		l = max(l, t.Level)
	}
	return l
}

// WritePage writes the page of all rules as Markdown: rules/CATALOGUE.md is generated from it.
func WritePage(w io.Writer) error { return writePage(w, examples()) }

func writePage(w io.Writer, examples map[string]Example) error {
	var b strings.Builder
	b.WriteString("# The rules\n\nGenerated from the rules themselves by `go test ./rules -update`. Each value of a setting can be moved by a policy.\n")
	family := ""
	for _, r := range book {
		if f := r.Family(); f != family {
			family = f
			fmt.Fprintf(&b, "\n## %s\n", f)
		}
		fmt.Fprintf(&b, "\n### %s\n\n**%s.** %s\n\n`%s`\n\n", r.ID, capital(r.Title), r.Why, r.Formula)
		for _, t := range r.Levels {
			fmt.Fprintf(&b, "- %s: %s\n", t.Level, t.When)
		}
		if len(r.Settings) > 0 {
			b.WriteString("\n| setting | default | unit | meaning |\n| --- | --- | --- | --- |\n")
			for _, s := range r.Settings {
				fmt.Fprintf(&b, "| %s | %s | %s | %s |\n", s.Name, plain(s.Default), s.Unit, s.Doc)
			}
		}
		e := examples[r.ID]
		fmt.Fprintf(&b, "\nWrong: %s → %s", cmp.Or(e.Wrong, "(nothing printed)"), e.Finding)
		if e.Right != "" {
			fmt.Fprintf(&b, "  \nRight: %s", e.Right)
		}
		b.WriteString("\n\nSources: ")
		for i, s := range r.Sources {
			if i > 0 {
				b.WriteString("; ")
			}
			fmt.Fprintf(&b, "%s (%s)", s.Name, s.Tag)
		}
		b.WriteString(".\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// capital begins a sentence; α, β and γ are symbols and stay small.
func capital(s string) string {
	if s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}

func plain(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// wrap breaks text at spaces, each line behind the same indent, none wider than width characters where words allow.
func wrap(text, indent string, width int) string {
	var b strings.Builder
	line := indent
	for _, word := range strings.Fields(text) {
		if len(line) > len(indent) && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
			b.WriteString(line + "\n")
			line = indent
		}
		if len(line) > len(indent) {
			line += " "
		}
		line += word
	}
	return b.String() + line
}
