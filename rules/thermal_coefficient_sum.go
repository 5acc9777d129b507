package rules

import "fmt"

var thermalCoefficientSum = &Rule{
	ID:    "thermal/coefficient-sum",
	Title: "the three coefficients differ by the fill factor's",
	Why: "Power is Voc × Isc × FF, so γ is exactly the sum of α, β and the fill factor's coefficient, which theory puts near -0.1 %/K for silicon. " +
		"γ weaker than β means that the two rows have changed places.",
	Formula: "-0.26 ≤ γ - α - β ≤ -0.04 %/K for silicon; |γ| > |β|",
	Sources: []Source{
		{"Product rule; Green, Solar Cells 7 (1982) 337, DOI 10.1016/0379-6787(82)90057-6 for the fill factor's term", "from memory"},
		{"California Energy Commission list, edition 2021-12: 98 % of 15,906 silicon modules within -0.256…-0.075, |γ| < |β| on 18 of 16,511", "calculated"},
	},
	Grade: Grade{Of: "distance outside the bounds beyond rounding", Unit: "%/K", Note: 0, Warning: 0.01, Error: 0.15},
	Settings: []Setting{
		{"lowest", -0.26, "%/K", "lower bound of γ - α - β"},
		{"highest", -0.04, "%/K", "upper bound of γ - α - β"},
	},
	Levels:  []Threshold{{Error, "|γ| is below |β| by more than rounding"}},
	Needs:   []string{"thermal.alpha_isc", "thermal.beta_voc", "thermal.gamma_pmax", "cell.technology"},
	Yields:  []string{"thermal/sign", "thermal/alpha-range", "thermal/beta-range", "thermal/gamma-range"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		if !p.silicon || len(p.coef) == 0 {
			return
		}
		c := &p.coef[0]
		if c.Beta.Known() && c.Gamma.Known() && c.Gamma.Lo > c.Beta.Hi {
			p.Report(Error, Finding{Message: fmt.Sprintf("power falls by %s and voltage by %s: no silicon module loses power more slowly than voltage; the rows of β and γ seem interchanged", c.Gamma.src, c.Beta.src),
				Implied: []string{c.Beta.src.text}}, &c.Gamma.src, &c.Beta.src)
			return
		}
		if !c.Alpha.Known() || !c.Beta.Known() || !c.Gamma.Known() || c.Alpha.V < 0 {
			return
		}
		sum := c.Gamma.Sub(c.Alpha.Interval).Sub(c.Beta.Interval)
		lo, hi := p.Setting("lowest"), p.Setting("highest")
		gap := max(lo-sum.Hi, sum.Lo-hi)
		if gap <= 1e-9 {
			return
		}
		p.Report(p.Grade(gap), Finding{Message: fmt.Sprintf("γ - α - β = %s - %s - %s = %s %%/K, the fill factor's share is %s to %s %%/K for silicon", c.Gamma.src, c.Alpha.src, c.Beta.src, around(sum.Mid()), around(lo), around(hi)),
			Implied: []string{around(lo), around(hi)}}, &c.Gamma.src, &c.Alpha.src, &c.Beta.src)
	},
}
