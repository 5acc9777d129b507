package extract

import (
	"slices"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/schema"
)

// document is a datasheet on the way to its record.
type document struct {
	views    []*view
	flows    []*flow
	blocks   []*block
	classes  []*class
	parts    []part
	ledger   ledger
	voltages []claim
	cables   []claim
	lengths  map[label.Concept][]side
	all      label.Found // the whole visible text
	counted  *row        // the row whose cells were counted last
}

// read takes the pages through all steps up to claims.
func read(pages []page.Page) *document {
	d := &document{lengths: map[label.Concept][]side{}}
	var text strings.Builder
	for i := range pages {
		v := newView(&pages[i])
		d.views = append(d.views, v)
		d.flows = append(d.flows, v.flows()...)
		b := mergeLists(v.rowBlocks())
		for i, at := range b {
			v.readHeader(at, at.first)
			v.gainBeside(at, b[:i])
		}
		shareTitles(b)
		for _, b := range b {
			v.conditionBeside(b)
		}
		b = append(b, v.transposedBlocks(b)...)
		for _, b := range b {
			v.noteBelow(b)
		}
		d.blocks = append(d.blocks, b...)
	}
	for _, f := range d.flows {
		text.WriteString(f.text)
		text.WriteString("\n")
	}
	d.all = label.Find(text.String())
	d.classes = classesOf(d.blocks, d.the800())
	d.parts = partsOf(d.classes)
	d.electricalClaims()
	d.rowFacts()
	d.warranties(d.flows)
	for _, v := range d.views {
		d.badgeClaims(v.badges())
	}
	d.warrantyGraphs()
	d.sentences(d.flows)
	d.conditions()
	d.colophon()
	d.described()
	d.drawnSides()
	d.technology(d.all, d.rows())
	d.names()
	return d
}

func (d *document) rows() []*row {
	var out []*row
	for _, v := range d.views {
		out = append(out, v.rows...)
	}
	return out
}

// the800 is the sheet's own name for its 800 W/m2 table where the table's title has none.
func (d *document) the800() condition {
	nmot, noct := 0, 0
	for _, m := range d.all.Matches {
		for _, a := range m.Atoms {
			switch a {
			case "nmot":
				nmot++
			case "noct":
				noct++
			}
		}
	}
	if nmot > noct {
		return atNMOT
	}
	return atNOCT
}

func (d *document) rowFacts() {
	for _, r := range d.rows() {
		if r.label[0].by == page.ByPicture && countLetters(r.text()) < 3 {
			continue // specks of a drawing, read as letters
		}
		switch r.concept {
		case "length", "width", "depth":
			d.oneSide(r)
		case "per_pallet", "per_container", "palletcount", "packing":
			d.nearest(packingRow, r)
		case "celltemp", "optemp", "ambient", "":
			d.namedInValue(r)
		case "pmax", "power", "model":
			if r.concept == "pmax" {
				classTolerance(d, r) // "Peak power (0/+5 W)"
			}
			yearsOf(d, r)
		default:
			if f := facts[r.concept]; f != nil {
				d.nearest(f, r)
			}
		}
	}
	d.separateSides()
}

// nearest reads a row by the values next to its label; what stands farther off on the line (a curve's axis, a drawing) counts only where those say
// nothing, or where there is one value a class.
func (d *document) nearest(f fact, r *row) {
	if own := d.byPart(r); own != nil {
		for p, r := range own {
			if r != nil {
				d.ledger.part = p + 1
				f(d, r)
			}
		}
		d.ledger.part = 0
		return
	}
	near := *r
	near.values = nil
	own := len(r.values) > 0 && r.values[0] == r.label[0] // the value stands in the label's cell
	for i, c := range r.values {
		if i == 0 || inReach(near.values, c) && !(own && abs(c.base-r.values[0].base) < 0.5*c.size) {
			near.values = append(near.values, c)
		}
	}
	if d.oneEach(r) {
		f(d, r)
		return
	}
	before := len(d.ledger.claims) + len(d.voltages) + len(d.cables)
	f(d, &near)
	if len(d.ledger.claims)+len(d.voltages)+len(d.cables) == before && len(near.values) < len(r.values) {
		f(d, r)
	}
}

// oneEach: the row has a quantity under every class, all of one unit.
func (d *document) oneEach(r *row) bool {
	var all []value
	for _, c := range r.values {
		for _, q := range c.quantities {
			all = append(all, value{q: q, box: c.boxOf(q.Start, q.End)})
		}
	}
	if len(all) != len(d.classes) || len(all) < 2 {
		return false
	}
	for _, v := range all {
		if v.q.Unit != all[0].q.Unit || !slices.ContainsFunc(d.classes, func(k *class) bool { return k.x > v.box.X0-2 && k.x < v.box.X1+2 }) {
			return false
		}
	}
	return true
}

// inReach: the cell stands under or right behind one of the others.
func inReach(cells []*cell, c *cell) bool {
	for _, o := range cells {
		if min(o.box.X1, c.box.X1) > max(o.box.X0, c.box.X0) || c.box.X0 >= o.box.X1 && c.box.X0-o.box.X1 < 2.5*c.size && abs(c.base-o.base) < c.size {
			return true
		}
	}
	return false
}

// records settles the claims into one record a series.
func (d *document) records() []*schema.Sheet {
	var out []*schema.Sheet
	for i, p := range d.parts {
		s := &schema.Sheet{Format: schema.Format, Language: d.language()}
		s.Models = make([]schema.Model, len(p.classes))
		for i, k := range p.classes {
			s.Models[i].RearGain = make([]schema.RearGain, len(k.gains))
			s.Models[i].RearRatio = make([]schema.RearRatio, len(k.ratios))
		}
		d.ledger.of(i + 1).settle(s)
		d.lists(s)
		s.Certificates = d.certificates()
		out = append(out, s)
	}
	return out
}

// language is the one whose words the lexicon recognised most.
func (d *document) language() string {
	letters := map[string]int{}
	for _, m := range d.all.Matches {
		if len(m.Langs) == 1 {
			letters[m.Langs[0]] += m.Length
		}
	}
	best := ""
	for _, l := range label.Languages() {
		if letters[l] > letters[best] {
			best = l
		}
	}
	return best
}

// wordPlace finds the cell that names a technology.
func (d *document) wordPlace(atom string) *cell {
	for _, v := range d.views {
		for i := range v.cells {
			for k := range v.cells[i] {
				if c := &v.cells[i][k]; c.whole().Has(atom) {
					return c
				}
			}
		}
	}
	return nil
}

// classAt is the index of the class whose column stands at x, or the i-th.
func (d *document) classAt(x float64, i int) int {
	best, dist := i, 1e9
	for n, k := range d.classes {
		if e := abs(k.x - x); k.x > 0 && e < dist {
			best, dist = n, e
		}
	}
	return best
}

// isDatasheet: there is a table of classes, or at least some facts that only a module's sheet has.
func (d *document) isDatasheet() bool { return len(d.classes) > 0 || len(d.ledger.claims) >= 3 }
