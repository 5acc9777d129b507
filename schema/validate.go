package schema

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/xeipuuv/gojsonschema"
)

// maxProblems bounds what Validate reports of one document.
const maxProblems = 1000

// compiled is the JSON Schema made ready once; it is embedded and tested, so it cannot fail.
var compiled = sync.OnceValue(func() *gojsonschema.Schema {
	s, err := gojsonschema.NewSchema(gojsonschema.NewBytesLoader(jsonSchema))
	if err != nil {
		panic(err)
	}
	return s
})

// Validate judges the text of one record by the JSON Schema and by what a schema cannot say (see Document.Check), and lists what is
// not allowed in the order of the text; nothing means a valid record. A text that is not JSON gives one Problem. It is slower than
// Decode, which accepts the same records but stops at the first problem.
func Validate(data []byte) []Problem {
	doc, err := Decode(data)
	if err == nil && len(doc.Check()) > 0 {
		return doc.Check()
	}
	src := string(data)
	if p, ok := wellFormed(src); !ok {
		return []Problem{p}
	}
	v := validation{src: src}
	v.judge(v.tree())
	var first Problem
	if errors.As(err, &first) && !slices.ContainsFunc(v.problems, func(p Problem) bool { return p.Pointer == first.Pointer }) {
		v.problems = append(v.problems, first)
	}
	return v.sorted()
}

// wellFormed reports what keeps a text from being one JSON value of bearable size.
func wellFormed(src string) (Problem, bool) {
	if len(src) > maxBytes {
		return tooLong(len(src)), false
	}
	d := &decoder{scan: scanner(src), src: src}
	defer d.free()
	if err := d.SkipValue(); err != nil {
		return syntaxProblem(src, err), false
	}
	if err := d.end(); err != nil {
		return err.(Problem), false
	}
	return Problem{}, true
}

type validation struct {
	src      string
	problems []Problem // without lines, which are looked up for those that are reported
}

// tree gives the document as the validator wants it, without notes, which nobody judges, and without numbers whose arithmetic it
// could not bear: they are problems already.
func (v *validation) tree() any {
	dec := json.NewDecoder(strings.NewReader(v.src))
	dec.UseNumber()
	var root any
	if err := dec.Decode(&root); err != nil && err != io.EOF {
		v.problems = append(v.problems, syntaxProblem(v.src, err))
	}
	return v.prune(root, nil)
}

func (v *validation) prune(value any, path []string) any {
	switch value := value.(type) {
	case map[string]any:
		for key, inner := range value {
			if strings.HasPrefix(key, "_") {
				delete(value, key)
			} else {
				value[key] = v.prune(inner, append(path, key))
			}
		}
	case []any:
		for i, inner := range value {
			value[i] = v.prune(inner, append(path, strconv.Itoa(i)))
		}
	case json.Number:
		if _, ok := parseLiteral(string(value)); !ok {
			v.problems = append(v.problems, Problem{Pointer: pointerOf(path), Found: describe(string(value)), Allowed: allowedNumber})
			return json.Number("1")
		}
	}
	return value
}

// contextSeparator stands between the keys of the validator's context; no decoded key can hold it.
const contextSeparator = "\xff"

func (v *validation) judge(root any) {
	result, err := compiled().Validate(gojsonschema.NewRawLoader(root))
	if err != nil {
		v.problems = append(v.problems, Problem{Found: shown(err.Error(), 100), Allowed: "a sheet record"})
		return
	}
	for _, e := range result.Errors() {
		path := strings.Split(e.Context().String(contextSeparator), contextSeparator)[1:]
		v.add(e, path)
	}
}

// add says an error of the validator in the decoder's words.
func (v *validation) add(e gojsonschema.ResultError, path []string) {
	at := pointerOf(path)
	f, entry := shapeAt(at)
	p := Problem{Pointer: at, Allowed: "an object"}
	switch {
	case f == nil:
	case entry:
		p.Allowed = f.element()
	default:
		p.Allowed = f.allowed()
	}
	property, _ := e.Details()["property"].(string)
	switch e.Type() {
	case "required":
		missing, _ := shapeAt(at + "/" + escape(property))
		p.Found, p.Allowed = foundMissing(missing), missing.allowed()
	case "additional_property_not_allowed":
		p.Pointer = at + "/" + escape(property)
		p.Found, p.Allowed = foundUnknown, allowedPlace
		if l := sheetLayout; f == nil || f.kind != kindPlaces || entry {
			if f != nil {
				l = f.inner
			}
			p.Allowed = l.allowed()
		}
	case "array_max_items":
		p.Found = f.tooMany()
		if f.kind == kindBox {
			p.Found = "an array"
		}
	}
	v.problems = append(v.problems, p)
}

// sorted gives the problems their lines and finds, and their order.
func (v *validation) sorted() []Problem {
	problems := sortProblems(v.problems)
	if more := len(problems) - maxProblems; more > 0 {
		problems = append(problems[:maxProblems], Problem{Found: fmt.Sprintf("%d more problems", more), Allowed: "a sheet record"})
	}
	for i := range problems {
		p := &problems[i]
		start, end, ok := span(v.src, p.Pointer)
		if !ok {
			continue
		}
		p.Line = lineAt(v.src, start)
		if p.Found == "" {
			p.Found = describe(v.src[start:end])
		}
	}
	return sortProblems(problems)
}

func pointerOf(path []string) string {
	var b bytes.Buffer
	for _, key := range path {
		b.WriteByte('/')
		b.WriteString(escape(key))
	}
	return b.String()
}
