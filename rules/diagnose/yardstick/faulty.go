package yardstick

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"pvtally/rules/diagnose"
	"pvtally/schema"
)

// Faulty is a sheet with a mistake printed on it.
type Faulty struct {
	Sheet  *schema.Sheet
	Kind   diagnose.Mistake
	Fields []string // the wrong cells
	Change float64  // the greatest change of a value, in per cent
}

// printing is one mistake as it is made on a sheet: cell by cell, what is printed instead.
type printing struct {
	kind  diagnose.Mistake
	cells map[string]schema.Number
}

// quantities of the STC table.
var quantities = []string{"pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a", "efficiency_pct"}

// Faults prints each kind of mistake once, each on a copy of an honest sheet.
func Faults(honest *schema.Sheet, rng *rand.Rand) (out []Faulty) {
	for _, p := range printings(honest, rng) {
		if f, ok := spoil(honest, p); ok {
			out = append(out, f)
		}
	}
	return out
}

// Pairs prints two mistakes on different cells, on n copies.
func Pairs(honest *schema.Sheet, rng *rand.Rand, n int) (out [][2]Faulty) {
	for tries := 0; len(out) < n && tries < 20*n; tries++ {
		list := printings(honest, rng)
		p, q := list[rng.IntN(len(list))], list[rng.IntN(len(list))]
		first, ok := spoil(honest, p)
		if !ok || p.kind == q.kind {
			continue
		}
		second, ok := spoil(first.Sheet, q)
		if !ok || slices.ContainsFunc(first.Fields, func(f string) bool { return slices.Contains(second.Fields, f) }) {
			continue
		}
		first.Sheet = second.Sheet
		out = append(out, [2]Faulty{first, second})
	}
	return out
}

// Misprint changes a digit of any printed number, or transposes two, on a copy; false where the number cannot be set.
func Misprint(sheet *schema.Sheet, at string, rng *rand.Rand) (Faulty, bool) {
	n, ok := sheet.At(at)
	if !ok {
		return Faulty{}, false
	}
	p := printing{kind: diagnose.OneDigit}
	text, _ := misprint(n.String(), rng)
	if other, ok := transpose(n.String(), rng); ok && rng.IntN(4) == 0 {
		text, p.kind = other, diagnose.Transposed
	}
	v, err := schema.ParseNumber(text)
	if err != nil {
		return Faulty{}, false
	}
	p.cells = map[string]schema.Number{at: v}
	return spoil(sheet, p)
}

// spoil prints a mistake on a copy; false where it changes nothing.
func spoil(sheet *schema.Sheet, p printing) (Faulty, bool) {
	f := Faulty{Sheet: sheet.Clone(), Kind: p.kind}
	for at, n := range p.cells {
		old, ok := sheet.At(at)
		if !ok || old.Float() == n.Float() || f.Sheet.Set(at, n) != nil {
			continue
		}
		f.Fields = append(f.Fields, at)
		if old.Float() != 0 {
			f.Change = max(f.Change, 100*math.Abs(n.Float()/old.Float()-1))
		}
	}
	slices.Sort(f.Fields)
	return f, f.Change > 0
}

// printings draws one mistake of each kind.
func printings(s *schema.Sheet, rng *rand.Rand) (out []printing) {
	n := len(s.Models)
	i := rng.IntN(n)
	at := func(class int, name string) string { return fmt.Sprintf("/models/%d/stc/%s", class, name) }
	get := func(at string) schema.Number { v, _ := s.At(at); return v }
	put := func(kind diagnose.Mistake, cells map[string]schema.Number) { out = append(out, printing{kind, cells}) }
	put(diagnose.Swap, map[string]schema.Number{at(i, "vmp_v"): get(at(i, "voc_v")), at(i, "voc_v"): get(at(i, "vmp_v"))})
	put(diagnose.Swap, map[string]schema.Number{at(i, "imp_a"): get(at(i, "isc_a")), at(i, "isc_a"): get(at(i, "imp_a"))})
	for _, k := range []struct {
		kind diagnose.Mistake
		slip func(string, *rand.Rand) (string, bool)
	}{{diagnose.Transposed, transpose}, {diagnose.OneDigit, misprint}, {diagnose.DecimalPoint, movePoint}} {
		q := at(i, quantities[rng.IntN(len(quantities))])
		if text, ok := k.slip(get(q).String(), rng); ok {
			put(k.kind, map[string]schema.Number{q: schema.MustNumber(text)})
		}
	}
	if n >= 3 {
		q := quantities[1+rng.IntN(len(quantities)-1)]
		row := map[string]schema.Number{}
		for k := range n {
			row[at(k, q)] = get(at((k+1)%n, q))
		}
		put(diagnose.SlippedRow, row)
		q = quantities[rng.IntN(len(quantities))]
		put(diagnose.Neighbour, map[string]schema.Number{at(i, q): get(at((i+1)%n, q))})
	}
	out = append(out, ofModule(s, rng, n)...)
	return out
}

// ofModule are the mistakes in what all classes share.
func ofModule(s *schema.Sheet, rng *rand.Rand, n int) (out []printing) {
	const alpha, beta, gamma, length, width, count = "/thermal/alpha_isc_pct_per_k", "/thermal/beta_voc_pct_per_k", "/thermal/gamma_pmax_pct_per_k", "/body/length_mm", "/body/width_mm", "/cell/count"
	get := func(at string) schema.Number { v, _ := s.At(at); return v }
	put := func(kind diagnose.Mistake, cells map[string]schema.Number) { out = append(out, printing{kind, cells}) }
	c := []string{alpha, beta, gamma}[rng.IntN(3)]
	text := "-" + get(c).String()
	put(diagnose.Sign, map[string]schema.Number{c: schema.MustNumber(strings.TrimPrefix(text, "--"))})
	put(diagnose.RowsSwapped, map[string]schema.Number{beta: get(gamma), gamma: get(beta)})
	put(diagnose.Unit, map[string]schema.Number{beta: number(get(beta).Float()*s.Models[n/2].STC.Voc.Float()/100, 3)})
	side := []string{length, width}[rng.IntN(2)]
	put(diagnose.Unit, map[string]schema.Number{side: number(get(side).Float()/10, 1)})
	// between 60 and 72 cells the length grows by 19.5 %
	longer, other := 1.195, 72.0
	if get(count).Float() > 60 {
		longer, other = 1/1.195, 60
	}
	put(diagnose.OtherFormat, map[string]schema.Number{length: number(get(length).Float()*longer, 0)})
	put(diagnose.CellCount, map[string]schema.Number{count: number(other, 0)})
	cells := map[string]schema.Number{}
	for k := range n {
		e := s.Models[k].STC.Efficiency
		cells[fmt.Sprintf("/models/%d/stc/efficiency_pct", k)] = number(1.11*e.Float(), e.Decimals())
	}
	put(diagnose.CellEfficiency, cells)
	return out
}

// digitsOf are the places of the digits in a literal.
func digitsOf(text string) (at []int) {
	for i := range len(text) {
		if text[i] >= '0' && text[i] <= '9' {
			at = append(at, i)
		}
	}
	return at
}

// transpose swaps two neighbouring digits that differ, never putting a zero first.
func transpose(text string, rng *rand.Rand) (string, bool) {
	d := digitsOf(text)
	var pairs [][2]int
	for i := 1; i < len(d); i++ {
		if x, y := d[i-1], d[i]; text[x] != text[y] && !(x == 0 && text[y] == '0') {
			pairs = append(pairs, [2]int{x, y})
		}
	}
	if len(pairs) == 0 {
		return "", false
	}
	p := pairs[rng.IntN(len(pairs))]
	c := []byte(text)
	c[p[0]], c[p[1]] = c[p[1]], c[p[0]]
	return string(c), true
}

// misprint makes one digit another, never the first a zero.
func misprint(text string, rng *rand.Rand) (string, bool) {
	d := digitsOf(text)
	k := d[rng.IntN(len(d))]
	for {
		if c := byte('0' + rng.IntN(10)); c != text[k] && (k > 0 || c != '0') {
			return text[:k] + string(c) + text[k+1:], true
		}
	}
}

// movePoint moves the decimal point by one place.
func movePoint(text string, rng *rand.Rand) (string, bool) {
	v := schema.MustNumber(text)
	if rng.IntN(2) == 0 {
		return number(10*v.Float(), max(0, v.Decimals()-1)).String(), true
	}
	return number(v.Float()/10, v.Decimals()+1).String(), true
}
