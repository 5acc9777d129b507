package schema

import (
	"errors"
	"strings"
	"testing"
)

// hostile are texts that are no records, and what must be said of them.
var hostile = []struct {
	name, text string
	want       string // of Problem.String
	line       int
}{
	{"empty", "", "the document: found nothing, allowed: a sheet record", 1},
	{"blank", " \n ", "the document: found nothing, allowed: a sheet record", 2},
	{"not JSON", "voc 37.2", "the document: found invalid character 'v' at start of value, allowed: JSON text (RFC 8259)", 1},
	{"byte-order mark", "\ufeff{}", "the document: found a byte-order mark, allowed: UTF-8 without it", 1},
	{"cut off", `{"format":"pvtally.sheet/1","body":{"mass_kg":`, "/body/mass_kg: found the end of the text, allowed: JSON text (RFC 8259)", 1},
	{"an array", `[1]`, "the document: found an array, allowed: an object", 1},
	{"null", `null`, "the document: found null (a key without a value is left out), allowed: an object", 1},
	{"no format", "{\n}", `the document: found no "format", allowed: "pvtally.sheet/1"`, 1},
	{"other format", `{"format":"pvtally.findings/1"}`, `/format: found "pvtally.findings/1" (string), allowed: "pvtally.sheet/1"`, 1},
	{"two records", `{"format":"pvtally.sheet/1"}` + "\n" + `{"format":"pvtally.sheet/1"}`,
		`the document: found more after the record: {"format":"pvtally.sheet/1"}, allowed: one record (several are JSON Lines, one a line)`, 2},
	{"garbage after", `{"format":"pvtally.sheet/1"} x`, "the document: found more after the record: x, allowed: one record (several are JSON Lines, one a line)", 1},
	{"key twice", "{\"format\":\"pvtally.sheet/1\",\n\"maker\":\"a\",\n\"maker\":\"b\"}", "/maker: found the key a second time, allowed: each key once", 3},
	{"note twice", `{"format":"pvtally.sheet/1","_n":1,"_n":2}`, "/_n: found the key a second time, allowed: each key once", 1},
	{"key twice, spelled otherwise", `{"format":"pvtally.sheet/1","\u0066ormat":"pvtally.sheet/1"}`, "/format: found the key a second time, allowed: each key once", 1},
	{"key twice inside a note", `{"format":"pvtally.sheet/1","_n":{"a":1,"a":2}}`, "/_n/a: found the key a second time, allowed: each key once", 1},
	{"text for a number", "{\"format\":\"pvtally.sheet/1\",\n\"models\":[{\n\"stc\":{\"voc_v\":\"37.2\"}}]}", `/models/0/stc/voc_v: found "37.2" (string), allowed: a number`, 3},
	{"null for a number", `{"format":"pvtally.sheet/1","body":{"mass_kg":null}}`, "/body/mass_kg: found null (a key without a value is left out), allowed: a number", 1},
	{"number for a text", `{"format":"pvtally.sheet/1","series":405}`, "/series: found 405 (number), allowed: a text that is not empty", 1},
	{"empty text", `{"format":"pvtally.sheet/1","maker":""}`, `/maker: found "" (string), allowed: a text that is not empty`, 1},
	{"number for a list", `{"format":"pvtally.sheet/1","limits":{"system_voltage_v":1500}}`, "/limits/system_voltage_v: found 1500 (number), allowed: a list, each a number", 1},
	{"boolean in a list", `{"format":"pvtally.sheet/1","limits":{"system_voltage_v":[1000,true]}}`, "/limits/system_voltage_v/1: found true (boolean), allowed: a number", 1},
	{"object for a list", `{"format":"pvtally.sheet/1","models":{}}`, "/models: found an object, allowed: a list of at most 500 objects", 1},
	{"null model", `{"format":"pvtally.sheet/1","models":[null]}`, "/models/0: found null (a key without a value is left out), allowed: an object", 1},
	{"unknown key", `{"format":"pvtally.sheet/1","bifacial":{"factor":70}}`,
		`/bifacial/factor: found an unknown key, allowed: factor_pct, factor_tolerance_pct or a note (a key that begins with "_")`, 1},
	{"key of another case", `{"format":"pvtally.sheet/1","bifacial":{"Factor_pct":70}}`,
		`/bifacial/Factor_pct: found an unknown key, allowed: factor_pct, factor_tolerance_pct or a note (a key that begins with "_")`, 1},
	{"unknown key with signs of pointers", `{"format":"pvtally.sheet/1","low_light":{"a/b~c":{}}}`,
		`/low_light/a~1b~0c: found an unknown key, allowed: irradiance_w_m2, relative_efficiency_pct or a note (a key that begins with "_")`, 1},
	{"terminal control in a key", "{\"format\":\"pvtally.sheet/1\",\"low_light\":{\"\u009b31m\u202eq\":{}}}",
		`/low_light/\u009b31m\u202eq: found an unknown key, allowed: irradiance_w_m2, relative_efficiency_pct or a note (a key that begins with "_")`, 1},
	{"unknown technology", `{"format":"pvtally.sheet/1","cell":{"technology":"MONO"}}`,
		`/cell/technology: found "MONO" (string), allowed: "mono", "mono-n", "mono-perc", "multi", "multi-perc", "topcon", "hjt", "ibc", "cdte", "cigs", "a-si", "tandem"`, 1},
	{"too large", `{"format":"pvtally.sheet/1","body":{"mass_kg":1e999}}`, "/body/mass_kg: found 1e999 (number), allowed: a number that fits a double, in at most 40 characters", 1},
	{"far too large", `{"format":"pvtally.sheet/1","body":{"mass_kg":-1e999999999999}}`, "/body/mass_kg: found -1e999999999999 (number), allowed: a number that fits a double, in at most 40 characters", 1},
	{"too small", `{"format":"pvtally.sheet/1","body":{"mass_kg":1e-999999}}`, "/body/mass_kg: found 1e-999999 (number), allowed: a number that fits a double, in at most 40 characters", 1},
	{"too long", `{"format":"pvtally.sheet/1","body":{"mass_kg":` + strings.Repeat("1", 100) + `}}`,
		"/body/mass_kg: found " + strings.Repeat("1", 60) + "… (number), allowed: a number that fits a double, in at most 40 characters", 1},
	{"leading zero", `{"format":"pvtally.sheet/1","body":{"mass_kg":024}}`, "/body: found invalid character '2' after object value (expecting ',' or '}'), allowed: JSON text (RFC 8259)", 1},
	{"decimal comma", `{"format":"pvtally.sheet/1","body":{"mass_kg":24,5}}`, "/body: found no key where one must stand, allowed: a key in double quotes (RFC 8259); the decimal sign of JSON is the point", 1},
	{"not UTF-8", "{\"format\":\"pvtally.sheet/1\",\"maker\":\"\xff\"}", "/maker: found bytes that are not UTF-8, allowed: UTF-8 (RFC 8259, section 8.1)", 1},
	{"half a surrogate", `{"format":"pvtally.sheet/1","maker":"\ud800"}`, "/maker: found invalid surrogate pair `\\ud800\"}` in string, allowed: JSON text (RFC 8259)", 1},
	{"count of zero", `{"format":"pvtally.sheet/1","source":{"pages":0}}`, "/source/pages: found 0 (number), allowed: a whole number from 1 to 1000000", 1},
	{"part of a page", `{"format":"pvtally.sheet/1","source":{"pages":1.5}}`, "/source/pages: found 1.5 (number), allowed: a whole number from 1 to 1000000", 1},
	{"checksum", `{"format":"pvtally.sheet/1","source":{"sha256":"ABC"}}`, `/source/sha256: found "ABC" (string), allowed: 64 lower-case hexadecimal digits`, 1},
	{"short box", `{"format":"pvtally.sheet/1","evidence":{"/maker":{"printed":"a","box":[1,2,3]}}}`,
		"/evidence/~1maker/box: found an array, allowed: a list of four numbers: left, top, right, bottom in points", 1},
	{"long box", `{"format":"pvtally.sheet/1","evidence":{"/maker":{"printed":"a","box":[1,2,3,4,5]}}}`,
		"/evidence/~1maker/box: found an array, allowed: a list of four numbers: left, top, right, bottom in points", 1},
	{"box beyond paper", `{"format":"pvtally.sheet/1","evidence":{"/maker":{"printed":"a","box":[1,2,3,4e9]}}}`,
		"/evidence/~1maker/box/3: found 4e9 (number), allowed: a number of points between -1000000 and 1000000", 1},
	{"negative half step", `{"format":"pvtally.sheet/1","evidence":{"/maker":{"printed":"a","half_step":-1}}}`, "/evidence/~1maker/half_step: found -1 (number), allowed: a number not below 0", 1},
	{"evidence without print", `{"format":"pvtally.sheet/1","evidence":{"/maker":{}}}`, `/evidence/~1maker: found no "printed", allowed: a text`, 1},
	{"evidence of no pointer", `{"format":"pvtally.sheet/1","evidence":{"maker":{}}}`,
		`/evidence/maker: found an unknown key, allowed: the JSON Pointer of a value, such as "/models/0/stc/voc_v", or a note (a key that begins with "_")`, 1},
	{"read by magic", `{"format":"pvtally.sheet/1","evidence":{"/maker":{"printed":"a","by":"magic"}}}`,
		`/evidence/~1maker/by: found "magic" (string), allowed: "text", "picture", "html", "hand"`, 1},
	{"unresolved without reason", `{"format":"pvtally.sheet/1","unresolved":[{"field":"/maker"}]}`, `/unresolved/0: found no "why", allowed: a text`, 1},
	{"too many models", `{"format":"pvtally.sheet/1","models":[` + strings.Repeat("{},", 500) + `{}]}`, "/models: found more than 500 entries, allowed: a list of at most 500 objects", 1},
	{"deep", `{"format":"pvtally.sheet/1","_n":` + strings.Repeat("[", 33) + strings.Repeat("]", 33) + `}`, "/_n: found a note nested too deep, allowed: at most 32 levels", 1},
	{"very deep", `{"format":` + strings.Repeat("[", 100_000), "/format" + strings.Repeat("/0", 96) + "/…: found lists and objects nested too deep, allowed: a sheet record", 1},
	{"too many bytes", strings.Repeat(" ", maxBytes) + "{}", "the document: found 16777218 bytes, allowed: at most 16777216", 0},
}

func TestDecodeHostile(t *testing.T) {
	for _, tt := range hostile {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Decode([]byte(tt.text))
			var p Problem
			if !errors.As(err, &p) {
				t.Fatalf("no Problem: %v", err)
			}
			if p.String() != tt.want || p.Line != tt.line {
				t.Errorf("line %d: %s\nwant %d: %s", p.Line, p, tt.line, tt.want)
			}
		})
	}
}

// TestValidateHostile asks the whole validation for the same words.
func TestValidateHostile(t *testing.T) {
	for _, tt := range hostile {
		t.Run(tt.name, func(t *testing.T) {
			got := Validate([]byte(tt.text))
			if len(got) != 1 || got[0].String() != tt.want || got[0].Line != tt.line {
				t.Errorf("got %d %v\nwant line %d: %s", len(got), got, tt.line, tt.want)
			}
		})
	}
}
