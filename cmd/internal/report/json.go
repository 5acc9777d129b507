package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"unicode/utf16"
	"unicode/utf8"

	"pvtally/rules"
)

// The wire form has structs of its own, so that a change inside the program cannot change what other programs read. Numbers of the
// sheet are literals; what is unknown is left out, never zero.
type (
	findingsDoc struct {
		Format   string     `json:"format"`
		Tool     toolDoc    `json:"tool"`
		Sheets   []sheetDoc `json:"sheets"`
		Unread   []*Unread  `json:"unread,omitempty"`
		Silenced *Silenced  `json:"silenced,omitempty"`
		Summary  summary    `json:"summary"`
	}
	toolDoc struct {
		Name    string `json:"name"`
		Version string `json:"version"`
	}
	sheetDoc struct {
		File     string       `json:"file"`
		Part     int          `json:"part,omitempty"`
		SHA256   string       `json:"sha256,omitempty"`
		Maker    string       `json:"maker,omitempty"`
		Series   string       `json:"series,omitempty"`
		Verdict  string       `json:"verdict"`
		Suspects []suspectDoc `json:"suspects,omitempty"`
		Findings []findingDoc `json:"findings"`
	}
	findingDoc struct {
		Rule      string        `json:"rule"`
		Level     rules.Level   `json:"level"`
		Model     string        `json:"model,omitempty"`
		Fields    []string      `json:"fields,omitempty"`
		Key       string        `json:"key,omitempty"`
		Message   string        `json:"message"`
		Printed   string        `json:"printed,omitempty"`
		Implied   []string      `json:"implied,omitempty"`
		Deviation rules.Percent `json:"deviation_pct,omitzero"`
		Rounding  rules.Percent `json:"rounding_pct,omitzero"`
		Caution   string        `json:"caution,omitempty"`
	}
)

// findingsFormat names the shape of the document and its edition.
const findingsFormat = "pvtally.findings/1"

func sheetOf(s *Sheet) sheetDoc {
	doc := sheetDoc{File: s.File, Part: s.Record.Source.Part, SHA256: s.Record.Source.SHA256, Maker: s.Record.Maker, Series: s.Record.Series,
		Verdict: s.Verdict(), Suspects: s.suspectDocs(), Findings: make([]findingDoc, 0, len(s.Findings))}
	for _, f := range s.Findings {
		doc.Findings = append(doc.Findings, findingDoc{f.Rule, f.Level, f.Model, f.Fields, s.key(f), f.Message, f.Printed, f.Implied, f.DeviationPct, f.RoundingPct, f.Caution})
	}
	return doc
}

// writeJSON writes one document with everything.
func writeJSON(w io.Writer, run Run) error {
	doc := findingsDoc{Format: findingsFormat, Tool: toolDoc{"pvtally", run.Version}, Sheets: []sheetDoc{}}
	for e := range run.Entries {
		doc.Summary.add(e)
		if e.Unread != nil {
			doc.Unread = append(doc.Unread, e.Unread)
		} else {
			doc.Sheets = append(doc.Sheets, sheetOf(e.Sheet))
		}
	}
	if run.Silenced != nil {
		silenced := run.Silenced()
		doc.Silenced = &silenced
	}
	return encodeJSON(w, doc, "  ")
}

// writeJSONLines writes one line a sheet as it comes, and keeps none. What could not be read is on standard error.
func writeJSONLines(w io.Writer, run Run) error {
	for e := range run.Entries {
		if e.Unread != nil {
			continue
		}
		if err := encodeJSON(w, sheetOf(e.Sheet), ""); err != nil {
			return err
		}
	}
	return nil
}

// encodeJSON writes v in one write. Characters that do something to a screen are escaped: the text may be printed on one.
func encodeJSON(w io.Writer, v any, indent string) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", indent)
	if err := enc.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(SafeJSON(b.Bytes()))
	return err
}

// SafeJSON writes the characters of a JSON text that would do something to a screen, and which encoders leave as they are, as \u escapes.
// The text means the same: only within strings can a valid one hold them.
func SafeJSON(doc []byte) []byte {
	if plainASCII(doc) || bytes.IndexFunc(doc, unsafeInJSON) < 0 {
		return doc
	}
	var b bytes.Buffer
	for len(doc) > 0 {
		r, n := utf8.DecodeRune(doc)
		switch {
		case !unsafeInJSON(r):
			b.Write(doc[:n])
		case r > 0xffff:
			high, low := utf16.EncodeRune(r)
			fmt.Fprintf(&b, `\u%04x\u%04x`, high, low)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
		doc = doc[n:]
	}
	return b.Bytes()
}

// plainASCII is the quick answer for most documents.
func plainASCII(doc []byte) bool {
	for _, b := range doc {
		if b < ' ' && b != '\n' || b > '~' {
			return false
		}
	}
	return true
}

func unsafeInJSON(r rune) bool { return r != '\n' && unsafe(r) }
