package quantity

import "strconv"

// Scan finds the quantities in one text (a cell, a label's tail, a footnote line), left to right. What is glued to a name
// (KR-HC108-405, M10, IP68), the number of a standard, a date or a telephone number is none. It reads at most MaxTerms
// numbers.
func Scan(text string) []Quantity {
	p := &parser{l: newLine(text)}
	p.t = p.l.lex()
	var out []Quantity
	for i := 0; i < len(p.t); {
		q, next, ok := p.quantity(i)
		if !ok {
			i++
			continue
		}
		out = append(out, q)
		i = next
	}
	return out
}

type parser struct {
	l *line
	t []token
}

// operand is a number with its sign and unit as it stands in the line.
type operand struct {
	from, num, next int // token indexes: sign or number, the number, the first one after
	sign            rune
	detached        bool
	unit            Unit
	cut             bool
}

func (p *parser) at(i int) token {
	if i < 0 || i >= len(p.t) {
		return token{}
	}
	return p.t[i]
}

func (p *parser) is(i int, k kind) bool { return i >= 0 && i < len(p.t) && p.t[i].kind == k }

// operand reads a number at i with its sign and its unit.
func (p *parser) operand(i int) (operand, bool) {
	o := operand{from: i}
	if p.is(i, kSign) {
		o.sign = p.t[i].rune
		o.detached = p.at(i + 1).gap
		i++
	}
	if !p.is(i, kNumber) {
		return o, false
	}
	o.num, o.next = i, i+1
	switch {
	case p.is(i+1, kUnit):
		o.unit, o.cut, o.next = p.t[i+1].unit, p.t[i+1].cut, i+2
	case p.is(i+1, kOpen) && p.is(i+2, kUnit) && p.is(i+3, kClose):
		o.unit, o.cut, o.next = p.t[i+2].unit, p.t[i+2].cut, i+4
	}
	return o, true
}

// quantity reads one quantity whose first token is at i.
func (p *parser) quantity(i int) (Quantity, int, bool) {
	from := i
	var bound Bound
	if p.is(i, kBound) {
		bound = p.t[i].bound
		i++
	}
	var s statement
	if p.is(i, kPM) {
		o, ok := p.operand(i + 1)
		if !ok || o.sign != 0 {
			return Quantity{}, 0, false
		}
		s = statement{Spread, []operand{o, o}, o.next}
		s.ops[0].from = i
		s.ops[1].from = i
	} else {
		a, ok := p.operand(i)
		if !ok {
			return Quantity{}, 0, false
		}
		s = p.shape(a)
	}
	p.prefixUnit(&s, i)
	from = p.outerUnit(&s, from)
	q := p.build(s, from)
	q.Bound = bound
	if bound == Exact && p.is(s.next, kBound) && !p.is(s.next+1, kNumber) {
		q.Bound = p.t[s.next].bound
		q.End = p.l.end[p.t[s.next].j-1]
		s.next++
	}
	return q, s.next, true
}

// prefixUnit takes the gauge that stands before its number: AWG 12.
func (p *parser) prefixUnit(s *statement, i int) {
	w := p.at(i - 1)
	if s.shape == Single && s.ops[0].unit == None && w.kind == kWord && w.j > w.i && string(p.l.r[w.i:w.j]) == "AWG" {
		s.ops[0].unit = AWG
	}
}

// outerUnit takes a unit that stands behind the bracket round the quantity: (-0.28±0.028)%/℃.
func (p *parser) outerUnit(s *statement, from int) int {
	for _, o := range s.ops {
		if o.unit != None {
			return from
		}
	}
	if p.is(from-1, kOpen) && p.is(s.next, kClose) && p.is(s.next+1, kUnit) {
		for k := range s.ops {
			s.ops[k].unit, s.ops[k].cut = p.t[s.next+1].unit, p.t[s.next+1].cut
		}
		s.next += 2
		return from - 1
	}
	return from
}

// build turns a statement into the quantity.
func (p *parser) build(s statement, from int) Quantity {
	q := Quantity{Shape: s.shape, Start: p.l.start[p.t[from].i], End: p.l.end[p.t[s.next-1].j-1]}
	for _, o := range s.ops {
		if o.unit != None && q.Unit == None {
			q.Unit, q.UnitCut = o.unit, o.cut
		}
	}
	for k, o := range s.ops {
		if o.unit == None && !(s.shape == Product && k == 0 && p.counts(s)) {
			o.unit = q.Unit
		}
		q.Terms = append(q.Terms, p.term(o, s.shape))
	}
	return q
}

func (p *parser) term(o operand, shape Shape) Term {
	num := p.t[o.num]
	t := Term{Unit: o.unit, Start: p.l.start[num.i], End: p.l.end[num.j-1], Detached: o.sign != 0 && o.detached}
	t.Literal, t.Other = num.num.settle(o.unit)
	t.Ambiguous = t.Other != ""
	if p.taken(o, shape) {
		t.Signed = true
		t.Start = p.l.start[p.t[o.from].i]
		if o.sign == '-' && shape != Spread {
			t.Literal = "-" + t.Literal
			if t.Other != "" {
				t.Other = "-" + t.Other
			}
		}
	}
	t.Value, _ = strconv.ParseFloat(t.Literal, 64)
	return t
}

// taken reports whether the sign before a number is its sign, and not a dash that lists or separates.
func (p *parser) taken(o operand, shape Shape) bool {
	if p.is(o.from, kPM) {
		return true
	}
	if o.sign == 0 {
		return false
	}
	if !o.detached || shape != Single || o.unit.Negative() {
		return true
	}
	before := p.at(o.from - 1)
	opening := o.from == 0 || before.kind == kOpen || before.kind == kUnit
	return opening && (o.unit == None || o.unit == Percent)
}
