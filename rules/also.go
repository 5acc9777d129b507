package rules

import (
	"pvtally/schema"
	"pvtally/schema/relate"
)

// again is a quantity the sheet says a second time, with the value it stands beside in the record.
type again struct {
	first     Value
	firstStep float64
	second    *schema.Also
	interval  relate.Interval
	converted bool // from another unit
}

// agains lists what the sheet says twice. A second saying in another unit carries the half step of its conversion.
func (p *Pass) agains(visit func(*again)) {
	for i := range p.Sheet.Also {
		a := &p.Sheet.Also[i]
		n, ok := p.Sheet.At(a.Field)
		if !ok || a.Value.IsZero() {
			continue
		}
		first := Value{V: n.Float(), text: n.String(), at: placeOf(a.Field)}
		first.Interval = relate.Of(n, p.Sheet.HalfStep(a.Field))
		half := a.Value.HalfStep()
		if !a.HalfStep.IsZero() {
			half = a.HalfStep.Float()
		}
		visit(&again{first, 2 * first.Half(), a, relate.Of(a.Value, half), !a.HalfStep.IsZero()})
	}
}
