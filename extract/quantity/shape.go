package quantity

// maxDeviation is how much smaller than its centre a tolerance is at least that stands behind a mere plus.
const maxDeviation = 8

// product reads 1722 × 1134 × 30 mm, with tolerances (1762±2mm×1134±2mm) and remarks (1722 (L) × 1134 (W)) between.
func (p *parser) product(a operand) (statement, bool) {
	a = p.tolerated(a)
	s := statement{Product, []operand{a}, a.next}
	next := p.aside(a.next)
	for p.is(next, kTimes) && len(s.ops) < 3 {
		b, ok := p.operand(p.factor(next + 1))
		if !ok || b.sign != 0 {
			break
		}
		b = p.tolerated(b)
		s.ops = append(s.ops, b)
		s.next, next = b.next, p.aside(b.next)
	}
	last := &s.ops[len(s.ops)-1]
	if last.unit.unit == None && p.is(next, kUnit) { // 30 (H) mm
		last.unit, s.next = p.t[next].unit, next+1
	}
	return s, len(s.ops) > 1 && oneUnit(s.ops...) && !(a.unit.unit == Piece && last.unit.unit == None)
}

// factor skips what may stand between a multiplication sign and its factor: brackets, letters of sides.
func (p *parser) factor(k int) int {
	for n := 0; n < 4; n++ {
		if !p.is(k, kOpen) && !p.is(k, kClose) && !(p.is(k, kWord) && p.t[k].j-p.t[k].i <= 1) {
			break
		}
		k++
	}
	return k
}

// tolerated passes over a factor's tolerance ("±2mm", "(±2)") and takes the unit that stands behind it.
func (p *parser) tolerated(o operand) operand {
	open := p.is(o.next, kOpen)
	k := o.next
	if open {
		k++
	}
	t, ok := p.deviation(o, k)
	if !ok || open && !p.is(t.next, kClose) {
		return o
	}
	o.next = t.next
	if o.unit.unit == None {
		o.unit = t.unit
	}
	if open {
		o.next++
		if o.unit.unit == None && p.is(o.next, kUnit) {
			o.unit, o.next = p.t[o.next].unit, o.next+1
		}
	}
	return o
}

// aside skips a remark of one word in brackets between factors or before the unit, or the factor in inches: 1722 (67.80 in) × 1134.
func (p *parser) aside(next int) int {
	if inches, ok := p.operand(next + 1); ok && p.is(next, kOpen) && inches.unit.unit == Inch && p.is(inches.next, kClose) && p.is(inches.next+1, kTimes) {
		return inches.next + 1
	}
	word := p.is(next+1, kWord) || p.is(next+1, kUnit)
	if p.is(next, kOpen) && word && p.is(next+2, kClose) && (p.is(next+3, kTimes) || p.is(next+3, kUnit)) {
		return next + 3
	}
	return next
}

// counts reports whether a product's first factor is a number of pieces: 2 x 1000 mm, 1 x 4 mm².
func (p *parser) counts(s statement) bool {
	if s.shape != Product || len(s.ops) != 2 || s.ops[0].unit.unit != None || s.ops[1].unit.unit == None {
		return false
	}
	a, b := p.value(s.ops[0]), p.value(s.ops[1])
	exact := decimals(p.t[s.ops[0].num].num.literal) == 0
	return exact && (a <= 4 && (b >= 10*a || decimals(p.t[s.ops[1].num].num.literal) > 0) || a <= 10 && s.ops[1].unit.unit == MM2)
}

// within reads 45 ± 2 °C and 45 °C (± 2 °C).
func (p *parser) within(a operand) (statement, bool) {
	k := a.next
	open := p.is(k, kOpen)
	if open {
		k++
	}
	b, ok := p.deviation(a, k)
	if !ok {
		return statement{}, false
	}
	next := b.next
	if open {
		if !p.is(next, kClose) {
			return statement{}, false
		}
		next++
		if p.is(next, kUnit) && a.unit.unit == None && b.unit.unit == None {
			a.unit = p.t[next].unit
			next++
		}
	}
	if a.unit.unit == None {
		a.unit = b.unit
	}
	return statement{Within, []operand{a, b}, next}, true
}

// deviation reads the tolerance of a whose ± is the token at k. A plus that touches both numbers is a ± whose lower line a
// scan has lost, where the second is small and sums make no sense: 45+2 °C.
func (p *parser) deviation(a operand, k int) (operand, bool) {
	b, ok := p.operand(k + 1)
	if !ok || b.sign != 0 {
		return b, false
	}
	if p.is(k, kPM) {
		return b, true
	}
	lost := p.is(k, kSign) && p.t[k].sign == '+' && !p.t[k].gap && !p.t[k+1].gap
	u := unitOf(a, b)
	return b, lost && (u.temperature() || u == Percent || u == MM) && p.value(b) <= p.value(a)/maxDeviation
}

// oneUnit reports whether all printed units are the same.
func oneUnit(ops ...operand) bool {
	u := None
	for _, o := range ops {
		if o.unit.unit == None {
			continue
		}
		if u != None && o.unit.unit != u {
			return false
		}
		u = o.unit.unit
	}
	return true
}

// value is the magnitude of an operand.
func (p *parser) value(o operand) float64 {
	literal, _ := p.t[o.num].num.in(o.unit.unit)
	return value(literal)
}

// signed is the value of an operand with its sign.
func (p *parser) signed(o operand) float64 {
	if o.sign == '-' {
		return -p.value(o)
	}
	return p.value(o)
}
