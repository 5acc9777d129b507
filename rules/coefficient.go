package rules

import (
	"fmt"

	"pvtally/rules/envelope"
)

// coefficientRange judges a coefficient by its technology's range, and says when it would be usual in another unit.
func (p *Pass) coefficientRange(q envelope.Quantity, c *Coefficient, of *Value, what string) {
	r := p.env[q]
	if r == nil || !c.Known() || q == envelope.Alpha && c.V < 0 && p.alphaRises() {
		return
	}
	l := p.Grade(r.Excess(c.Lo, c.Hi))
	if l == 0 || q != envelope.Alpha && p.interchanged() {
		return
	}
	origin := r.HiOrigin
	if c.Hi < r.Lo {
		origin = r.LoOrigin
	}
	text := fmt.Sprintf("%s = %s", what, c.src)
	if unitOf(c.src.at.name) != " %/K" {
		text += fmt.Sprintf(" = %s %%/K of %s", around(c.V), of)
	}
	text += fmt.Sprintf(", usual is %s to %s %%/K (%s)", around(r.Lo), around(r.Hi), origin)
	if unit := p.otherUnit(r, c, of); unit != "" {
		text += "; it would be usual as " + unit
	}
	p.Report(l, Finding{Message: text, Implied: []string{around(r.Lo), around(r.Hi)}}, &c.src)
}

// interchanged reports that β and γ stand the wrong way round and would be usual the other way: thermal/coefficient-sum says so, once.
func (p *Pass) interchanged() bool {
	c := &p.coef[0]
	usual := func(q envelope.Quantity, c *Coefficient) bool {
		r := p.env[q]
		return r == nil || r.Excess(c.Lo, c.Hi) < 0.5
	}
	return p.silicon && c.Beta.Known() && c.Gamma.Known() && c.Gamma.Lo > c.Beta.Hi && usual(envelope.Beta, &c.Gamma) && usual(envelope.Gamma, &c.Beta)
}

// otherUnit is the unit in which a coefficient printed in %/K would be usual: the slips that sheets make.
func (p *Pass) otherUnit(r *envelope.Range, c *Coefficient, of *Value) string {
	if unitOf(c.src.at.name) != " %/K" || of.V <= 0 {
		return ""
	}
	per := unitOf(of.at.name)[1:]
	for _, u := range []struct {
		unit   string
		factor float64
	}{{per + "/K", 100 / of.V}, {"m" + per + "/K", 0.1 / of.V}, {"m" + per + "/K per cell", 0.1 * p.series / of.V}, {"a tenth of it", 0.1}, {"ten times it", 10}} {
		if v := c.V * u.factor; v > r.Lo && v < r.Hi {
			return fmt.Sprintf("%s (%s %%/K)", u.unit, around(v))
		}
	}
	return ""
}
