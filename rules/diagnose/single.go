package diagnose

import (
	"math"
	"slices"
	"strings"

	"pvtally/schema"
)

// singles proposes every known slip that leads from some number to the one printed in a cell, and numbers that its relations imply.
func (b *board) singles(c int, propose func(correction)) {
	k := &b.cells[c]
	text := k.n.String()
	if !plain(text) {
		return
	}
	cells := float64(len(b.cells) - 1)
	derived := b.derived(c)
	one := func(m Mistake, ways float64, to schema.Number) {
		if to.Float() == k.n.Float() {
			return
		}
		x := correction{mistake: m, edits: []edit{{c, to}}, prior: chance(m, ways)}
		if k.doubtful && m != Neighbour && m != Unit {
			x.mistake, x.prior = Reading, x.prior+doubt
		}
		propose(x)
		for _, d := range derived {
			if n, ok := rounded(b.x[d]*to.Float()/b.x[c], b.decimals(d)); ok && n != b.now[d] && b.x[c] != 0 {
				x.edits, x.mistake, x.prior = []edit{{c, to}, {d, n}}, m, chance(m, 2*ways)
				propose(x)
			}
		}
	}
	list := func(m Mistake, numbers []schema.Number) {
		for _, n := range numbers {
			one(m, cells*float64(len(numbers)), n)
		}
	}
	list(OneDigit, otherDigits(text))
	list(Transposed, transposed(text))
	list(DecimalPoint, moved(text, b.decimals(c)))
	if signs := b.signs(); hasSign(k) {
		if n, err := schema.ParseNumber(negated(text)); err == nil {
			one(Sign, signs, n)
		}
	}
	for _, f := range slips(b, k) {
		if n, ok := significant(k.n.Float()*f, text); ok {
			one(Unit, unitWays, n)
		}
	}
	if n, ok := b.implied(c); ok {
		if ways := b.copied(c); ways > 0 {
			one(Neighbour, ways*cells, n)
		}
		one(Unknown, anyNumber*cells*otherSize(n.Float()/k.n.Float()), n)
	}
}

// otherSize is by how much rarer a number is mistaken for one of another size.
func otherSize(ratio float64) float64 {
	if ratio <= 0 {
		return 20
	}
	return math.Exp(min(2*math.Abs(math.Log(ratio)), 3))
}

// derived are the same class's values at NMOT or NOCT where they stand off their row with it: makers calculate them, and a mistake that
// was made before shows in both.
func (b *board) derived(c int) (out []int) {
	k := &b.cells[c]
	if k.group != "stc" || k.name == "efficiency_pct" {
		return nil
	}
	for _, group := range []string{"nmot", "noct"} {
		if d := b.find(k.model, group, -1, k.name); d != none && !b.fixed[d] && b.suspicious(d) {
			out = append(out, d)
		}
	}
	return out
}

// doubt is by how much a number that was read once, or off a picture, is likelier to be another than one that two readers agree on; a natural
// logarithm (from memory).
const doubt = 1.5

// anyNumber is in how many ways a number can be another one of its size.
const anyNumber = 300

// unitWays is in how many ways units are mistaken on a sheet: a dozen quantities, two or three other units each.
const unitWays = 30

// hasSign tells the numbers that have a sign to lose.
func hasSign(k *cell) bool {
	return strings.HasSuffix(k.name, "_per_k") || k.name == "temperature_min_c"
}

// signs is how many numbers of the sheet have a sign to lose.
func (b *board) signs() float64 {
	n := 0.0
	for i := range b.cells {
		if hasSign(&b.cells[i]) {
			n++
		}
	}
	return n
}

// implied is the number that a cell's broken relations ask for, as its row prints it: of what each asks for, and the next numbers above and below,
// the one that serves all of them best.
func (b *board) implied(c int) (best schema.Number, ok bool) {
	decimals := b.decimals(c)
	unit := math.Pow10(-decimals)
	most := 0.0
	for _, r := range b.of[c] {
		if b.cost[r] < 1 {
			continue
		}
		v, told := b.rels[r].solve(b, c)
		if !told {
			continue
		}
		for _, d := range []float64{0, unit, -unit} {
			if n, fits := rounded(v+d, decimals); fits {
				if gain := b.try([]edit{{c, n}}, most); gain > most {
					best, most, ok = n, gain, true
				}
			}
		}
	}
	return best, ok
}

// copied is in how many ways a cell can have come by another's number: 0 where no other class, and not the same class at STC, has it. The next class's is the likeliest.
func (b *board) copied(c int) float64 {
	k := &b.cells[c]
	same := func(o int) bool { return o != none && o != c && b.now[o].Float() == k.n.Float() }
	switch {
	case k.model < 0:
		return 0
	case same(b.find(k.model-1, k.group, k.row, k.name)) || same(b.find(k.model+1, k.group, k.row, k.name)):
		return 3
	case k.group != "stc" && same(b.find(k.model, "stc", -1, k.name)):
		return 4
	case slices.ContainsFunc(b.siblings(c), same):
		return 3 * float64(len(b.sheet.Models))
	}
	return 0
}

// slips are the factors by which a number grows when its unit was mistaken: what it is in the field's unit over what is printed.
func slips(b *board, k *cell) []float64 {
	middle := func(name string) float64 {
		row := printed(b.row("stc", -1, name))
		if len(row) == 0 {
			return math.NaN()
		}
		return b.x[row[len(row)/2]]
	}
	perCent := func(of string) []float64 {
		v, n := middle(of), b.x[b.single("cell", "count")]
		if !(v > 0) {
			return nil
		}
		out := []float64{100 / v, 0.1 / v} // V/K and mV/K printed as %/K
		if n > 0 {
			out = append(out, 0.1*n/v) // mV/K for each cell
		}
		return out
	}
	switch k.name {
	case "alpha_isc_pct_per_k":
		return perCent("isc_a")
	case "beta_voc_pct_per_k":
		return perCent("voc_v")
	case "gamma_pmax_pct_per_k":
		return perCent("pmax_w")
	case "alpha_isc_a_per_k", "beta_voc_v_per_k":
		return []float64{0.001}
	case "length_mm", "width_mm", "depth_mm":
		return []float64{10, 25.4, 1000}
	case "mass_kg":
		return []float64{0.45359237}
	case "front_load_pa", "rear_load_pa":
		return []float64{47.88, 1000}
	}
	return nil
}

// significant writes a converted number with as many significant digits as were printed, at least two.
func significant(v float64, text string) (schema.Number, bool) {
	digits := 0
	for _, c := range strings.TrimLeft(strings.Replace(strings.TrimPrefix(text, "-"), ".", "", 1), "0") {
		if c >= '0' && c <= '9' {
			digits++
		}
	}
	if v == 0 {
		return schema.Number{}, false
	}
	decimals := max(digits, 2) - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	return rounded(v, min(max(decimals, 0), 6))
}
