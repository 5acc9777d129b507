package relate

import (
	"math"
	"strings"

	"pvtally/schema"
)

// Relation is something that must hold between values of one record, as data: what it reads and what the others make of the first.
type Relation struct {
	Name string
	// Fields are what it reads, the judged one first: a key of one electrical block ("vmp_v", found under a pointer such as
	// "/models/0/stc"), or a pointer from the record's root ("/body/length_mm").
	Fields []string
	// Expect is the interval that the values of Fields[1:] leave for Fields[0].
	Expect func(others []Interval) Interval
}

// The plain relations of a table of electrical values. Efficiency is per cent of the outer area at the 1000 W/m2 of STC, so it
// asks for an STC block.
var (
	Product = Relation{"power-product", []string{"pmax_w", "vmp_v", "imp_a"},
		func(v []Interval) Interval { return v[0].Mul(v[1]) }}
	Efficiency = Relation{"efficiency-area", []string{"efficiency_pct", "pmax_w", "/body/length_mm", "/body/width_mm"},
		func(v []Interval) Interval { return v[0].Div(v[1].Mul(v[2])).Scale(percentPerWattPerMM2) }}
	VoltageOrder = Relation{"voltage-order", []string{"vmp_v", "voc_v"}, below}
	CurrentOrder = Relation{"current-order", []string{"imp_a", "isc_a"}, below}
)

// Plain lists them.
var Plain = []Relation{Product, Efficiency, VoltageOrder, CurrentOrder}

// percentPerWattPerMM2: 1 W on 1 mm2 is 1e6 W/m2, which is 1e3 times the 1000 W/m2 of STC, which is 1e5 per cent.
const percentPerWattPerMM2 = 1e5

func below(v []Interval) Interval { return Interval{math.Inf(-1), v[0].Hi} }

// Gap judges values given in the order of Fields. Fewer values than fields give no gap: no data, no finding.
func (r Relation) Gap(values ...Interval) Gap {
	if len(values) < len(r.Fields) {
		return Gap{}
	}
	return Compare(values[0], values[0].Mid(), r.Expect(values[1:]))
}

// In judges a record: block is the pointer of an electrical block, such as "/models/0/stc". It is false where a value is missing.
func (r Relation) In(s *schema.Sheet, block string) (Gap, bool) {
	values := make([]Interval, len(r.Fields))
	for i, pointer := range r.Pointers(block) {
		n, ok := s.At(pointer)
		if !ok {
			return Gap{}, false
		}
		values[i] = Of(n, s.HalfStep(pointer))
	}
	return r.Gap(values...), true
}

// Pointers are the JSON Pointers of Fields for one block.
func (r Relation) Pointers(block string) []string {
	pointers := make([]string, len(r.Fields))
	for i, f := range r.Fields {
		pointers[i] = f
		if !strings.HasPrefix(f, "/") {
			pointers[i] = block + "/" + f
		}
	}
	return pointers
}
