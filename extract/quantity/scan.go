package quantity

// Scan finds the quantities in one text (a cell, a label's tail, a footnote line), left to right. Digits that belong to a name
// (KR-HC108-405, M10, IP68), to a standard, a date or a telephone number are none.
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
	unit            printed
}

// statement is the operands of one quantity and the token after it.
type statement struct {
	shape Shape
	ops   []operand
	next  int
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
		o.sign, o.detached = p.t[i].sign, p.at(i+1).gap
		i++
	}
	if !p.is(i, kNumber) {
		return o, false
	}
	o.num, o.next = i, i+1
	switch {
	case p.is(i+1, kUnit):
		o.unit, o.next = p.t[i+1].unit, i+2
	case p.is(i+1, kOpen) && p.is(i+2, kUnit) && p.is(i+3, kClose) && !p.is(i+4, kTimes) && !p.is(i+4, kUnit) && !p.is(i-1, kTimes): // 1500 (V)
		o.unit, o.next = p.t[i+2].unit, i+4
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
		if p.is(i, kWord) && p.l.at(p.t[i].i) == 'Ø' { // max. Ø 25 mm
			i++
		}
	}
	s, ok := p.statement(i)
	if !ok {
		return Quantity{}, 0, false
	}
	p.prefixUnit(&s, i)
	if open := p.outerUnit(&s, from); open < from {
		from = open
	}
	if o := s.ops[0]; from == o.from && o.sign != 0 && !p.taken(s, o) {
		from = o.num
	}
	q := p.build(s, from)
	if q.Bound = bound; bound == Exact {
		p.boundBehind(&q, &s)
	}
	return q, s.next, true
}

// boundBehind takes a bound that stands behind: 1500 V max., 25 A (max).
func (p *parser) boundBehind(q *Quantity, s *statement) {
	k, next := s.next, s.next+1
	if p.is(k, kOpen) && p.is(k+2, kClose) {
		k, next = k+1, k+3
	}
	if !p.is(k, kBound) || p.is(k+1, kNumber) || p.is(k+1, kSign) {
		return
	}
	q.Bound = p.t[k].bound
	q.End = p.l.end[p.t[next-1].j-1]
	s.next = next
}

// statement reads a first operand at i and what goes with it.
func (p *parser) statement(i int) (statement, bool) {
	if p.is(i, kPM) {
		o, ok := p.operand(i + 1)
		o.from = i
		return statement{Spread, []operand{o, o}, o.next}, ok && o.sign == 0
	}
	a, ok := p.operand(i)
	if !ok {
		return statement{}, false
	}
	for _, try := range []func(operand) (statement, bool){p.product, p.within, p.pair, p.slash, p.list} {
		if s, ok := try(a); ok {
			return s, true
		}
	}
	return statement{Single, []operand{a}, a.next}, true
}

// prefixUnit takes a unit that stands before its number: AWG 12, VDC 1500.
func (p *parser) prefixUnit(s *statement, i int) {
	w := p.at(i - 1)
	if at := p.t[s.ops[0].num].i; at > 0 && p.l.r[at-1] == '%' && !p.is(i-1, kUnit) { // %80 ± 5, as Turkish writes it
		for k := range s.ops {
			if s.ops[k].unit.unit == None {
				s.ops[k].unit.unit = Percent
			}
		}
		return
	}
	if s.shape != Single || s.ops[0].unit.unit != None || w.kind != kWord || w.j-w.i < 3 {
		return
	}
	switch string(p.l.r[w.i : w.i+3]) {
	case "AWG":
		s.ops[0].unit.unit = AWG
	case "VDC":
		s.ops[0].unit.unit = V
	}
}

// outerUnit takes a unit that stands behind the bracket round the quantity: (-0.28±0.028)%/℃. It returns where the quantity
// begins then.
func (p *parser) outerUnit(s *statement, from int) int {
	for _, o := range s.ops {
		if o.unit.unit != None {
			return from
		}
	}
	if !p.is(from-1, kOpen) || !p.is(s.next, kClose) || !p.is(s.next+1, kUnit) {
		return from
	}
	for k := range s.ops {
		s.ops[k].unit = p.t[s.next+1].unit
	}
	s.next += 2
	return from - 1
}
