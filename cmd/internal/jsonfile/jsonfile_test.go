package jsonfile

import (
	"strings"
	"testing"
)

type sample struct {
	Format string `json:"format"`
	Name   string `json:"name,omitempty"`
	Deep   struct {
		Watts *float64           `json:"target_w"`
		Count int                `json:"count"`
		Sure  bool               `json:"sure"`
		By    map[string]float64 `json:"by"`
	} `json:"deep"`
	List []sample `json:"list"`
}

func TestDecode(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"whole", `{"format": "s/1", "name": "a", "deep": {"target_w": 5.4, "by": {"x": 1}}}`, ""},
		{"with a byte-order mark", "\ufeff" + `{"format": "s/1"}`, ""},
		{"empty", " \n", `the document: found nothing, allowed: an object of format "s/1"`},
		{"another file of ours", `{"format": "other/1", "maker": "x"}`, `/format: found "other/1", allowed: "s/1"`},
		{"no format", `{"name": "a"}`, `/format: found no "format", allowed: "s/1"`},
		{"format is a number", `{"format": 7}`, `/format: found "7", allowed: "s/1"`},
		{"a list", "[]", "line 1: the document: found a list, allowed: an object"},
		{"unknown key", "{\"format\": \"s/1\",\n \"deep\": {\n \"watts\": 1}}", "line 3: /deep/watts: found an unknown key, allowed: target_w, count, sure, by"},
		{"a text for a number", `{"format": "s/1", "deep": {"target_w": "5"}}`, `line 1: /deep/target_w: found a text, allowed: a number`},
		{"half a count", `{"format": "s/1", "deep": {"count": 1.5}}`, "line 1: /deep/count: found 1.5, allowed: a whole number"},
		{"a number for a text", `{"format": "s/1", "name": 5}`, "line 1: /name: found a number, allowed: a text in double quotes"},
		{"a number for a switch", `{"format": "s/1", "deep": {"sure": 1}}`, "line 1: /deep/sure: found a number, allowed: true or false"},
		{"an object for a list", `{"format": "s/1", "list": {}}`, "line 1: /list: found an object, allowed: a list"},
		{"twice", `{"format": "s/1", "format": "s/1"}`, "line 1: /format: found the key a second time, allowed: each key once"},
		{"broken off", `{"format": "s/1", "name": `, "found the end of the text, allowed: JSON text (RFC 8259)"},
		{"decimal comma", "{\"format\": \"s/1\",\n\"deep\": {\"target_w\": 5,4}}", "line 2: /deep: found no key where one must stand, allowed: a key in double quotes"},
		{"not UTF-8", "{\"format\": \"s/1\", \"name\": \"\xff\"}", "found bytes that are not UTF-8"},
		{"nested too deep", `{"format": "s/1", "list": ` + strings.Repeat("[", 20000), "max depth"},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := Decode([]byte(c.text), "s/1", new(sample))
			if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
				t.Errorf("%v, want %q", err, c.want)
			}
		})
	}
}
