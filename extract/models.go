package extract

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
)

// class is one power class being put together.
type class struct {
	watts  float64 // of the claim that names the class, for order
	main   *column
	x, y   float64
	name   string
	named  *cell
	byCond map[condition]*column
	blocks map[condition]*block
	gains  []*column
	ratios []*column
}

// core are the concepts that make an electrical table worth the name.
var core = []label.Concept{"pmax", "vmp", "imp", "voc", "isc"}

func (b *block) depth() int {
	n := 0
	for _, c := range core {
		for _, col := range b.columns {
			if _, ok := col.values[c]; ok {
				n++
				break
			}
		}
	}
	return n
}

// conditionAt is the condition a column holds at: its own, else its table's.
func (b *block) conditionAt(c *column) condition {
	if c.gain != nil && c.cond == unknownCondition {
		return atGain
	}
	if c.cond != unknownCondition {
		return c.cond
	}
	return b.cond
}

// classesOf builds the power classes of a document from its electrical tables.
func classesOf(blocks []*block, the800 condition) []*class {
	for _, b := range blocks {
		if b.cond == at800 {
			b.cond = the800
		}
		for _, c := range b.columns {
			if c.cond == at800 {
				c.cond = the800
			}
		}
	}
	main := mainBlocks(blocks)
	var out []*class
	for _, b := range main {
		for _, cols := range b.classes() {
			k := newClass(b, cols)
			if k == nil || repeats(out, k) {
				continue
			}
			out = append(out, k)
		}
	}
	for _, b := range blocks {
		if !slices.Contains(main, b) {
			attach(out, b)
		} else {
			attachLines(out, b)
		}
	}
	slices.SortStableFunc(out, func(a, b *class) int { return cmp.Compare(a.watts, b.watts) })
	return out
}

// mainBlocks are the STC tables: those that say so, else the deepest of those that say nothing.
func mainBlocks(blocks []*block) []*block {
	var named, unnamed []*block
	for _, b := range blocks {
		if b.depth() < 3 {
			continue
		}
		stc, none := false, false
		for _, c := range b.columns {
			stc = stc || b.conditionAt(c) == atSTC
			none = none || b.conditionAt(c) == unknownCondition
		}
		switch {
		case stc:
			named = append(named, b)
		case none:
			unnamed = append(unnamed, b)
		}
	}
	if len(named) > 0 {
		if own := slices.DeleteFunc(slices.Clone(named), func(b *block) bool { return b.cond == atGain || b.cond == atRatio }); len(own) > 0 {
			return own // what a gain table has at STC is there for comparison
		}
		return named
	}
	if len(unnamed) == 0 {
		return nil
	}
	best := slices.MaxFunc(unnamed, func(a, b *block) int { return cmp.Compare(a.depth(), b.depth()) })
	var out []*block
	for _, b := range unnamed {
		if b == best || b.depth() == best.depth() && len(b.columns) == len(best.columns) && alongside(b, best) {
			out = append(out, b)
		}
	}
	return out
}

// alongside: two tables of one row of panels.
func alongside(a, b *block) bool {
	return a.page == b.page && min(a.box.Y1, b.box.Y1)-max(a.box.Y0, b.box.Y0) > 0.5*(a.box.Y1-a.box.Y0)
}

// newClass starts a class from the columns that a main table gives it.
func newClass(b *block, cols []*column) *class {
	k := &class{byCond: map[condition]*column{}, blocks: map[condition]*block{}}
	for _, c := range cols {
		cond := b.conditionAt(c)
		if cond == unknownCondition || cond == mixedCondition {
			cond = atSTC
		}
		k.byCond[cond] = c
		k.blocks[cond] = b
		if k.name == "" {
			k.name, k.named = c.name, c.named
		}
	}
	k.main = k.byCond[atSTC]
	if k.main == nil {
		return nil
	}
	k.x, k.y = k.main.x, k.main.y
	if p, ok := k.main.values["pmax"]; ok {
		k.watts = p.term().Value
	} else if w, ok := wattsIn(k.name); ok {
		k.watts = w
	} else if p, ok := productOf(k.main); ok {
		k.watts = p
	}
	if k.watts == 0 {
		return nil
	}
	return k
}

// productOf orders classes whose power is not printed; it fills no field.
func productOf(c *column) (float64, bool) {
	v, okV := c.values["vmp"]
	i, okI := c.values["imp"]
	return v.term0() * i.term0(), okV && okI
}

func (v value) term0() float64 {
	if len(v.q.Terms) == 0 {
		return 0
	}
	return v.q.Terms[0].Value
}

// repeats: the same class printed again (a front-page table), value for value.
func repeats(have []*class, k *class) bool {
	for _, h := range have {
		if h.watts != k.watts {
			continue
		}
		same, differ := 0, 0
		for c, v := range k.main.values {
			if w, ok := h.main.values[c]; ok {
				if w.term().Value == v.term().Value {
					same++
				} else {
					differ++
				}
			}
		}
		if differ == 0 && same > 0 && (k.name == h.name || k.name == "" || h.name == "") {
			return true
		}
	}
	return false
}

// attach files the columns of a further table under the classes: by name or watts where its header prints them, else by order when the counts agree.
func attach(classes []*class, b *block) {
	if b.cond == atGain || b.cond == atRatio {
		attachGains(classes, b)
		return
	}
	groups := map[condition][]*column{}
	var order []condition
	for _, c := range b.columns {
		cond := b.conditionAt(c)
		if cond == unknownCondition && b.depth() == 0 {
			addEfficiency(classes, c)
		}
		if cond == unknownCondition || cond == mixedCondition || cond == atSTC {
			continue
		}
		if groups[cond] == nil {
			order = append(order, cond)
		}
		groups[cond] = append(groups[cond], c)
	}
	for _, cond := range order {
		cols := groups[cond]
		target := nearby(classes, b, len(cols))
		for i, c := range cols {
			k := byName(classes, c.name)
			if k == nil && len(target) == len(cols) {
				k = target[i]
			}
			if k != nil && k.byCond[cond] == nil {
				k.byCond[cond], k.blocks[cond] = c, b
			}
		}
	}
}

// addEfficiency takes an efficiency that stands in a little table of its own, under the class's name.
func addEfficiency(classes []*class, c *column) {
	v, ok := c.values["eff"]
	if k := byName(classes, c.name); ok && k != nil && hasLetters(c.name) {
		if _, has := k.main.values["eff"]; !has {
			k.main.put("eff", v)
		}
	}
}

// byName finds the class a header names, whole or by its watts.
func byName(classes []*class, name string) *class {
	if name == "" {
		return nil
	}
	for _, k := range classes {
		if squeezed(k.name) == squeezed(name) {
			return k
		}
	}
	if w, ok := wattsIn(name); ok {
		var hit *class
		for _, k := range classes {
			if kw, ok := wattsIn(k.name); ok && kw == w || k.watts == w {
				if hit != nil {
					return nil
				}
				hit = k
			}
		}
		return hit
	}
	return nil
}

func squeezed(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), "")) }

// nearby are the classes that a table of n columns continues, in print order: all of them, or those of the main table it stands under.
func nearby(classes []*class, b *block, n int) []*class {
	if len(classes) == n {
		return classes
	}
	byBlock := map[*block][]*class{}
	for _, k := range classes {
		m := k.blocks[atSTC]
		byBlock[m] = append(byBlock[m], k)
	}
	var best []*class
	bestD := math.Inf(1)
	for m, list := range byBlock {
		if len(list) != n || m.page != b.page {
			continue
		}
		if d := math.Abs(m.box.X0-b.box.X0) + max(0, b.box.Y0-m.box.Y1); d < bestD {
			best, bestD = list, d
		}
	}
	return best
}

// attachGains files a gain or ratio table: its lines are gains of one class, or its columns are classes at one gain.
func attachGains(classes []*class, b *block) {
	put := func(k *class, c *column) {
		if b.cond == atRatio {
			k.ratios = append(k.ratios, c)
		} else {
			k.gains = append(k.gains, c)
		}
	}
	gain := b.beside
	if gain == nil {
		gain = b.titleGain()
	}
	if gain != nil && len(b.columns) == len(classes) {
		for i, c := range b.columns {
			if c.gain == nil {
				c.gain = gain
			}
			put(classes[i], c)
		}
		return
	}
	one := gainClass(classes, b)
	if one == nil {
		return
	}
	for _, c := range b.columns {
		if c.gain != nil {
			put(one, c)
		}
	}
}

// titleGain is the one gain that a table's title names for all its classes: "with 10 % rear side power gain".
func (b *block) titleGain() *value {
	if b.titled == nil {
		return nil
	}
	for _, q := range b.titled.quantities {
		if q.Unit == quantity.Percent && q.Shape == quantity.Single {
			return &value{q: q, cell: b.titled, box: b.titled.boxOf(q.Start, q.End), label: b.titled.text}
		}
	}
	return nil
}

// attachLines files the gains that stand under their class's own line in a main table.
func attachLines(classes []*class, b *block) {
	for _, c := range b.columns {
		if c.gain == nil || c.class == nil {
			continue
		}
		for _, k := range classes {
			if k.main != c.class {
				continue
			}
			if b.cond == atRatio {
				k.ratios = append(k.ratios, c)
			} else {
				k.gains = append(k.gains, c)
			}
		}
	}
}

// gainClass finds the class a gain table is valid for: the one its title or head names, or the only one.
func gainClass(classes []*class, b *block) *class {
	if len(classes) == 1 {
		return classes[0]
	}
	var hit *class
	for _, k := range classes {
		if k.watts > 0 && hasNumber(b.title, k.watts) || k.name != "" && strings.Contains(squeezed(b.title), squeezed(k.name)) {
			if hit != nil {
				return nil
			}
			hit = k
		}
	}
	return hit
}
