package schema

import "github.com/go-json-experiment/json/jsontext"

func (e *encoder) text(s, at string) {
	dst, err := jsontext.AppendQuote(e.dst, s)
	e.fail(at, err)
	e.dst = dst
}

// key writes a key of ours, which needs no escapes.
func (e *encoder) key(name string) {
	e.comma()
	e.dst = append(append(append(e.dst, '"'), name...), '"', ':')
	e.dst = append(e.dst, e.gap()...)
}

func (e *encoder) quotedKey(name, at string) {
	e.comma()
	e.text(name, at)
	e.dst = append(append(e.dst, ':'), e.gap()...)
}

func (e *encoder) open(bracket byte) {
	e.dst = append(e.dst, bracket)
	e.depth++
}

func (e *encoder) shut(bracket byte) {
	e.depth--
	if last := e.dst[len(e.dst)-1]; last != '{' && last != '[' {
		e.newline()
	}
	e.dst = append(e.dst, bracket)
}

// comma goes before every entry but the first.
func (e *encoder) comma() {
	if last := e.dst[len(e.dst)-1]; last != '{' && last != '[' {
		e.dst = append(e.dst, ',')
	}
	e.newline()
}

func (e *encoder) newline() {
	if e.indented {
		e.dst = append(e.dst, '\n')
		for range e.depth {
			e.dst = append(e.dst, "  "...)
		}
	}
}

func (e *encoder) gap() string {
	if e.indented {
		return " "
	}
	return ""
}
