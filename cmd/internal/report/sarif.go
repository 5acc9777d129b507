package report

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"net/url"
	"path"
	"strings"

	"pvtally/rules"
	"pvtally/schema"
)

// sarifSchema is where readers look the schema up; nothing is fetched from there.
const sarifSchema = "https://json.schemastore.org/sarif-2.1.0.json"

// writeSARIF writes one result a finding. Every rule is listed, fired or not, so that a reader can tell a rule that is content from one
// that did not run.
func writeSARIF(w io.Writer, run Run) error {
	log := sarifLog{Schema: sarifSchema, Version: "2.1.0", Runs: []sarifRun{{
		Tool:        sarifTool{sarifDriver{Name: "pvtally", Version: run.Version, Rules: []sarifRule{}}},
		Invocations: []sarifInvocation{{Successful: true}},
		ColumnKind:  "utf16CodeUnits",
		Results:     []sarifResult{},
	}}}
	out := &log.Runs[0]
	index := map[string]int{}
	for i, r := range run.Rules {
		index[r.ID] = i
		out.Tool.Driver.Rules = append(out.Tool.Driver.Rules, sarifRuleOf(r))
	}
	for e := range run.Entries {
		if e.Unread != nil {
			out.Invocations[0].Successful = false
			out.Invocations[0].Notifications = append(out.Invocations[0].Notifications, sarifNotification{Level: "error",
				Message: sarifMessage(e.Unread.String()), Locations: []sarifLocation{{Physical: sarifPhysical{Artifact: artifact(e.Unread.File)}}}})
			continue
		}
		for _, f := range e.Sheet.Findings {
			result := sarifResultOf(e.Sheet, f)
			if i, known := index[f.Rule]; known {
				result.RuleIndex = &i
			}
			out.Results = append(out.Results, result)
		}
	}
	return encodeJSON(w, log, "  ")
}

func sarifRuleOf(r *rules.Rule) sarifRule {
	var help strings.Builder
	rules.Explain(&help, r) // a strings.Builder takes everything
	worst := rules.Note
	for _, t := range r.Levels {
		worst = max(worst, t.Level)
	}
	return sarifRule{ID: r.ID, Short: sarifText{r.Title}, Full: sarifText{r.Why}, Help: sarifText{help.String()}, Default: sarifLevel{worst},
		Properties: map[string]any{"tags": []string{r.Family()}}}
}

func sarifResultOf(s *Sheet, f rules.Finding) sarifResult {
	at := s.placeOf(f)
	result := sarifResult{
		RuleID: f.Rule, Level: f.Level, Message: sarifMessage(f.Message),
		Fingerprints: map[string]string{"pvtally/1": fingerprint(s, f)},
		Properties: sarifProperties{Model: f.Model, Key: s.key(f), Page: at.Page, Box: at.Box, Printed: f.Printed, Implied: f.Implied,
			Deviation: f.DeviationPct, Rounding: f.RoundingPct, Caution: f.Caution},
	}
	for i, field := range f.Fields {
		region, ok := s.locate(field)
		switch {
		case i == 0:
			result.Locations = []sarifLocation{{Physical: physical(s.File, region)}}
		case ok:
			result.Related = append(result.Related, sarifLocation{physical(s.File, region), &sarifText{schema.Key(s.Record, field)}})
		}
	}
	if result.Locations == nil {
		region, _ := s.locate("")
		result.Locations = []sarifLocation{{Physical: physical(s.File, region)}}
	}
	return result
}

func (s *Sheet) locate(pointer string) (Region, bool) {
	if s.Locate == nil {
		return Region{}, false
	}
	return s.Locate(pointer)
}

func physical(file string, r Region) sarifPhysical {
	if r.Line == 0 {
		return sarifPhysical{Artifact: artifact(file)}
	}
	return sarifPhysical{artifact(r.File), &sarifRegion{r.Line, r.Column, r.End}}
}

// artifact makes a path a URI: relative paths stay relative, so that the report holds for every checkout.
func artifact(file string) sarifArtifact {
	u := url.URL{Path: path.Clean(file)}
	if path.IsAbs(file) {
		u.Scheme = "file"
	}
	return sarifArtifact{u.String()}
}

// sarifMessage keeps text from being taken for a link: "[text](target)" is one in a SARIF message (section 3.11.6).
func sarifMessage(text string) sarifText {
	if strings.Contains(text, "](") {
		text = strings.NewReplacer(`\`, `\\`, "[", `\[`, "]", `\]`).Replace(text)
	}
	return sarifText{text}
}

// fingerprint tells a finding from others across runs: by whose sheet, rule, cell and printed value, not by file or position.
func fingerprint(s *Sheet, f rules.Finding) string {
	sum := sha256.Sum256([]byte(strings.Join([]string{s.Record.Maker, s.Record.Series, f.Rule, s.key(f), f.Printed}, "\x00")))
	return hex.EncodeToString(sum[:16])
}
