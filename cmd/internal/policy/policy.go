// Package policy is what a catalogue's repository decides about its checks: levels and settings of rules, fields that every record must
// have, known exceptions with their reason, and findings accepted as they stand. It reads and judges data; files and the command line
// belong to cli.
package policy

import (
	_ "embed"
	"fmt"
	"regexp"
	"strings"
	"time"

	"pvtally/cmd/internal/jsonfile"
	"pvtally/rules"
	"pvtally/schema"
)

// FileName is how a catalogue's policy is called; it stands at the catalogue's root.
const FileName = "pvtally.json"

// Format is the value of a policy's "format" key.
const Format = "pvtally.policy/1"

//go:embed policy.schema.json
var jsonSchema []byte

// JSONSchema is the policy's JSON Schema (draft-07), for editors; a test holds Parse to it.
func JSONSchema() []byte { return jsonSchema }

// Policy is the content of a policy file.
type Policy struct {
	Schema   string          `json:"$schema"`
	Format   string          `json:"format"`
	FailOn   string          `json:"fail_on"`
	Rules    map[string]Rule `json:"rules"`
	Required []string        `json:"required"`
	Waivers  []Waiver        `json:"waivers"`
}

// Rule moves one rule. Level is "off", "note", "warning" or "error" and replaces whatever level the rule finds; Settings are numbers of
// the rule by name ('pvtally rules ID' lists them).
type Rule struct {
	Level    string             `json:"level"`
	Settings map[string]float64 `json:"settings"`
}

// Waiver accepts one finding. Field and Printed are the key and the printed value of a cell the finding is about (best the one that is
// wrong), empty where it has none: when the value is mended the waiver no longer fits and is reported.
type Waiver struct {
	Rule    string `json:"rule"`
	Record  string `json:"record"`
	Field   string `json:"field"`
	Printed string `json:"printed"`
	Reason  string `json:"reason"`
	Until   string `json:"until"` // the last day it holds, YYYY-MM-DD; empty: as long as the finding stands
}

// Parse reads a policy. An unknown key is an error: a misspelt waiver or level must not pass in silence.
func Parse(data []byte) (*Policy, error) {
	p := new(Policy)
	if err := jsonfile.Decode(data, Format, p); err != nil {
		return nil, err
	}
	return p, p.validate()
}

func (p *Policy) validate() error {
	if p.FailOn != "" && p.FailOn != "never" {
		if _, err := rules.ParseLevel(p.FailOn); err != nil {
			return fmt.Errorf("/fail_on: found %q, allowed: error, warning, note, never", p.FailOn)
		}
	}
	if _, err := p.Options(); err != nil {
		return fmt.Errorf("/rules: %w", err)
	}
	for i, path := range p.Required {
		if !required(path).valid() {
			return fmt.Errorf("/required/%d: found %q, allowed: the path of a value, such as \"limits.series_fuse_a\" or \"models[].stc.voc_v\"", i, path)
		}
	}
	for i, w := range p.Waivers {
		if err := w.validate(); err != nil {
			return fmt.Errorf("/waivers/%d: %w", i, err)
		}
	}
	return nil
}

func (w Waiver) validate() error {
	for _, must := range []struct{ name, value string }{{"rule", w.Rule}, {"record", w.Record}, {"reason", w.Reason}} {
		if strings.TrimSpace(must.value) == "" {
			return fmt.Errorf("no %q: a waiver names rule, record and reason", must.name)
		}
	}
	if _, ok := lookup(w.Rule); !ok {
		return fmt.Errorf("no rule %q", w.Rule)
	}
	if w.Until != "" {
		if _, err := time.Parse(time.DateOnly, w.Until); err != nil {
			return fmt.Errorf("until: found %q, allowed: a day, YYYY-MM-DD", w.Until)
		}
	}
	return nil
}

// lookup finds a rule of the book or of this package.
func lookup(id string) (*rules.Rule, bool) {
	if id == Required.ID {
		return Required, true
	}
	return rules.Lookup(id)
}

// Options are the rules' options under this policy.
func (p *Policy) Options() (rules.Options, error) {
	opt := rules.Options{Settings: map[string]map[string]float64{}, Off: map[string]bool{}, Levels: map[string]rules.Level{}}
	for id, r := range p.Rules {
		level := rules.Level(0)
		if r.Level != "" && r.Level != "off" {
			var err error
			if level, err = rules.ParseLevel(r.Level); err != nil {
				return opt, fmt.Errorf("%s: level: found %q, allowed: off, note, warning, error", id, r.Level)
			}
		}
		if id == Required.ID && len(r.Settings) == 0 {
			continue // not a rule of the book: Keeper sees to it
		}
		opt.Settings[id] = r.Settings
		if r.Level == "off" {
			opt.Off[id] = true
		}
		if level > 0 {
			opt.Levels[id] = level
		}
	}
	return opt, opt.Validate()
}

// required is the path of a value that every record must have; "models[]" stands for every class.
type required string

var pathForm = regexp.MustCompile(`^(models\[\]\.)?[a-z0-9_]+(\.[a-z0-9_]+)*$`)

// valid reports that the record's form has such a value.
func (r required) valid() bool {
	_, known := schema.Describe("/" + strings.NewReplacer("models[]", "models/0", ".", "/").Replace(string(r)))
	return known && pathForm.MatchString(string(r))
}
