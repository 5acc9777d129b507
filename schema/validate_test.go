package schema

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func strs(problems []Problem) []string {
	var lines []string
	for _, p := range problems {
		lines = append(lines, p.Error())
	}
	return lines
}

func TestValidateListsAll(t *testing.T) {
	text := []byte(`{
  "maker": 7,
  "body": {"mass_kg": "24.5", "weight_kg": 24.5},
  "models": [
    {"stc": {"voc_v": "37.2", "isc_a": 1e999, "_isc": 1e999}},
    {"stc": [], "rear_gain": {}},
    "KR-405",
    {}, {}, {}, {}, {}, {}, {},
    {"thermal": {"beta_voc_pct_per_k": 0.27, "nmot_c": false}}
  ],
  "evidence": {"/models/0/stc/voc_v": {"by": "eye"}}
}`)
	want := []string{
		`line 1: the document: found no "format", allowed: "pvtally.sheet/1"`,
		`line 2: /maker: found 7 (number), allowed: a text that is not empty`,
		`line 3: /body/mass_kg: found "24.5" (string), allowed: a number`,
		`line 3: /body/weight_kg: found an unknown key, allowed: length_mm, width_mm, depth_mm, mass_kg, front_glass_mm, rear_glass_mm, cable_mm2, cable_length_mm, bypass_diodes, junction_box_ip, connector, frame or a note (a key that begins with "_")`,
		`line 5: /models/0/stc/isc_a: found 1e999 (number), allowed: a number that fits a double, in at most 40 characters`,
		`line 5: /models/0/stc/voc_v: found "37.2" (string), allowed: a number`,
		`line 6: /models/1/rear_gain: found an object, allowed: a list of at most 500 objects`,
		`line 6: /models/1/stc: found an array, allowed: an object`,
		`line 7: /models/2: found "KR-405" (string), allowed: an object`,
		`line 9: /models/10/thermal/nmot_c: found false (boolean), allowed: a number`,
		`line 11: /evidence/~1models~10~1stc~1voc_v: found no "printed", allowed: a text`,
		`line 11: /evidence/~1models~10~1stc~1voc_v/by: found "eye" (string), allowed: "text", "picture", "html", "hand"`,
	}
	for range 5 { // the validator goes through maps: the order must not
		if diff := cmp.Diff(want, strs(Validate(text))); diff != "" {
			t.Fatalf("-want +got:\n%s", diff)
		}
	}
}

func TestValidateAccepts(t *testing.T) {
	for name, text := range map[string]string{
		"the example":          string(kestrel),
		"one line":             string(small),
		"nothing but a format": `{"format":"pvtally.sheet/1"}`,
		// A sheet that prints nonsense is a right record: finding it is the rules' work.
		"a wrong sheet": `{"format":"pvtally.sheet/1","models":[{"stc":{"voc_v":4437,"pmax_w":-405}}],"thermal":{"beta_voc_pct_per_k":0.27},"warranty":{"final_output_pct":848}}`,
		"no evidence":   `{"format":"pvtally.sheet/1","models":[{"name":"KR-405","stc":{"voc_v":37.2}}]}`,
		"notes":         `{"_":0,"format":"pvtally.sheet/1","_a":{"x":[1e999999,{"_y":null}]},"models":[{"_b":1,"low":{"_c":2}}],"evidence":{"_d":3}}`,
		"empty blocks":  `{"format":"pvtally.sheet/1","models":[{"noct":{},"rear_gain":[]}],"source":{},"evidence":{}}`,
	} {
		t.Run(name, func(t *testing.T) {
			if problems := Validate([]byte(text)); problems != nil {
				t.Errorf("%v", problems)
			}
			if doc, err := Decode([]byte(text)); err != nil || doc.Check() != nil {
				t.Errorf("the decoder disagrees: %v", err)
			}
		})
	}
}

func TestValidateIsBounded(t *testing.T) {
	text := `{"format":"pvtally.sheet/1","certificates":[` + strings.Repeat("1,\n", 5000) + `1]}`
	got := Validate([]byte(text))
	if len(got) != maxProblems+1 || !slices.ContainsFunc(got, func(p Problem) bool { return p.Found == "4001 more problems" }) {
		t.Errorf("%d problems, the first %v", len(got), got[0])
	}
}

func TestCheck(t *testing.T) {
	const models = `"models":[{"name":"KR-405","stc":{"voc_v":37.2}}],"limits":{"system_voltage_v":[1500]},`
	tests := []struct {
		name, text string
		want       []string
	}{
		{"evidence for values", `"evidence":{"/models/0/stc/voc_v":{"printed":"37.2","box":[1,2,3,4]},"/models/0/name":{"printed":"KR-405"},"/limits/system_voltage_v/0":{"printed":"1500"}}`, nil},
		{"evidence for a value that is not there", `"evidence":{"/models/0/stc/isc_a":{"printed":"13"}}`,
			[]string{"line 1: /evidence/~1models~10~1stc~1isc_a: found a place for a value the record does not hold, allowed: a place for each value that is there"}},
		{"evidence for a model that is not there", `"evidence":{"/models/1/stc/voc_v":{"printed":"37"}}`,
			[]string{"line 1: /evidence/~1models~11~1stc~1voc_v: found a place for a value the record does not hold, allowed: a place for each value that is there"}},
		{"evidence for a block", `"evidence":{"/models/0/stc":{"printed":"STC"},"/limits/system_voltage_v":{"printed":"1500"}}`,
			[]string{"line 1: /evidence/~1limits~1system_voltage_v: found a place for what is no single value, allowed: a place for each value that is there",
				"line 1: /evidence/~1models~10~1stc: found a place for what is no single value, allowed: a place for each value that is there"}},
		{"evidence for no field", `"evidence":{"/models/0/stc/voc":{"printed":"37.2"}}`,
			[]string{"line 1: /evidence/~1models~10~1stc~1voc: found a place for what is no field, allowed: a place for each value that is there"}},
		{"a box inside out", `"evidence":{"/models/0/stc/voc_v":{"printed":"37.2","box":[3,2,1,4]}},"also":[{"field":"/models/0/stc/voc_v","printed":"x","box":[1,4,3,2]}]`,
			[]string{"line 1: /also/0/box: found [1 4 3 2], allowed: left ≤ right, top ≤ bottom",
				"line 1: /evidence/~1models~10~1stc~1voc_v/box: found [3 2 1 4], allowed: left ≤ right, top ≤ bottom"}},
		{"a page too far", `"source":{"pages":2},"unresolved":[{"field":"/body","why":"x","page":3}]`,
			[]string{"line 1: /unresolved/0/page: found 3, allowed: at most the 2 pages of the source"}},
		{"parts", `"source":{"part":3,"parts":2}`, []string{"line 1: /source/part: found 3, allowed: at most the 2 parts there are"}},
		{"fields that are none", `"also":[{"field":"/body","printed":"x"},{"field":"/limits/system_voltage_v","printed":"x"}],"unresolved":[{"field":"/body/wait","why":"x"},{"field":"/models","why":"x"}]`,
			[]string{`line 1: /also/0/field: found "/body", allowed: the JSON Pointer of a value, or of a list of values`,
				`line 1: /unresolved/0/field: found "/body/wait", allowed: the JSON Pointer of a field`}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			head := models
			if strings.Contains(tt.text, `"source"`) {
				head = ""
			}
			text := []byte(fmt.Sprintf(`{"format":"pvtally.sheet/1",%s%s}`, head, tt.text))
			if diff := cmp.Diff(tt.want, strs(mustDecode(t, text).Check())); diff != "" {
				t.Errorf("-want +got:\n%s", diff)
			}
			if diff := cmp.Diff(tt.want, strs(Validate(text))); diff != "" {
				t.Errorf("Validate: -want +got:\n%s", diff)
			}
		})
	}
}

func BenchmarkValidate(b *testing.B) {
	for b.Loop() {
		if Validate(small) != nil {
			b.Fatal("not valid")
		}
	}
}
