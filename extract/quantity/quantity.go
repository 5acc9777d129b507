// Package quantity finds the numbers with units in one text: "−0.27 %/°C", "1722×1134×30 mm", "0~+5 W". It knows number
// forms and units, no label and no field; geometry is not its business either. It must not import any other package of
// extract.
//
// What was printed is kept: a Term's Literal is the printed decimal, never rounded, converted or repaired. Where a separator
// may be read both ways the Term says so (Ambiguous, Other) and the caller, who sees the rest of the page, decides; a unit
// that stands elsewhere (in the label, in a column of its own) is brought in with In.
//
// The way is: line (look-alike characters made equal) → tokens (lex) → shapes of operands (Scan).
package quantity

// Quantity is one number, or several that a sheet prints as one statement.
type Quantity struct {
	Start, End int // byte offsets in the text; bound, sign and unit included
	Shape      Shape
	Terms      []Term
	Unit       Unit // of the whole; None where none is printed
	UnitCut    bool // the unit is printed cut off ("-0.35%/", "800 W/m"), and Unit is what it must have been
	Bound      Bound
}

// Term is one number of a quantity.
type Term struct {
	Literal    string  // a JSON number with the decimals as printed: "37.23" for "37,23", "-0.27" for "− 0.27"
	Value      float64 // of Literal
	Start, End int     // byte offsets in the text, sign included, unit left out
	Unit       Unit    // its own, or the one the whole shares
	Signed     bool    // a sign belongs to the number
	Detached   bool    // the sign stands apart from the number; with Signed false it is a dash that was not taken for a minus
	Ambiguous  bool    // thousands or decimals ("1.500"): not to be decided from the text alone
	Other      string  // the literal of the other reading, when Ambiguous
}

// Shape says how the terms of a quantity belong together.
type Shape string

const (
	Single  Shape = "single"  // 37.23 V
	Range   Shape = "range"   // -40 ~ +85 °C: the ends in printed order
	Spread  Shape = "spread"  // 0~+5 W, ±3 %: a tolerance without a centre; minus first, then plus, both not negative
	Within  Shape = "within"  // 45 ± 2 °C: centre, tolerance (which may have its own unit: 47.5 V ± 5 %)
	Product Shape = "product" // 1722 × 1134 × 30 mm; in "2 x 1000 mm" the first term is a count and has no unit
	Slash   Shape = "slash"   // 5400/2400 Pa
	List    Shape = "list"    // 1000 V and 1500 V; 0.9 + 1.2 m; +400, -200 mm
)

// Bound is a limit printed before or behind a quantity.
type Bound string

const (
	Exact   Bound = ""
	AtLeast Bound = "at-least" // ≥, >, min., at least
	AtMost  Bound = "at-most"  // ≤, <, max., up to
)

// In is the quantity as if the unit had been printed behind it; one that has a unit keeps it.
func (q Quantity) In(u Unit) Quantity {
	if q.Unit != None {
		return q
	}
	terms := make([]Term, len(q.Terms))
	for k, t := range q.Terms {
		terms[k] = t.in(u, q.Shape)
	}
	q.Unit, q.Terms = u, terms
	return q
}

// in reads a term without a unit again: the unit may tell thousands from decimals, and a minus from a dash.
func (t Term) in(u Unit, shape Shape) Term {
	t.Unit = u
	if t.Ambiguous {
		t.Literal, t.Other = settle(t.Literal, t.Other, u)
		t.Ambiguous = t.Other != ""
	}
	if t.Detached && !t.Signed && u.Coefficient() && shape != Spread {
		t.Signed, t.Literal = true, "-"+t.Literal
		if t.Other != "" {
			t.Other = "-" + t.Other
		}
	}
	t.Value = value(t.Literal)
	return t
}
