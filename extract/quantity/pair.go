package quantity

// cableLength is the length from which +400/-200 mm are the cables of two polarities and no tolerance; coldEnd and hotEnd are
// what the ends of a temperature range without a unit reach at least. Common practice, no source.
const (
	cableLength = 50
	coldEnd     = 10
	hotEnd      = 40
)

// pair reads a range (-40 ~ +85 °C) or a spread (0~+5 W, +3-0 %, -0/+5).
func (p *parser) pair(a operand) (statement, bool) {
	op := p.at(a.next)
	b, ok := p.operand(a.next + 1)
	if op.kind == kSign {
		c, ok := p.operand(a.next)
		if ok && p.opposed(a, c) && p.spreads(a, c) && (a.sign != 0 || op.sign == '+') {
			return p.spread(a, c) // +3-0 %, 0+5 W
		}
	}
	if !ok || !oneUnit(a, b) {
		return statement{}, false
	}
	opposed := p.opposed(a, b)
	switch op.kind {
	case kTilde:
	case kSlash, kComma:
		row := p.is(b.next, op.kind) && p.is(b.next+1, kNumber)
		hot := op.kind == kSlash && p.temperatures(a, b) // -40/+85
		if row || !hot && !(opposed && p.spreads(a, b)) {
			return statement{}, false
		}
	case kSign:
		if !p.dashRange(a, b, op) {
			return statement{}, false
		}
	default:
		return statement{}, false
	}
	if opposed && p.spreads(a, b) {
		return p.spread(a, b)
	}
	return statement{Range, []operand{a, b}, b.next}, true
}

// spread puts the minus first.
func (p *parser) spread(a, b operand) (statement, bool) {
	s := statement{Spread, []operand{a, b}, b.next}
	if a.sign == '+' || b.sign == '-' && a.sign == 0 {
		s.ops[0], s.ops[1] = b, a
	}
	return s, oneUnit(a, b)
}

// dashRange reports whether the dash between two numbers is one of a range: it stands like one (10-15, 10 - 15; but in
// "5 -3" it is a sign), the numbers rise, and it is no dimension's or telephone's.
func (p *parser) dashRange(a, b operand, op token) bool {
	tight, apart := !op.gap && !p.at(a.next+1).gap, op.gap && p.at(a.next+1).gap
	if op.sign != '-' || !tight && !apart && a.sign == 0 && b.sign == 0 && a.unit.unit == None {
		return false
	}
	if b.sign == 0 && p.signed(a) >= p.value(b) || op.gap && !p.at(a.next+1).gap {
		return false
	}
	plain := a.unit.unit == None && b.unit.unit == None && b.sign == 0
	return !(plain && (p.value(b) > 10*max(p.value(a), 100) || apart && p.is(b.next, kTimes)))
}

// opposed reports whether two numbers lie on the two sides of nought by their signs.
func (p *parser) opposed(a, b operand) bool {
	return a.sign != b.sign && (a.sign != 0 && b.sign != 0 || p.value(a) == 0 || p.value(b) == 0)
}

// spreads reports whether an opposed pair is a tolerance: no coefficients, no temperatures, no cables.
func (p *parser) spreads(a, b operand) bool {
	u := unitOf(a, b)
	x, y := p.value(a), p.value(b)
	switch {
	case u.signed() || u == K || x >= 100 || y >= 100 || u == MM && max(x, y) >= cableLength:
		return false
	case u == None:
		return !p.temperatures(a, b) && (x == 0 || y == 0 || x >= 1 && y >= 1)
	}
	return true
}

// temperatures reports whether a pair may be the ends of a temperature range.
func (p *parser) temperatures(a, b operand) bool {
	switch u := unitOf(a, b); {
	case a.sign != '-' || b.sign == '-':
		return false
	case u == None:
		return b.sign == '+' && p.value(a) >= coldEnd && p.value(b) >= hotEnd && p.value(b) <= 200
	default:
		return u.temperature()
	}
}

func unitOf(a, b operand) Unit {
	if a.unit.unit != None {
		return a.unit.unit
	}
	return b.unit.unit
}
