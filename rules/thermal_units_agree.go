package rules

import (
	"fmt"

	"pvtally/schema"
	"pvtally/schema/relate"
)

var thermalUnitsAgree = &Rule{
	ID:      "thermal/units-agree",
	Title:   "a coefficient printed twice is the same in both units",
	Why:     "The absolute coefficient is the relative one times the value it belongs to. Sheets take one of their classes for it and do not say which, so the range over the classes is allowed.",
	Formula: "β[V/K] = β[%/K] / 100 × Voc; likewise α with Isc and γ with Pmax",
	Sources: []Source{{"Arithmetic; IEC 60891 for the two forms", "from memory"}},
	Grade:   Grade{Of: "part of the gap that rounding and the choice of class cannot explain", Unit: "%", Note: 1, Warning: 3, Error: 15},
	Needs:   []string{"thermal.*_pct_per_k", "thermal.*_a_per_k, *_v_per_k or *_w_per_k", "models[].stc"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		t := &p.Sheet.Thermal
		p.bothUnits(t.AlphaIsc, t.AlphaIscAbs, "alpha_isc_pct_per_k", "alpha_isc_a_per_k", func(e *Electrical) *Value { return &e.Isc })
		p.bothUnits(t.BetaVoc, t.BetaVocAbs, "beta_voc_pct_per_k", "beta_voc_v_per_k", func(e *Electrical) *Value { return &e.Voc })
		p.bothUnits(t.GammaPmax, t.GammaPmaxAbs, "gamma_pmax_pct_per_k", "gamma_pmax_w_per_k", func(e *Electrical) *Value { return &e.Pmax })
	},
}

func (p *Pass) bothUnits(pct, abs schema.Number, pctName, absName string, of func(*Electrical) *Value) {
	rel, a := p.value(pct, "thermal", pctName, -1, -1), p.value(abs, "thermal", absName, -1, -1)
	if !rel.Printed() || !a.Printed() || rel.V == 0 {
		return
	}
	base, any := relate.Interval{}, false
	for i := range p.stc {
		if v := of(&p.stc[i]); v.Printed() {
			if !any {
				base = v.Interval
			}
			base, any = base.Hull(v.Interval), true
		}
	}
	if !any {
		return
	}
	expected := rel.Mul(base).Scale(0.01)
	g := Compare(&a, expected)
	l := p.Grade(g.Pct)
	if l == 0 {
		return
	}
	text := fmt.Sprintf("%s is %s and %s; the first is %s%s", a.Symbol(), rel, a, around(expected.Mid()), unitOf(absName))
	for _, slip := range []struct {
		factor float64
		says   string
	}{{1000, "the second seems to be in thousandths"}, {1 / p.series, "the second seems to be per cell"}, {1000 / p.series, "the second seems to be in thousandths per cell"}, {100 / base.Mid(), "the second seems to be the relative one again"}} {
		if p.series > 0 && relate.Exactly(a.V/slip.factor).Gap(expected.Inflate(0.03*max(expected.Hi, -expected.Lo))) == 0 {
			text += "; " + slip.says
			break
		}
	}
	p.Report(l, apart(g, expected, text), &a, &rel)
}
