// Package jsonfile reads the JSON files that people write for the program: policies, baselines, sites, prices. It is strict, for a misspelt
// key must not pass in silence, and says what is wrong as it is said of records. It knows none of the files.
package jsonfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"unicode/utf8"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"pvtally/schema"
)

// Decode reads a file whose "format" key must be as given into a struct, by its json tags. The error is a schema.Problem.
func Decode(data []byte, format string, into any) error {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	var head struct {
		Format any `json:"format"`
	}
	if err := json.Unmarshal(data, &head); err != nil {
		return problem(data, format, err)
	}
	if head.Format != format {
		found := "no \"format\""
		if head.Format != nil {
			found = fmt.Sprintf("%.60q", fmt.Sprint(head.Format))
		}
		return schema.Problem{Pointer: "/format", Found: found, Allowed: fmt.Sprintf("%q", format)}
	}
	if err := json.Unmarshal(data, into, json.RejectUnknownMembers(true)); err != nil {
		return problem(data, format, err)
	}
	return nil
}

// problem says in a user's words what the decoder says in Go's.
func problem(data []byte, format string, err error) error {
	var syntax *jsontext.SyntacticError
	var meaning *json.SemanticError
	switch {
	case len(bytes.TrimSpace(data)) == 0:
		return schema.Problem{Found: "nothing", Allowed: fmt.Sprintf("an object of format %q", format)}
	case errors.As(err, &syntax):
		p := schema.Problem{Pointer: string(syntax.JSONPointer), Line: line(data, syntax.ByteOffset), Found: syntax.Err.Error(), Allowed: "JSON text (RFC 8259)"}
		switch {
		case errors.Is(err, jsontext.ErrDuplicateName):
			p.Found, p.Allowed = "the key a second time", "each key once"
		case errors.Is(err, jsontext.ErrNonStringName):
			p.Found, p.Allowed = "no key where one must stand", "a key in double quotes (RFC 8259); the decimal sign of JSON is the point"
		case errors.Is(err, io.ErrUnexpectedEOF):
			p.Found = "the end of the text"
		case !utf8.Valid(data):
			p.Found, p.Allowed = "bytes that are not UTF-8", "UTF-8 (RFC 8259, section 8.1)"
		}
		return p
	case errors.As(err, &meaning):
		p := schema.Problem{Pointer: string(meaning.JSONPointer), Line: line(data, meaning.ByteOffset), Found: kinds[meaning.JSONKind], Allowed: form(meaning.GoType)}
		if errors.Is(err, json.ErrUnknownName) {
			p.Found, p.Allowed = "an unknown key", keys(meaning.GoType)
		}
		if len(meaning.JSONValue) > 0 && len(meaning.JSONValue) < 60 {
			p.Found = string(meaning.JSONValue)
		}
		return p
	}
	return err
}

// kinds are how values of another kind than wanted are named.
var kinds = map[jsontext.Kind]string{'n': "null", 'f': "false", 't': "true", '"': "a text", '0': "a number", '{': "an object", '[': "a list"}

// form is what a Go type takes.
func form(t reflect.Type) string {
	if t == nil {
		return "another value"
	}
	switch t.Kind() {
	case reflect.Pointer:
		return form(t.Elem())
	case reflect.String:
		return "a text in double quotes"
	case reflect.Float64:
		return "a number"
	case reflect.Int:
		return "a whole number"
	case reflect.Bool:
		return "true or false"
	case reflect.Slice:
		return "a list"
	}
	return "an object"
}

// keys are those of a struct, from its tags.
func keys(t reflect.Type) string {
	if t == nil || t.Kind() != reflect.Struct {
		return "a known key"
	}
	var names []string
	for i := range t.NumField() {
		name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		names = append(names, name)
	}
	return strings.Join(names, ", ")
}

// line is the line of an offset, from 1.
func line(data []byte, offset int64) int {
	return 1 + bytes.Count(data[:min(max(int(offset), 0), len(data))], []byte("\n"))
}
