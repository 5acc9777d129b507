package schema

import (
	"encoding/json"
	"maps"
	"slices"
	"strconv"
	"testing"

	"github.com/xeipuuv/gojsonschema"
)

// replacements are values of every kind, at and beyond every bound.
var replacements = []string{
	`null`, `true`, `0`, `1`, `-1`, `0.5`, `2.0`, `1e6`, `1000001`, `-1000001`, `""`, `"x"`, `"en"`, `"en-"`, `"en-GB"`, `"EN"`, `"mono"`, `"half"`, `"text"`, `"pvtally.sheet/1"`,
	`"/body"`, `"/a~2"`, `"/"`, `"body"`, `"0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef"`,
	`[]`, `[1]`, `["x"]`, `[""]`, `[1,"x"]`, `[1,2,3,4]`, `[1,2,3,"4"]`, `[1,2,3,4,5]`, `[{}]`, `[null]`,
	`{}`, `{"_n":1}`, `{"x":1}`, `{"printed":""}`, `{"field":"/a","why":"","printed":""}`, `{"/a":{"printed":""}}`, `{"/a~":{"printed":""}}`,
}

// TestDecodeAgreesWithTheJSONSchema puts every replacement in the place of every value of the example, takes every key away and adds
// one everywhere: the decoder accepts exactly what the JSON Schema accepts.
func TestDecodeAgreesWithTheJSONSchema(t *testing.T) {
	loader, err := gojsonschema.NewSchema(gojsonschema.NewBytesLoader(JSONSchema()))
	if err != nil {
		t.Fatal(err)
	}
	var whole map[string]any
	if err := json.Unmarshal(kestrel, &whole); err != nil {
		t.Fatal(err)
	}
	var root any
	accepted, rejected := 0, 0
	compare := func(path string) {
		text, err := json.Marshal(root)
		if err != nil {
			t.Fatal(err)
		}
		result, err := loader.Validate(gojsonschema.NewBytesLoader(text))
		if err != nil {
			t.Fatal(err)
		}
		_, err = Decode(text)
		if (err == nil) != result.Valid() {
			t.Errorf("%s: the decoder says %v, the schema %v", path, err, result.Errors())
		}
		if err == nil {
			accepted++
		} else {
			rejected++
		}
	}
	seen := map[*field]bool{} // one place of each field is enough
	var visit func(value any, path string, put func(any))
	visit = func(value any, path string, put func(any)) {
		f, entry := shapeAt(path)
		if !seen[f] || entry {
			seen[f] = true
			for _, r := range replacements {
				put(json.RawMessage(r))
				compare(path + " = " + r)
			}
			put(value)
		}
		switch value := value.(type) {
		case map[string]any:
			for _, key := range slices.Sorted(maps.Keys(value)) {
				inner := value[key]
				delete(value, key)
				compare(path + " without " + key)
				value[key] = inner
				visit(inner, path+"/"+escape(key), func(v any) { value[key] = v })
			}
			for _, key := range []string{"x", "_x", "", "/x"} {
				value[key] = 1
				compare(path + " with " + key)
				delete(value, key)
			}
		case []any:
			for i := range value {
				visit(value[i], path+"/"+strconv.Itoa(i), func(v any) { value[i] = v })
			}
		}
	}
	for _, key := range slices.Sorted(maps.Keys(whole)) { // one block at a time: the validator takes its time
		root = map[string]any{"format": Format, key: whole[key]}
		visit(root, "", func(v any) { root = v })
	}
	if accepted < 500 || rejected < 2000 {
		t.Errorf("only %d accepted and %d rejected: the comparison has become weak", accepted, rejected)
	}
}

// FuzzTextRules holds the hand-written tests of texts to the patterns that the JSON Schema shows.
func FuzzTextRules(f *testing.F) {
	for _, s := range []string{"", "/", "/a/b", "/a~0~1", "/~", "~", "a", "en", "en-US", "eng-x1-Latn", "e", "engl", "en-", "-en", "en--us", "en-123456789", "0123456789abcdef"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for key, rule := range textRules {
			if rule.pattern == "" {
				continue
			}
			text, err := marshal(s)
			if err != nil {
				t.Fatal(err)
			}
			var decoded string // invalid UTF-8 is replaced
			if err := json.Unmarshal(text, &decoded); err != nil {
				t.Fatal(err)
			}
			schema, err := gojsonschema.NewSchema(gojsonschema.NewGoLoader(map[string]any{"type": "string", "pattern": rule.pattern}))
			if err != nil {
				t.Fatal(err)
			}
			result, err := schema.Validate(gojsonschema.NewBytesLoader(text))
			if err != nil {
				t.Fatal(err)
			}
			if rule.ok(decoded) != result.Valid() {
				t.Errorf("%s: %q is %v here and %v by the pattern %s", key, decoded, rule.ok(decoded), result.Valid(), rule.pattern)
			}
		}
	})
}
