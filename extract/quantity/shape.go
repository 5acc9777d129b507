package quantity

import "strconv"

// statement is the operands of one quantity and the token after it.
type statement struct {
	shape Shape
	ops   []operand
	next  int
}

// shape reads on from a first operand as long as one quantity goes.
func (p *parser) shape(a operand) statement {
	for _, try := range []func(operand) (statement, bool){p.product, p.within, p.pair, p.slash, p.list} {
		if s, ok := try(a); ok {
			return s
		}
	}
	return statement{Single, []operand{a}, a.next}
}

// tolerance skips "±2mm" after a factor.
func (p *parser) tolerance(next int) int {
	if p.is(next, kPM) {
		if o, ok := p.operand(next + 1); ok && o.sign == 0 {
			return o.next
		}
	}
	return next
}

// aside skips a short remark in brackets: 1722 (L) × 1134 (W).
func (p *parser) aside(next int) int {
	if p.is(next, kOpen) && p.is(next+1, kWord) && p.is(next+2, kClose) && p.is(next+3, kTimes) {
		return next + 3
	}
	return next
}

func (p *parser) product(a operand) (statement, bool) {
	s := statement{Product, []operand{a}, a.next}
	next := p.aside(p.tolerance(a.next))
	for p.is(next, kTimes) && len(s.ops) < 3 {
		k := next + 1
		for p.is(k, kOpen) || p.is(k, kWord) && p.t[k].j-p.t[k].i == 1 {
			k++
		}
		b, ok := p.operand(k)
		if !ok || b.sign != 0 {
			break
		}
		s.ops = append(s.ops, b)
		s.next = p.tolerance(b.next)
		next = p.aside(s.next)
	}
	return s, len(s.ops) > 1 && p.oneUnit(s.ops)
}

// counts reports whether a product's first factor is a number of pieces: 2 x 1000 mm.
func (p *parser) counts(s statement) bool {
	if len(s.ops) != 2 || s.ops[0].unit != None || s.ops[1].unit == None {
		return false
	}
	a, b := p.value(s.ops[0]), p.value(s.ops[1])
	return a == float64(int(a)) && a <= 4 && b >= 10*a
}

func (p *parser) within(a operand) (statement, bool) {
	k := a.next
	open := p.is(k, kOpen)
	if open {
		k++
	}
	if !p.is(k, kPM) {
		return statement{}, false
	}
	b, ok := p.operand(k + 1)
	if !ok || b.sign != 0 {
		return statement{}, false
	}
	next := b.next
	if open {
		if !p.is(next, kClose) {
			return statement{}, false
		}
		next++
		if p.is(next, kUnit) && a.unit == None && b.unit == None {
			a.unit, a.cut = p.t[next].unit, p.t[next].cut
			next++
		}
	}
	if a.unit == None {
		a.unit, a.cut = b.unit, b.cut
	}
	return statement{Within, []operand{a, b}, next}, true
}

// pair reads a range (-40 ~ +85 °C) or a spread (0~+5 W, +3-0 %).
func (p *parser) pair(a operand) (statement, bool) {
	k := a.next
	op := p.at(k)
	var b operand
	var ok bool
	switch op.kind {
	case kTilde:
		b, ok = p.operand(k + 1)
	case kSlash, kComma:
		b, ok = p.operand(k + 1)
		ok = ok && b.sign != 0 && p.opposed(a, b)
	case kSign:
		gapped := op.gap && !p.at(k+1).gap
		if b, ok = p.operand(k); ok && p.opposed(a, b) && (a.sign != 0 || p.value(a) == 0 && op.rune == '+') {
			break // +3-0 %
		}
		if op.rune != '-' || gapped && a.sign == 0 {
			return statement{}, false
		}
		b, ok = p.operand(k + 1)
		ok = ok && (b.sign != 0 || p.signed(a) < p.value(b)) && !(gapped && a.unit == None)
	}
	if !ok || !p.oneUnit([]operand{a, b}) {
		return statement{}, false
	}
	s := statement{Range, []operand{a, b}, b.next}
	if p.spreads(a, b) {
		s.shape = Spread
		if a.sign == '+' || b.sign == '-' && a.sign == 0 {
			s.ops[0], s.ops[1] = b, a
		}
	} else if op.kind == kComma || op.kind == kSlash && p.value(b) > 200 {
		return statement{}, false
	}
	return s, true
}

// opposed reports whether two numbers lie on the two sides of nought by their signs.
func (p *parser) opposed(a, b operand) bool {
	zero := func(o operand) bool { return p.value(o) == 0 }
	return a.sign != b.sign && (a.sign != 0 && b.sign != 0 || zero(a) || zero(b))
}

// spreads reports whether a pair is a tolerance and not a range: signs on both sides of nought, no temperature, not the
// lengths of a positive and a negative cable.
func (p *parser) spreads(a, b operand) bool {
	u := a.unit
	if u == None {
		u = b.unit
	}
	x, y := p.value(a), p.value(b)
	if u == C || u == F || u == K || !p.opposed(a, b) || x >= 100 || y >= 100 {
		return false
	}
	return u != None || x == 0 || y == 0 || x < 20 && y < 20
}

func (p *parser) slash(a operand) (statement, bool) { return p.row(a, Slash, kSlash) }

func (p *parser) list(a operand) (statement, bool) {
	s, ok := p.row(a, List, kComma, kAnd, kSign)
	if !ok {
		return s, false
	}
	for _, o := range s.ops {
		if o.unit != None {
			return s, true
		}
	}
	return s, false
}

// row reads equals with one kind of sign between them.
func (p *parser) row(a operand, shape Shape, between ...kind) (statement, bool) {
	s := statement{shape, []operand{a}, a.next}
	for {
		ok := false
		op := p.at(s.next)
		for _, k := range between {
			ok = ok || p.is(s.next, k)
		}
		if op.kind == kSign { // 35.1" + 47.2"
			ok = ok && op.rune == '+' && op.gap && p.at(s.next+1).gap
		}
		if !ok {
			break
		}
		k := s.next + 1
		if op.kind == kComma && p.is(k, kAnd) {
			k++
		}
		b, ok := p.operand(k)
		if !ok || !p.oneUnit(append(s.ops[:len(s.ops):len(s.ops)], b)) || p.is(b.next, kTimes) || p.is(b.next, kPM) {
			break
		}
		s.ops = append(s.ops, b)
		s.next = b.next
	}
	return s, len(s.ops) > 1
}

// oneUnit reports whether all printed units are the same.
func (p *parser) oneUnit(ops []operand) bool {
	u := None
	for _, o := range ops {
		if o.unit != None && u != None && o.unit != u {
			return false
		}
		if o.unit != None {
			u = o.unit
		}
	}
	return true
}

// value is the magnitude of an operand.
func (p *parser) value(o operand) float64 {
	lit, _ := p.t[o.num].num.settle(o.unit)
	v, _ := strconv.ParseFloat(lit, 64)
	return v
}

func (p *parser) signed(o operand) float64 {
	if o.sign == '-' {
		return -p.value(o)
	}
	return p.value(o)
}
