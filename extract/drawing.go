package extract

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"pvtally/extract/page"
	"pvtally/extract/quantity"
	"pvtally/extract/table"
)

// mark is a figure that stands alone in a drawing.
type mark struct {
	literal string
	value   float64
	page    int
	box     page.Box
	by      page.By
}

// drawnSides reads the outer sides from the drawing where no words tell them. A drawing has many figures; the pair that is meant is the one whose area
// makes every class's printed efficiency of its printed power. If none or several do, the sides stay open.
func (d *document) drawnSides() {
	if slices.ContainsFunc(d.ledger.claims, func(c claim) bool { return c.field == "/body/length_mm" }) {
		return
	}
	areas := d.impliedAreas()
	if len(areas) == 0 {
		return
	}
	marks := d.marks()
	var hit [2]mark
	found := map[string]bool{}
	for _, l := range marks {
		for _, w := range marks {
			if l.page != w.page || l.value <= w.value || l.value < 500 || w.value < 300 {
				continue
			}
			if area := l.value * w.value / 1e6; slices.ContainsFunc(areas, func(a areaRange) bool { return area < a.lo || area > a.hi }) {
				continue
			}
			hit = [2]mark{l, w}
			found[l.literal+"x"+w.literal] = true
		}
	}
	if len(found) != 1 {
		return
	}
	for i, field := range []string{"/body/length_mm", "/body/width_mm"} {
		d.ledger.add(hit[i].claim(field, "drawing", "of the drawing's figures the pair whose area agrees with power and efficiency"))
	}
	d.drawnDepth(marks, hit[1])
}

// drawnDepth takes the frame's height where one figure of its size stands at the height of the width: the views of a drawing are dimensioned in line.
func (d *document) drawnDepth(marks []mark, near mark) {
	var hit mark
	found := map[string]bool{}
	for _, m := range marks {
		if m.page == near.page && m.value >= 20 && m.value <= 60 && math.Abs(m.box.Y1-near.box.Y1) < 3 {
			hit = m
			found[m.literal] = true
		}
	}
	if len(found) == 1 {
		d.ledger.add(hit.claim("/body/depth_mm", "drawing", "the only figure of a frame's size in line with the drawn width"))
	}
}

func (m mark) claim(field, lab, note string) claim {
	return claim{field: field, literal: m.literal, printed: m.literal, label: lab, page: m.page, box: m.box, by: m.by, score: loosely, note: note}
}

type areaRange struct{ lo, hi float64 }

// impliedAreas is what every class's power and efficiency make of the area, to their rounding, in m2.
func (d *document) impliedAreas() []areaRange {
	var out []areaRange
	for _, k := range d.classes {
		p, okP := k.main.values["pmax"]
		e, okE := k.main.values["eff"]
		if !okP || !okE || e.term().Value <= 0 {
			continue
		}
		half := 0.5 * math.Pow(10, -float64(decimals(e.term().Literal)))
		w := p.term().Value
		out = append(out, areaRange{(w - 0.5) / (e.term().Value + half) / 10, (w + 0.5) / (e.term().Value - half) / 10})
	}
	return out
}

func decimals(literal string) int {
	for i, r := range literal {
		if r == '.' {
			return len(literal) - i - 1
		}
	}
	return 0
}

// inchesOnly: nothing follows a drawing's figure, or the same in inches: "1134 mm [44.6 in]".
func inchesOnly(rest string) bool {
	rest = strings.TrimSpace(rest)
	if rest == "" {
		return true
	}
	qs := quantity.Scan(rest)
	return (rest[0] == '[' || rest[0] == '(') && len(qs) == 1 && qs[0].Unit == quantity.Inch && len(rest)-qs[0].End <= 1 && qs[0].Start <= 2
}

// marks are the figures that stand alone on the pages, upright and turned.
func (d *document) marks() []mark {
	var out []mark
	add := func(text string, number int, box page.Box, by page.By) {
		for _, q := range quantity.Scan(text) {
			t := q.Terms[0]
			if q.Shape != quantity.Single && q.Shape != quantity.Within || q.Unit != quantity.None && q.Unit != quantity.MM || q.Start != 0 || !inchesOnly(text[q.End:]) {
				continue
			}
			if _, err := strconv.ParseFloat(t.Literal, 64); err == nil && t.Value >= 10 && t.Value <= 4000 {
				out = append(out, mark{t.Literal, t.Value, number, box, by})
			}
		}
	}
	for _, v := range d.views {
		for _, c := range v.loose {
			add(c.text, c.page, c.box, c.by)
		}
		for _, r := range table.Turned(*v.page) {
			add(r.Text, v.page.Number, r.Box, r.By)
		}
	}
	return out
}
