package rules

import (
	"fmt"

	"pvtally/schema/relate"
)

var warrantyEndValue = &Rule{
	ID:      "warranty/end-value",
	Title:   "the promised output at the end follows from the yearly losses",
	Why:     "A linear power warranty loses so much in the first year and so much in each year after: the output at the end is arithmetic. A sheet whose end value is another promises two things at once.",
	Formula: "final output = 100 - first year loss - yearly loss × (years - 1), to 0.1 point",
	Sources: []Source{{"Arithmetic of a linear power warranty; 98 - 0.55 × 24 = 84.80", "calculated"}},
	Grade:   Grade{Of: "part of the gap that rounding to 0.1 point cannot explain", Unit: "points", Note: 0, Warning: 0.15, Error: 1},
	Settings: []Setting{
		{"within", 0.1, "points", "what makers round the end value by, beside the printed digits"},
	},
	Needs: []string{"warranty.performance_years", "warranty.first_year_loss_pct", "warranty.annual_loss_pct", "warranty.final_output_pct"},
	Check: func(p *Pass) {
		w := &p.Sheet.Warranty
		years, first := p.value(w.PerformanceYears, "warranty", "performance_years", -1, -1), p.value(w.FirstYearLoss, "warranty", "first_year_loss_pct", -1, -1)
		annual, final := p.value(w.AnnualLoss, "warranty", "annual_loss_pct", -1, -1), p.value(w.FinalOutput, "warranty", "final_output_pct", -1, -1)
		if !years.Printed() || !first.Printed() || !annual.Printed() || !final.Printed() {
			return
		}
		// the warranty's figures are promises, exact as printed: only the end value is rounded
		end := 100 - first.V - annual.V*(years.V-1)
		expected := relate.Exactly(end).Inflate(p.Setting("within"))
		g := Compare(&final, expected)
		l := p.Grade(g.Abs)
		if l == 0 {
			return
		}
		p.Report(l, Finding{
			Message: fmt.Sprintf("100 - %s - %s × %s = %s %%, printed final output %s after %s", first.text, annual.text, around(years.V-1), around(end), final, years),
			Implied: []string{around(end)}, DeviationPct: Percent(g.Pct + g.RoundingPct), RoundingPct: Percent(g.RoundingPct),
		}, &final, &first, &annual, &years)
	},
}
