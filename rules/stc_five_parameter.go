package rules

import (
	"errors"
	"fmt"

	"pvtally/rules/envelope"
	"pvtally/rules/physics"
	"pvtally/schema/relate"
)

var stcFiveParameter = &Rule{
	ID:    "stc/five-parameter",
	Title: "a single-diode curve goes through Isc, Voc and the maximum-power point",
	Why: "A module's curve is a diode's with some series and shunt resistance. If no such curve passes through the printed points with its maximum power there, one of them is wrong. " +
		"Where one exists, its ideality and its own coefficient of Voc are like those of other modules of the technology.",
	Formula: "I = IL - Io (exp((V + I Rs)/a) - 1) - (V + I Rs)/Rsh through (0, Isc), (Voc, 0), (Vmp, Imp) with d(IV)/dV = 0 there, Rs ≥ 0, Rsh > 0, 0.5 ≤ a/(Ns kT/q) ≤ 2; β nearest to the printed one",
	Sources: []Source{{"De Soto, Klein, Beckman, Solar Energy 80 (2006) 78, DOI 10.1016/j.solener.2005.06.010", "secondary"}, envelopeSource},
	Grade:   Grade{Of: "distance of the ideality or of the model's β outside the usual range", Unit: "of the distance from the bound to the median", Note: 0.25, Warning: 1, Error: Never},
	Settings: []Setting{
		{"lower_note_pct", 0.1, "%", "how much lower Imp or Vmp must be for a curve to exist, for a note"},
		{"lower_warning_pct", 1, "%", "the same for a warning"},
		{"lower_error_pct", 3, "%", "the same for an error"},
	},
	Levels: []Threshold{{Warning, "no physical curve exists unless Imp or Vmp is lower by 1 %"}, {Error, "the same by 3 %"}},
	Needs:  []string{"models[].stc (Pmax, Vmp, Imp, Voc, Isc)", "cell.count", "cell.technology", "thermal.beta_voc"},
	Yields: []string{"stc/voltage-order", "stc/current-order", "stc/voltage-ratio", "stc/current-ratio", "stc/fill-factor-limit", "stc/fill-factor", "stc/cell-count", "stc/voc-per-cell", "stc/power-product", "classes/slipped-row",
		"thermal/sign", "thermal/beta-range", "thermal/beta-theory", "thermal/coefficient-sum"},
	Check: func(p *Pass) {
		for i := range p.stc {
			fit, ok, err := p.Fit(i)
			e, c := &p.stc[i], &p.coef[i]
			switch {
			case errors.Is(err, physics.ErrMissing), e.Vmp.V >= e.Voc.V, e.Imp.V >= e.Isc.V:
			case err != nil:
				p.noCurve(i, err)
			case ok:
				p.fitUsual(i, fit, e, c)
			}
		}
	},
}

// noCurve grades a refusal by how much lower the knee's current or voltage, whichever stands too near its end, must be for a curve to exist.
func (p *Pass) noCurve(i int, err error) {
	n, _ := p.nameplate(i)
	knee, v := &n.Imp, &p.stc[i].Imp
	if errors.Is(err, physics.ErrNoSeries) || errors.Is(err, physics.ErrVoltage) {
		knee, v = &n.Vmp, &p.stc[i].Vmp
	}
	printed, lo, hi := *knee, 0.0, 0.25
	for range 20 {
		mid := (lo + hi) / 2
		if *knee = printed * (1 - mid); n.Solvable() {
			hi = mid
		} else {
			lo = mid
		}
	}
	pct := 100*hi - 100*v.Half()/v.V
	var l Level
	switch {
	case pct > p.Setting("lower_error_pct"):
		l = Error
	case pct > p.Setting("lower_warning_pct"):
		l = Warning
	case pct > p.Setting("lower_note_pct"):
		l = Note
	}
	e := &p.stc[i]
	p.Report(l, Finding{
		Message: fmt.Sprintf("no single-diode curve goes through %s: %s; %s would have to be lower by %s %%", list([]*Value{&e.Isc, &e.Voc, &e.Imp, &e.Vmp}), err, v.Symbol(), Percent(100*hi)),
		Implied: []string{"0", around(printed * (1 - hi))},
	}, v, &e.Isc, &e.Voc, &e.Vmp, &e.Imp)
}

// fitUsual judges a solution's ideality and its coefficient of Voc by the list's.
func (p *Pass) fitUsual(i int, fit *physics.Fit, e *Electrical, c *Coefficients) {
	if r := p.env[envelope.Ideality]; r != nil {
		if l := p.Grade(r.Excess(fit.Ideality, fit.Ideality)); l != 0 {
			p.Report(l, Finding{Message: fmt.Sprintf("the single-diode curve through the printed points and β has an ideality of %s, usual is %s to %s (%s)", around(fit.Ideality), around(r.Lo), around(r.Hi), r.HiOrigin)},
				&e.Voc, &e.Vmp, &e.Imp, &e.Isc, &c.Beta.src, &p.count)
			return
		}
	}
	if r := p.env[envelope.FitBeta]; r != nil && fit.Bound != "" {
		residual := relate.Exactly(1000 * (fit.Beta - c.Beta.V/100*e.Voc.V) / p.series)
		if l := p.Grade(r.Excess(residual.Lo, residual.Hi)); l != 0 {
			p.Report(l, Finding{Message: fmt.Sprintf("the single-diode curve nearest to the printed β gives %s %%/K, printed is %s (%s); the difference of %s mV/K per cell is unusual", around(100*fit.Beta/e.Voc.V), c.Beta.src, fit.Bound, around(residual.Lo))},
				&c.Beta.src, &e.Voc, &e.Vmp, &e.Imp, &e.Isc)
		}
	}
}
