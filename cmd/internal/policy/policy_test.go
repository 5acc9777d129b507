package policy

import (
	"strings"
	"testing"

	"github.com/xeipuuv/gojsonschema"
)

// TestParse holds Parse to its documentation, and the JSON Schema to Parse: both take and refuse the same texts, except where the
// text is well formed and speaks of what does not exist (a rule, a setting, a field, a day), which no schema knows.
func TestParse(t *testing.T) {
	const waiver = `{"rule": "stc/power-product", "record": "kr.json", "reason": "asked, see mail of May"}`
	tests := []struct {
		name, text string
		want       string // in the error; "" where it is right
		unseen     bool   // by the schema
	}{
		{"the least", `{"format": "pvtally.policy/1"}`, "", false},
		{"everything", `{"$schema": "policy.schema.json", "format": "pvtally.policy/1", "fail_on": "warning", "rules": {"stc/power-product": {"level": "warning"},
			"body/format": {"level": "off"}, "policy/required": {"level": "note"}}, "required": ["limits.series_fuse_a", "models[].stc.voc_v", "cell"], "waivers": [` + waiver + `]}`, "", false},
		{"no format", `{}`, "/format", false},
		{"another format", `{"format": "pvtally.sheet/1"}`, "/format", false},
		{"an unknown key", `{"format": "pvtally.policy/1", "levels": {}}`, "/levels: found an unknown key", false},
		{"an unknown key of a waiver", `{"format": "pvtally.policy/1", "waivers": [` + strings.Replace(waiver, "reason", "because", 1) + `]}`, "/waivers/0/because: found an unknown key", false},
		{"a waiver without a reason", `{"format": "pvtally.policy/1", "waivers": [{"rule": "stc/power-product", "record": "kr.json"}]}`, `/waivers/0: no "reason"`, false},
		{"a blank reason", `{"format": "pvtally.policy/1", "waivers": [{"rule": "stc/power-product", "record": "kr.json", "reason": " "}]}`, `/waivers/0: no "reason"`, false},
		{"a waiver without a record", `{"format": "pvtally.policy/1", "waivers": [{"rule": "stc/power-product", "reason": "x"}]}`, `/waivers/0: no "record"`, false},
		{"a day that is none", `{"format": "pvtally.policy/1", "waivers": [` + strings.Replace(waiver, "{", `{"until": "2026-02-30", `, 1) + `]}`, "/waivers/0: until", true},
		{"a date in words", `{"format": "pvtally.policy/1", "waivers": [` + strings.Replace(waiver, "{", `{"until": "May 2026", `, 1) + `]}`, "/waivers/0: until", false},
		{"an unknown rule", `{"format": "pvtally.policy/1", "rules": {"stc/no-such": {}}}`, `"stc/no-such"`, true},
		{"a waiver for an unknown rule", `{"format": "pvtally.policy/1", "waivers": [` + strings.Replace(waiver, "power-product", "no-such", 1) + `]}`, `"stc/no-such"`, true},
		{"an unknown level", `{"format": "pvtally.policy/1", "rules": {"stc/power-product": {"level": "fatal"}}}`, `"fatal"`, false},
		{"an unknown level to fail on", `{"format": "pvtally.policy/1", "fail_on": "fatal"}`, `"fatal"`, false},
		{"an unknown setting", `{"format": "pvtally.policy/1", "rules": {"stc/power-product": {"settings": {"no_such": 1}}}}`, `"no_such"`, true},
		{"a setting that is no number", `{"format": "pvtally.policy/1", "rules": {"stc/power-product": {"settings": {"x": "1"}}}}`, "settings", false},
		{"an unknown field", `{"format": "pvtally.policy/1", "required": ["limits.no_such"]}`, `"limits.no_such"`, true},
		{"a pointer for a path", `{"format": "pvtally.policy/1", "required": ["/limits/series_fuse_a"]}`, "/required/0", false},
		{"a key twice", `{"format": "pvtally.policy/1", "required": [], "required": []}`, "a second time", true},
		{"no JSON", `{"format": `, "the end of the text", false},
		{"a list", `[]`, "found a list", false},
	}
	schema, err := gojsonschema.NewSchema(gojsonschema.NewBytesLoader(JSONSchema()))
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := Parse([]byte(test.text))
			switch {
			case test.want == "" && err != nil:
				t.Errorf("refused: %v", err)
			case test.want != "" && (err == nil || !strings.Contains(err.Error(), test.want)):
				t.Errorf("error %v, want one with %s", err, test.want)
			}
			result, broken := schema.Validate(gojsonschema.NewStringLoader(test.text))
			if takes := broken == nil && result.Valid(); takes != (test.want == "" || test.unseen) {
				t.Errorf("the schema takes it: %v", takes)
			}
		})
	}
}
