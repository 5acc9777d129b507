package quantity

// maxRow bounds the equals of one slash or list; maxRatio is how far apart the members of a list without a unit of their own
// may lie: in "2, 1000 V" the 2 is something else.
const (
	maxRow   = 16
	maxRatio = 4
)

func (p *parser) slash(a operand) (statement, bool) {
	s := p.row(a, Slash, kSlash)
	last := s.ops[len(s.ops)-1]
	if len(s.ops) > 1 && last.unit.unit == None && unitOf(s.ops[0], s.ops[1]) != None {
		return s, false // 936 pcs / 40 HQ
	}
	return s, len(s.ops) > 1
}

// list reads equals with a unit behind the last: 1000, 1250 and 1500 V; 0.9 + 1.2 m.
func (p *parser) list(a operand) (statement, bool) {
	s := p.row(a, List, kComma, kAnd, kSign)
	last := s.ops[len(s.ops)-1]
	if len(s.ops) < 2 || last.unit.unit == None {
		return s, false
	}
	for _, o := range s.ops {
		x, y := p.value(o), p.value(last)
		if o.unit.unit == None && (x > maxRatio*y || y > maxRatio*x) {
			return s, false
		}
	}
	return s, true
}

// row reads equals with certain signs between them.
func (p *parser) row(a operand, shape Shape, between ...kind) statement {
	s := statement{shape, []operand{a}, a.next}
	for len(s.ops) < maxRow {
		k := p.joint(s.next, between)
		if k == 0 {
			break
		}
		b, ok := p.operand(k)
		mixed := shape == List && (a.sign == 0) != (b.sign == 0) // 4 mm, +400, -200 mm
		if !ok || mixed || !oneUnit(s.ops[0], s.ops[len(s.ops)-1], b) || p.is(b.next, kTimes) || p.is(b.next, kPM) || p.is(b.next, kTilde) {
			break
		}
		s.ops = append(s.ops, b)
		s.next = b.next
	}
	return s
}

// joint is the token after the sign between two equals at i, or 0. A plus joins only where it stands like one: 0.9 + 1.2 m,
// 2.0+2.0 mm, not 400 +2.
func (p *parser) joint(i int, between []kind) int {
	op := p.at(i)
	found := false
	for _, k := range between {
		found = found || p.is(i, k)
	}
	switch {
	case !found, op.kind == kSign && (op.sign != '+' || op.gap != p.at(i+1).gap):
		return 0
	case op.kind == kComma && p.is(i+1, kAnd):
		return i + 2
	}
	return i + 1
}
