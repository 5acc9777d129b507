package report

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"math"
	"net/url"
	"path"
	"strings"

	"pvtally/rules"
	"pvtally/schema"
)

// sarifSchema is where readers look the schema up; nothing is fetched from there.
const sarifSchema = "https://json.schemastore.org/sarif-2.1.0.json"

// writeSARIF writes one result a problem: a suspect with its findings as related locations, or a finding without one. Every rule is listed, fired or not, so that a reader can tell a rule that is content from one
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
		for _, p := range e.Sheet.problems() {
			result := sarifResultOf(e.Sheet, &p)
			if i, known := index[p.Rule]; known {
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

func sarifResultOf(s *Sheet, p *problem) sarifResult {
	key, printed := s.name(p)
	cells := p.cells()
	at := s.placeOf(cells)
	result := sarifResult{
		RuleID: p.Rule, Level: p.Level, Message: sarifMessage(p.Message),
		Fingerprints: map[string]string{"pvtally/1": fingerprint(s, p)},
		Properties: sarifProperties{Model: p.Model, Key: key, Page: at.Page, Box: at.Box, Printed: printed, Implied: p.Implied,
			Deviation: p.DeviationPct, Rounding: p.RoundingPct, Caution: p.Caution},
	}
	if x := p.suspect; x != nil {
		result.Properties.Mistake, result.Properties.Confidence = string(x.Mistake), math.Round(100*x.Confidence)/100
		for _, c := range x.Cells {
			if !c.WouldBe.IsZero() {
				result.Properties.WouldBe = append(result.Properties.WouldBe, schema.Key(s.Record, c.Field)+" "+c.WouldBe.String())
			}
		}
	}
	relate := func(pointer, says string) {
		if region, ok := s.locate(pointer); ok {
			text := sarifMessage(says)
			result.Related = append(result.Related, sarifLocation{physical(s.File, region), &text})
		}
	}
	first := ""
	if len(cells) > 0 {
		first = cells[0]
	}
	region, _ := s.locate(first)
	result.Locations = []sarifLocation{{Physical: physical(s.File, region)}}
	for _, pointer := range cells[min(1, len(cells)):] {
		relate(pointer, schema.Key(s.Record, pointer))
	}
	if p.suspect != nil {
		for _, f := range append([]rules.Finding{p.Finding}, p.others...) {
			says := f.Message
			if f.Rule == p.Rule {
				says = p.finding
			}
			pointer := ""
			if len(f.Fields) > 0 {
				pointer = f.Fields[0]
			}
			relate(pointer, f.Rule+": "+says)
		}
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

// fingerprint tells a problem from others across runs: by whose sheet, cell and printed value, and by the rule where no suspect is named,
// not by file or position.
func fingerprint(s *Sheet, p *problem) string {
	rule := p.Rule
	if p.suspect != nil {
		rule = "suspect"
	}
	key, printed := s.name(p)
	sum := sha256.Sum256([]byte(strings.Join([]string{s.Record.Maker, s.Record.Series, rule, key, printed}, "\x00")))
	return hex.EncodeToString(sum[:16])
}
