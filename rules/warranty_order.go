package rules

import "fmt"

var warrantyOrder = &Rule{
	ID:      "warranty/order",
	Title:   "the warranties' years and rates are plausible",
	Why:     "The product warranty does not outlast the power warranty, and rates lie where the trade's do; a figure outside is another one's.",
	Formula: "product years ≤ performance years; 0 ≤ first year loss ≤ 5 %; 0.1 ≤ yearly loss ≤ 1.5 %; 70 ≤ final output < 100 %",
	Sources: []Source{{"Warranties of real sheets", "common practice"}, {"Jordan et al., Prog. Photovolt. 24 (2016) 978, DOI 10.1002/pip.2744: median loss 0.5 to 0.6 % a year", "read"}},
	Levels:  []Threshold{{Note, "a rate outside the usual"}, {Warning, "product warranty longer than the power warranty"}},
	Needs:   []string{"warranty"},
	Yields:  []string{"warranty/end-value"},
	Check: func(p *Pass) {
		w := &p.Sheet.Warranty
		product, years := p.value(w.ProductYears, "warranty", "product_years", -1, -1), p.value(w.PerformanceYears, "warranty", "performance_years", -1, -1)
		if product.Printed() && years.Printed() && product.V > years.V {
			p.Report(Warning, Finding{Message: fmt.Sprintf("product warranty of %s is longer than the power warranty of %s", product, years)}, &product, &years)
		}
		first, annual, final := p.value(w.FirstYearLoss, "warranty", "first_year_loss_pct", -1, -1), p.value(w.AnnualLoss, "warranty", "annual_loss_pct", -1, -1), p.value(w.FinalOutput, "warranty", "final_output_pct", -1, -1)
		for _, c := range []struct {
			v      *Value
			lo, hi float64
		}{{&product, 1, 50}, {&years, 5, 50}, {&first, 0, 5}, {&annual, 0.1, 1.5}, {&final, 70, 99}} {
			if c.v.Printed() && (c.v.V < c.lo || c.v.V > c.hi) {
				p.Report(Note, Finding{Message: fmt.Sprintf("%s %s, usual is %s to %s", c.v.Symbol(), c.v, around(c.lo), around(c.hi)), Implied: []string{around(c.lo), around(c.hi)}}, c.v)
			}
		}
	},
}
