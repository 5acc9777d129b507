package rules

import (
	"fmt"

	"pvtally/rules/envelope"
)

var thermalSign = &Rule{
	ID:    "thermal/sign",
	Title: "current rises with temperature, voltage and power fall",
	Why: "A warmer cell absorbs a little more light (its gap narrows) and loses voltage much faster. A coefficient of the other sign has lost its minus, gained one, or is another quantity's. " +
		"A sheet that prints β and γ both without their minus may mean the size of the loss.",
	Formula: "α(Isc) ≥ 0 (silicon, CdTe, amorphous silicon), β(Voc) < 0, γ(Pmax) < 0",
	Sources: []Source{
		{"Green, Prog. Photovolt. 11 (2003) 333, DOI 10.1002/pip.496 (β, γ)", "secondary"},
		{"Osterwald et al., IEEE PVSC 42 (2015), DOI 10.1109/PVSC.2015.7355842: databases hold physically unreasonable α", "read"},
	},
	Levels: []Threshold{
		{Warning, "β and γ are both printed without a minus and have usual sizes, or α is slightly negative"},
		{Error, "one coefficient alone has the wrong sign"},
	},
	Needs:   []string{"thermal.alpha_isc", "thermal.beta_voc", "thermal.gamma_pmax"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		if len(p.coef) == 0 {
			return
		}
		c := &p.coef[0]
		if a := &c.Alpha; a.Known() && a.V < 0 && p.alphaRises() {
			l := Error
			if a.V > -0.005 {
				l = Warning
			}
			p.Report(l, Finding{Message: fmt.Sprintf("α(Isc) = %s: a module's current rises with temperature", a.src), Implied: []string{around(-a.src.V)}}, &a.src)
		}
		beta, gamma := positive(&c.Beta), positive(&c.Gamma)
		usual := func(c *Coefficient, q envelope.Quantity) bool {
			r := p.env[q]
			return r == nil || r.Excess(c.Lo, c.Hi) < 0.5
		}
		habit := beta && gamma && usual(&c.Beta, envelope.Beta) && usual(&c.Gamma, envelope.Gamma)
		if habit {
			p.Report(Warning, Finding{Message: fmt.Sprintf("β(Voc) = %s and γ(Pmax) = %s have no minus; the sheet may mean the size of the loss", c.Beta.src, c.Gamma.src), Implied: []string{around(-c.Beta.src.V), around(-c.Gamma.src.V)}}, &c.Beta.src, &c.Gamma.src)
			return
		}
		for _, k := range []struct {
			c        *Coefficient
			q        envelope.Quantity
			positive bool
			symbol   string
		}{{&c.Beta, envelope.Beta, beta, "β(Voc)"}, {&c.Gamma, envelope.Gamma, gamma, "γ(Pmax)"}} {
			if !k.positive {
				continue
			}
			text := fmt.Sprintf("%s = %s is positive, and that size is not usual with a minus either", k.symbol, k.c.src)
			if usual(k.c, k.q) {
				text = fmt.Sprintf("%s = %s has lost its minus", k.symbol, k.c.src)
			}
			p.Report(Error, Finding{Message: text, Implied: []string{around(-k.c.src.V)}}, &k.c.src)
		}
	},
}

// positive reports a printed coefficient above zero.
func positive(c *Coefficient) bool { return c.Known() && c.src.V > 0 }

// alphaRises reports that the technology's current surely rises with temperature; CIGS and tandems have α about zero.
func (p *Pass) alphaRises() bool {
	t := p.Sheet.Cell.Technology
	return p.silicon || t == "cdte" || t == "a-si"
}
