package quantity

// build turns a statement into the quantity that begins with the token from.
func (p *parser) build(s statement, from int) Quantity {
	q := Quantity{Shape: s.shape, Start: p.l.start[p.t[from].i], End: p.l.end[p.t[s.next-1].j-1]}
	for _, o := range s.ops {
		if o.unit.unit != None && (q.Unit == None || q.Unit == Degree && o.unit.unit.temperature()) { // "45° ± 2 °C"
			q.Unit, q.UnitCut = o.unit.unit, o.unit.cut
		}
	}
	counts := p.counts(s)
	for k, o := range s.ops {
		if (o.unit.unit == None || o.unit.unit == Degree) && !(counts && k == 0) {
			o.unit.unit = q.Unit
		}
		q.Terms = append(q.Terms, p.term(s, o))
	}
	return q
}

func (p *parser) term(s statement, o operand) Term {
	num := p.t[o.num]
	t := Term{Unit: o.unit.unit, Start: p.l.start[num.i], End: p.l.end[num.j-1]}
	t.Literal, t.Other = num.num.in(t.Unit)
	t.Ambiguous = t.Other != ""
	if o.sign != 0 || p.is(o.from, kPM) {
		t.Detached = o.detached || p.glued(s, o)
		t.Signed = p.taken(s, o)
	}
	if t.Signed {
		t.Start = p.l.start[p.t[o.from].i]
		if o.sign == '-' && s.shape != Spread {
			t.Literal = "-" + t.Literal
			if t.Ambiguous {
				t.Other = "-" + t.Other
			}
		}
	}
	t.Value = value(t.Literal)
	return t
}

// taken reports whether the sign before a number is its sign, and not a dash that lists or separates.
func (p *parser) taken(s statement, o operand) bool {
	unit := o.unit.unit
	for _, other := range s.ops {
		if unit == None {
			unit = other.unit.unit
		}
	}
	switch {
	case o.sign == 0:
		return p.is(o.from, kPM)
	case o.sign == '+' || s.shape == Spread:
		return true
	case s.shape == Single && (unit.unsigned() || p.glued(s, o)):
		return false
	case !o.detached || unit.Coefficient():
		return true
	}
	for _, other := range s.ops {
		if other.num != o.num && other.sign != 0 {
			return true // - 40 ~ + 85
		}
	}
	opening := o.from == 0 || p.is(o.from-1, kOpen) || p.is(o.from-1, kBound)
	return opening && (unit == None || unit == Percent || unit.temperature())
}

// glued reports a dash that hangs on the word before it, as the one of "NOCT-45 °C": it joins a temperature to its name.
func (p *parser) glued(s statement, o operand) bool {
	return s.shape == Single && o.sign == '-' && o.unit.unit.temperature() && p.is(o.from-1, kWord) && isLetter(p.l.at(p.t[o.from].i-1))
}
