package page

import "github.com/ledongthuc/pdf"

// scope is the resources of a page or form. The library parses an object anew at each use, so what was used is kept.
type scope struct {
	resources pdf.Value
	fonts     map[string]*secondFont
	forms     map[string]*secondForm
}

// secondForm is a form with the scope of its content; nil where the name stands for something else.
type secondForm struct {
	content pdf.Value
	matrix  matrix
	scope   *scope
}

func newScope(resources pdf.Value) *scope {
	return &scope{resources: resources, fonts: map[string]*secondFont{}, forms: map[string]*secondForm{}}
}

// font gives the scope's font of a name.
func (c *scope) font(name string) *secondFont {
	f := c.fonts[name]
	if f == nil {
		f = newSecondFont(c.resources.Key("Font").Key(name))
		c.fonts[name] = f
	}
	return f
}

// form gives the scope's form of a name.
func (c *scope) form(name string) *secondForm {
	f, known := c.forms[name]
	if known {
		return f
	}
	if x := c.resources.Key("XObject").Key(name); x.Kind() == pdf.Stream && x.Key("Subtype").Name() == "Form" {
		f = &secondForm{content: x, matrix: identity, scope: c}
		if m := x.Key("Matrix"); m.Len() == 6 {
			at := func(i int) float64 { return m.Index(i).Float64() }
			f.matrix = matrix{at(0), at(1), at(2), at(3), at(4), at(5)}
		}
		if own := x.Key("Resources"); own.Kind() == pdf.Dict {
			f.scope = newScope(own)
		}
	}
	c.forms[name] = f
	return f
}
