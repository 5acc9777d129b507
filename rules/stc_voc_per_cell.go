package rules

import (
	"fmt"

	"pvtally/rules/envelope"
	"pvtally/rules/physics"
	"pvtally/schema/relate"
)

var stcVocPerCell = &Rule{
	ID:    "stc/voc-per-cell",
	Title: "Voc per cell in series is what the cell technology gives",
	Why: "Cells in series add their voltages, and one junction's voltage is narrowly set by its technology. Half a usual voltage means that half cells were counted as series cells; " +
		"above 0.761 V no silicon junction exists.",
	Formula: "lo ≤ Voc / cells in series ≤ hi, by technology; Voc / cells ≤ 0.761 V for silicon. Half cells count in pairs.",
	Sources: []Source{envelopeSource, {"Richter, Hermle, Glunz, IEEE J. Photovolt. 3 (2013) 1184, DOI 10.1109/JPHOTOV.2013.2270351", "from memory"}},
	Grade:   Grade{Of: rangeGrade.Of, Unit: rangeGrade.Unit, Note: 0.15, Warning: 0.75, Error: 1.5},
	Levels:  []Threshold{{Error, "Voc per cell exceeds 0.761 V for silicon, or lies far outside the range of any silicon technology"}},
	Needs:   []string{"models[].stc.voc_v", "cell.count"},
	Yields:  []string{"stc/cell-count", "stc/voltage-order", "stc/voltage-ratio"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		if p.series <= 0 {
			return
		}
		// the class farthest outside speaks for all: they share the count
		worst, beyond, outside := -1, 0.0, 0
		for i := range p.stc {
			if cell := p.vocCell(i); p.stc[i].Voc.Printed() {
				if x := p.vocExcess(cell); x > 0 {
					outside++
					if x > beyond {
						worst, beyond = i, x
					}
				}
			}
		}
		if worst < 0 {
			return
		}
		e, cell := &p.stc[worst], p.vocCell(worst)
		if p.silicon && cell.Lo > physics.SiliconMaxVoc {
			p.Report(Error, Finding{Message: fmt.Sprintf("Voc per cell = %s / %s = %s V, above the limit of one silicon junction, %s V", e.Voc, around(p.series), around(cell.Mid()), around(physics.SiliconMaxVoc)),
				Implied: []string{"0", around(physics.SiliconMaxVoc * p.series)}}, &e.Voc, &p.count)
			return
		}
		most := Error
		if r := envelope.For("mono-n")[envelope.VocCell]; p.silicon && r.Excess(cell.Lo, cell.Hi) < 1 {
			most = Warning // another silicon technology's voltage is a question about the word, not an impossible number
		}
		what := "Voc per cell in series"
		if r := p.env[envelope.VocCell]; r != nil && p.series == p.count.V && 2*cell.Mid() > r.Lo && 2*cell.Mid() < r.Hi {
			what = "half cells seem to be counted as series cells: Voc per cell"
		}
		if outside > 1 {
			what = fmt.Sprintf("in %d of %d classes, %s", outside, len(p.stc), what)
		}
		p.inRangeUpTo(most, envelope.VocCell, cell, what, " V", &e.Voc, &p.count)
	},
}

// vocExcess is how far a voltage per cell lies outside its range; what no silicon junction has lies farther out than anything else.
func (p *Pass) vocExcess(cell relate.Interval) float64 {
	if p.silicon && cell.Lo > physics.SiliconMaxVoc {
		return 1e3 * cell.Lo
	}
	if r := p.env[envelope.VocCell]; r != nil {
		return r.Excess(cell.Lo, cell.Hi)
	}
	return 0
}
