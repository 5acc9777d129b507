package schema

import (
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"
)

// reject reads the value that comes next and reports that it is not what is allowed.
func (d *decoder) reject(allowed string) error {
	raw, start, err := d.raw()
	if err != nil {
		return err
	}
	return d.problem(start, describe(raw), allowed)
}

// problem reports what was read last.
func (d *decoder) problem(start int, found, allowed string) error {
	return Problem{Pointer: string(d.StackPointer()), Found: found, Allowed: allowed, Line: lineAt(d.src, start)}
}

// overfull reports a list that goes on after its last allowed entry.
func (d *decoder) overfull(f *field) error {
	list := string(d.StackPointer().Parent())
	start, _, _ := span(d.src, list)
	return Problem{Pointer: list, Found: f.tooMany(), Allowed: f.allowed(), Line: lineAt(d.src, start)}
}

// broken reports what is not JSON.
func (d *decoder) broken(err error) error { return syntaxProblem(d.src, err) }

func syntaxProblem(src string, err error) Problem {
	p := Problem{Allowed: "JSON text (RFC 8259)", Line: lineAt(src, len(src))}
	var syntax *jsontext.SyntacticError
	if errors.As(err, &syntax) {
		p.Pointer = string(syntax.JSONPointer)
		p.Line = lineAt(src, int(syntax.ByteOffset))
	}
	switch {
	case strings.TrimSpace(src) == "":
		p.Found, p.Allowed = "nothing", "a sheet record"
	case strings.HasPrefix(src, "\ufeff"):
		p.Found, p.Allowed = "a byte-order mark", "UTF-8 without it"
	case errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF):
		p.Found = "the end of the text"
	case errors.Is(err, jsontext.ErrDuplicateName):
		p.Found, p.Allowed = "the key a second time", "each key once"
	case errors.Is(err, jsontext.ErrNonStringName):
		p.Found, p.Allowed = "no key where one must stand", `a key in double quotes (RFC 8259); the decimal sign of JSON is the point`
	case syntax != nil && strings.Contains(syntax.Err.Error(), "max depth"):
		p.Found, p.Allowed = "lists and objects nested too deep", "a sheet record"
	case syntax != nil && !utf8.ValidString(src) && strings.Contains(syntax.Err.Error(), "UTF-8"):
		p.Found, p.Allowed = "bytes that are not UTF-8", "UTF-8 (RFC 8259, section 8.1)"
	case syntax != nil:
		p.Found = shown(syntax.Err.Error(), 100)
	default:
		p.Found = shown(err.Error(), 100)
	}
	return p
}
