package rules

import (
	"fmt"
	"math"

	"pvtally/rules/envelope"
)

var classesSmooth = &Rule{
	ID:    "classes/smooth",
	Title: "each class lies on the line through the others",
	Why: "Power classes are one product sorted by power: voltage and current grow evenly with the class. A value off the line through the other classes by more than rounding and the maker's own unevenness is a misprint, " +
		"however plausible by itself: this finds the digit that no other relation sees. Where the other classes show that the row bends and the value lies on their curve, it is a note: some makers' rows flatten towards the top.",
	Formula: "|ln y(k) - line through the other classes| ≤ own scatter + z × the line's uncertainty; the slope d ln y / d ln Pmax is known beforehand from other product lines",
	Sources: []Source{
		{"62 real sheets: on the line within 0.1 printed units at the median, about 1 at the 90th percentile", "calculated"},
		{"Slopes of 2,548 product lines of the California Energy Commission's list, edition 2019-03: rules/envelope/slopes.csv", "calculated"},
	},
	Grade: Grade{Of: "distance beyond scatter and the line's uncertainty", Unit: "printed units", Note: 0, Warning: 1, Error: Never},
	Settings: []Setting{
		{"own_units", 1.5, "printed units", "how far an honest value may lie from the line by rounding and unevenness"},
		{"z", 2, "standard deviations", "of the line's uncertainty allowed"},
		{"error_pct", 3, "%", "distance from the line that makes an error where at least four classes are printed"},
	},
	Levels: []Threshold{{Error, "the same where at least four classes are printed and the value lies 3 % off the line"}},
	Needs:  []string{"models[].stc.pmax_w of two classes or more", "models[].stc or .nmot or .noct"},
	Yields: []string{"classes/monotone", "classes/slipped-row", "classes/repeated-column", "classes/name-power", "stc/voltage-order", "stc/current-order", "classes/product", "nmot/order", "noct/order", "nmot/copied", "noct/copied"},
	Check: func(p *Pass) {
		if len(p.stc) < 2 {
			return
		}
		for _, q := range smoothFields {
			p.smooth(q, func(i int) *Value { return q.of(&p.stc[i]) })
		}
		for _, table := range [][]operating{p.nmot, p.noct} {
			if len(table) < 2 {
				continue
			}
			for _, q := range operatingFields {
				p.smooth(q, inTable(table, q))
			}
		}
	},
}

// smoothFields are the quantities of the STC table that have a line of their own: Imp follows from Vmp, the efficiency from the area.
var smoothFields = []smoothField{
	{"vmp_v", func(e *Electrical) *Value { return &e.Vmp }},
	{"voc_v", func(e *Electrical) *Value { return &e.Voc }},
	{"isc_a", func(e *Electrical) *Value { return &e.Isc }},
}

// operatingFields are those of a table at NMOT or NOCT: its power has no name to stand by and goes with the class's.
var operatingFields = append([]smoothField{{"pmax_w", func(e *Electrical) *Value { return &e.Pmax }}}, smoothFields...)

// inTable finds a class's value in a table at NMOT or NOCT.
func inTable(table []operating, q smoothField) func(i int) *Value {
	return func(i int) *Value {
		for k := range table {
			if table[k].i == i {
				return q.of(&table[k].Electrical)
			}
		}
		return &notPrinted
	}
}

var notPrinted Value

// proportional is the slope of what goes with the nominal power itself.
var proportional = envelope.Slope{Q05: 0.9, Median: 1, Q95: 1.1}

type smoothField struct {
	name string
	of   func(*Electrical) *Value
}

// smooth reports the one value of a quantity that lies farthest off its classes' line.
func (p *Pass) smooth(q smoothField, value func(i int) *Value) {
	var room [3 * 16]float64
	l := line{x: room[0:0:16], y: room[16:16:32], unit: room[32:32:48]}
	var ok bool
	if l.slope, ok = envelope.SlopeOf(q.name); !ok {
		l.slope = proportional
	}
	var at [16]int
	n, step := 0, 1.0
	if padded(len(p.stc), value) {
		step = 10
	}
	for _, i := range p.rank {
		v, power := value(i), p.nominal[i]
		if n == len(at) || !v.Printed() || v.V <= 0 || power <= 0 || v.Half() <= 0 {
			continue
		}
		l.x, l.y, l.unit = append(l.x, math.Log(power)), append(l.y, math.Log(v.V)), append(l.unit, 2*v.Half()*step)
		at[n] = i
		n++
	}
	for unit, k := usualStep(l.unit), 0; k < n; k++ {
		l.unit[k] = min(l.unit[k], unit) / value(at[k]).V
	}
	if n < 2 || l.x[n-1]-l.x[0] < 1e-3 {
		return
	}
	k, m, beyond := l.worst(p.Setting("own_units"), p.Setting("z"))
	if beyond <= 0 {
		return
	}
	v, finest := value(at[k]), value(at[k])
	for i := range n {
		if o := value(at[i]); o.Half() < finest.Half() {
			finest = o
		}
	}
	pct := 100 * math.Abs(v.V/m.expect-1)
	grade := p.Grade(beyond)
	if n >= 4 && pct > p.Setting("error_pct") {
		grade = Error
	}
	unit := l.unit[k] * v.V
	f := Finding{
		Message: fmt.Sprintf("%s%s %s lies %s printed units off the line through the other classes, which gives %s; rounding and unevenness explain %s", v.Symbol(), condition(v), v, around(math.Abs(m.off)),
			decimalsOf(m.expect, finest), around(math.Abs(m.off)-beyond)),
		Implied:      []string{decimalsOf(m.expect-unit*(math.Abs(m.off)-beyond), finest), decimalsOf(m.expect+unit*(math.Abs(m.off)-beyond), finest)},
		DeviationPct: Percent(pct),
		RoundingPct:  Percent(pct * (1 - beyond/math.Abs(m.off))),
	}
	if grade > Note && l.bends(k, p.Setting("own_units"), p.Setting("z")) {
		grade = Note
		f.Message += "; but the others bend, and it lies on their curve"
	}
	fields := []*Value{v}
	for i := range n {
		if i != k {
			fields = append(fields, value(at[i]))
		}
	}
	p.Report(grade, f, fields...)
}

// condition is " at NMOT" or " at NOCT" for a value of such a table.
func condition(v *Value) string {
	if g := v.at.group; g == "nmot" || g == "noct" {
		return " at " + upper(g)
	}
	return ""
}

// decimalsOf writes a calculated value with as many decimals as a printed one.
func decimalsOf(x float64, like *Value) string {
	d := 0
	for i, c := range like.text {
		if c == '.' {
			d = len(like.text) - i - 1
		}
	}
	return fmt.Sprintf("%.*f", d, x)
}
