package schema

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/xeipuuv/gojsonschema"
)

// node is a JSON Schema (draft-07); the order of its fields is the order of the file.
type node struct {
	Schema      string   `json:"$schema,omitempty"`
	ID          string   `json:"$id,omitempty"`
	Title       string   `json:"title,omitempty"`
	Description string   `json:"description,omitempty"`
	Type        string   `json:"type,omitempty"`
	Enum        []string `json:"enum,omitempty"`
	Pattern     string   `json:"pattern,omitempty"`
	MinLength   int      `json:"minLength,omitempty"`
	Minimum     *int     `json:"minimum,omitempty"`
	Maximum     int      `json:"maximum,omitempty"`
	Items       *node    `json:"items,omitempty"`
	MinItems    int      `json:"minItems,omitempty"`
	MaxItems    int      `json:"maxItems,omitempty"`
	Required    []string `json:"required,omitempty"`
	Properties  keys     `json:"properties,omitempty"`
	Patterns    keys     `json:"patternProperties,omitempty"`
	Additional  *bool    `json:"additionalProperties,omitempty"`
}

type keys []struct {
	name string
	node *node
}

// MarshalJSON keeps the order of the record.
func (k keys) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	for i, entry := range k {
		b.WriteByte("{,"[min(i, 1)])
		for j, v := range []any{entry.name, entry.node} {
			text, err := marshal(v)
			if err != nil {
				return nil, err
			}
			b.WriteString([]string{"", ":"}[j])
			b.Write(text)
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

func marshal(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSpace(b.Bytes()), err
}

func (k *keys) add(name string, n *node) {
	*k = append(*k, struct {
		name string
		node *node
	}{name, n})
}

func objectNode(l *layout) *node {
	no := false
	n := &node{Type: "object", Additional: &no}
	for i := range l.fields {
		f := &l.fields[i]
		if f.must {
			n.Required = append(n.Required, f.name)
		}
		n.Properties.add(f.name, fieldNode(f))
	}
	n.Patterns.add("^_", noteNode())
	return n
}

func noteNode() *node {
	return &node{Title: "Note", Description: "A person's note: kept, never judged."}
}

func fieldNode(f *field) *node {
	n := elementNode(f)
	switch f.kind {
	case kindNumbers, kindTexts, kindObjects:
		n = &node{Type: "array", Items: n, MaxItems: f.limit}
	case kindBox:
		n = &node{Type: "array", Items: n, MinItems: 4, MaxItems: 4}
	case kindPlaces:
		no, place := false, n
		n = &node{Type: "object", Additional: &no}
		n.Patterns.add(pointerPattern, place)
		n.Patterns.add("^_", noteNode())
	}
	d := f.describe()
	n.Title, n.Description = d.Title, d.Text
	if d.Unit != "" {
		n.Description += " Unit: " + d.Unit + "."
	}
	return n
}

func elementNode(f *field) *node {
	bound := func(v int) *int { return &v }
	switch f.kind {
	case kindText, kindTexts:
		switch {
		case f.text != nil:
			return &node{Type: "string", Enum: f.text.values, Pattern: f.text.pattern}
		case f.must:
			return &node{Type: "string"}
		}
		return &node{Type: "string", MinLength: 1}
	case kindCount:
		return &node{Type: "integer", Minimum: bound(1), Maximum: maxCount}
	case kindBox:
		return &node{Type: "number", Minimum: bound(-maxLength), Maximum: maxLength}
	case kindNumber, kindNumbers:
		if f.min0 {
			return &node{Type: "number", Minimum: bound(0)}
		}
		return &node{Type: "number"}
	}
	return objectNode(f.inner)
}

func TestJSONSchemaIsOfTheTypes(t *testing.T) {
	root := objectNode(sheetLayout)
	root.Schema = "http://json-schema.org/draft-07/schema#"
	root.ID = "urn:pvtally:sheet:1"
	root.Title = "Sheet record"
	root.Description = "One datasheet of a photovoltaic module as data. A key that carries no value was not printed. Numbers are the printed decimals: 13.10 is not 13.1. " +
		"A wrong number that a sheet prints is a right record."
	text, err := marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := json.Indent(&b, text, "", "  "); err != nil {
		t.Fatal(err)
	}
	b.WriteByte('\n')
	golden(t, "sheet.schema.json", b.Bytes())
}

func TestJSONSchemaObeysDraft7(t *testing.T) {
	loader := gojsonschema.NewSchemaLoader()
	loader.Validate = true // against the meta-schema
	loader.Draft = gojsonschema.Draft7
	loader.AutoDetect = false
	if err := loader.AddSchemas(gojsonschema.NewBytesLoader(jsonSchema)); err != nil {
		t.Fatal(err)
	}
}

// TestDescriptions asks for words about every field, and for a field to all words.
func TestDescriptions(t *testing.T) {
	used := map[string]bool{}
	var visit func(l *layout)
	visit = func(l *layout) {
		for i := range l.fields {
			f := &l.fields[i]
			used[f.owner+"."+f.name] = true
			d := f.describe()
			if d.Title == "" || !strings.HasSuffix(d.Text, ".") {
				t.Errorf("%s.%s has no title or no sentence: %q", f.owner, f.name, d)
			}
			counted := map[string]bool{"count": true, "busbars": true, "bypass_diodes": true, "air_mass": true, "half_step": true, "value": true}
			if f.kind == kindNumber && d.Unit == "" && f.owner != "Packing" && !counted[f.name] {
				t.Errorf("%s.%s has no unit", f.owner, f.name)
			}
			if f.inner != nil {
				visit(f.inner)
			}
		}
	}
	visit(sheetLayout)
	for name := range descriptions {
		if !used[name] {
			t.Errorf("%s describes no field", name)
		}
	}
}
