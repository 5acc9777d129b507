package rules

import (
	"fmt"

	"pvtally/rules/envelope"
	"pvtally/rules/physics"
	"pvtally/schema/relate"
)

var stcCurrentDensity = &Rule{
	ID:    "stc/current-density",
	Title: "Isc is what the light on the cells can drive",
	Why: "Every photon gives at most one electron: the sun's spectrum drives at most 43.3 mA through a square centimetre of silicon. Over the module's whole area the current density is lower by the gaps between cells; " +
		"outside of the usual the area, the count of cells or Isc is wrong.",
	Formula: "Isc / (cell area × parallel paths) ≤ 43.3 mA/cm2; lo ≤ Isc × cells in series / module area ≤ hi, by technology",
	Sources: []Source{{"ASTM G173-03 spectrum, integrated to silicon's gap; Richter, Hermle, Glunz 2013 (from memory)", "calculated"}, envelopeSource},
	Grade:   Grade{Of: rangeGrade.Of, Unit: rangeGrade.Unit, Note: 0.15, Warning: 0.75, Error: Never},
	Levels:  []Threshold{{Error, "Isc exceeds what 43.3 mA/cm2 gives over the printed cell's area"}},
	Needs:   []string{"models[].stc.isc_a", "cell.count"},
	Yields:  []string{"stc/cell-count", "stc/current-order", "stc/current-ratio", "stc/efficiency-area", "body/sides", "stc/voc-per-cell"},
	Check: func(p *Pass) {
		wafer := p.wafer()
		for i := range p.stc {
			e := &p.stc[i]
			if !e.Isc.Printed() {
				continue
			}
			if wafer.area != relate.All && p.silicon {
				if j := e.Isc.Div(wafer.area).Scale(1e5); j.Lo > physics.SiliconMaxCurrent {
					p.Report(Error, Finding{Message: fmt.Sprintf("Isc %s over a wafer of %s × %s is %s mA/cm2, more than the sun drives through silicon (%s)", e.Isc, wafer.width, wafer.height, around(j.Mid()), around(physics.SiliconMaxCurrent))},
						&e.Isc, &wafer.width, &wafer.height)
					continue
				}
			}
			if p.series > 0 && p.area != relate.All {
				density, most := e.Isc.Scale(p.series).Div(p.area).Scale(0.1), Warning
				if r := p.env[envelope.Density]; r != nil && density.Hi < r.Lo {
					most = Note // panels that let light through space their cells
				}
				p.inRangeUpTo(most, envelope.Density, density, "Isc × cells in series / module area", " mA/cm2", &e.Isc, &p.count, &p.length, &p.width)
			}
		}
	},
}

// wafer is the printed cell as the whole wafer whose current one series path carries.
type wafer struct {
	width, height Value
	area          relate.Interval // mm2; All where not known
}

// wafer doubles a printed half cell: two halves in parallel carry the whole wafer's current. Many sheets print the whole wafer for half cells.
func (p *Pass) wafer() wafer {
	c := &p.Sheet.Cell
	w := wafer{p.value(c.Width, "cell", "width_mm", -1, -1), p.value(c.Height, "cell", "height_mm", -1, -1), relate.All}
	if !w.width.Printed() || !w.height.Printed() || w.width.V <= 0 || w.height.V <= 0 || c.Cut == "shingle" || p.series <= 0 {
		return w
	}
	w.area = w.width.Mul(w.height.Interval)
	shape := min(w.width.V, w.height.V) / max(w.width.V, w.height.V)
	switch {
	case c.Cut == "third" && shape < 0.45:
		w.area = w.area.Scale(3)
	case shape < 0.65:
		w.area = w.area.Scale(2)
	}
	return w
}
