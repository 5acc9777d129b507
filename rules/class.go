package rules

import (
	"errors"

	"pvtally/rules/physics"
	"pvtally/schema"
)

// Class is a power class as the rules see it, for those who calculate on: coefficients relative and with their signs, the cells in
// series, the single-diode curve.
type Class struct {
	STC Electrical
	Coefficients
	Series    float64 // cells in series, 0 where not known
	Nameplate physics.Nameplate
	Fit       *physics.Fit // nil where there is no curve; NoFit says why
	NoFit     error
}

// ErrNoNameplate: a single-diode curve needs more than the sheet prints.
var ErrNoNameplate = errors.New("the curve needs Isc, Voc, Imp, Vmp, β(Voc), the count of cells and a technology with one junction")

// Classes are those of a record, in its order.
func Classes(sheet *schema.Sheet) []Class {
	p := new(Pass)
	p.start(sheet)
	list := make([]Class, len(p.stc))
	for i := range list {
		c := Class{STC: p.stc[i], Coefficients: p.coef[i], Series: p.series}
		n, known := p.nameplate(i)
		c.Nameplate = n
		fit, ok, err := p.Fit(i)
		switch {
		case ok:
			c.Fit = fit
		case !known:
			c.NoFit = ErrNoNameplate
		default:
			c.NoFit = err
		}
		list[i] = c
	}
	return list
}

// Mended reports that the sheet prints the coefficient without its minus.
func (c *Coefficient) Mended() bool { return c.src.V*c.V < 0 }

// Literal is the coefficient as printed in %/K; "" where it is printed otherwise or without its sign.
func (c *Coefficient) Literal() string {
	if c.Mended() || unitOf(c.src.at.name) != " %/K" {
		return ""
	}
	return c.src.text
}
