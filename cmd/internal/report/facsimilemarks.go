package report

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"pvtally/cmd/internal/draw"
	"pvtally/rules"
	"pvtally/schema"
)

// boxed is a place on the page with the values that are read there: a size line holds three.
type boxed struct {
	box      schema.Box
	pointers []string
	title    string
	mark     *mark // the gravest of its values', nil where nothing is wrong
}

// boxes gathers the values of a page by their place, in reading order.
func (v *htmlSheet) boxes(s *Sheet, pointers []string) []*boxed {
	at := map[schema.Box]*boxed{}
	slices.Sort(pointers)
	for _, pointer := range pointers {
		e := s.Record.Evidence[pointer]
		b := at[e.Box]
		if b == nil {
			b = &boxed{box: e.Box}
			at[e.Box] = b
		}
		b.pointers = append(b.pointers, pointer)
		if m := v.marks[pointer]; m != nil && (b.mark == nil || heavier(m, b.mark)) {
			b.mark = m
		}
	}
	list := slices.SortedFunc(maps.Values(at), func(a, b *boxed) int {
		return cmp.Or(cmp.Compare(a.box[1], b.box[1]), cmp.Compare(a.box[0], b.box[0]))
	})
	for _, b := range list {
		b.title = v.title(s, b.pointers)
	}
	return list
}

// heavier tells whether a mark asks for attention before another.
func heavier(a, b *mark) bool {
	if a.judged != b.judged {
		return a.judged
	}
	return a.level > b.level
}

// title says what was read at a place: "Imp at STC, KR-540: 13.50".
func (v *htmlSheet) title(s *Sheet, pointers []string) string {
	var parts []string
	for _, pointer := range pointers {
		parts = append(parts, spoken(s.Record, pointer)+": "+printed(s.Record, pointer))
		if len(parts) == 4 && len(pointers) > 4 {
			parts = append(parts, fmt.Sprintf("and %d more", len(pointers)-4))
			break
		}
	}
	return Plain(strings.Join(parts, "; "))
}

// frame draws the place as a rectangle that stands a little off the letters.
func (b *boxed) frame(d *draw.SVG, class string, off float64) {
	d.Open("g")
	d.Text("title", b.title)
	d.Empty("rect", "class", class, "x", b.box[0]-off, "y", b.box[1]-off, "width", b.box[2]-b.box[0]+2*off, "height", b.box[3]-b.box[1]+2*off, "rx", 1.5)
	d.Close("g")
}

// flag frames a place that a finding speaks of, and leads to the finding.
func (v *htmlSheet) flag(d *draw.SVG, s *Sheet, id string, b *boxed) {
	for _, pointer := range b.pointers {
		v.places[pointer] = id
	}
	m := b.mark
	to := ""
	switch {
	case m.suspect > 0:
		to = fmt.Sprintf("#%s-suspect-%d", v.ID, m.suspect)
	case len(m.findings) > 0:
		to = fmt.Sprintf("#%s-finding-%d", v.ID, v.number[m.findings[0]])
	}
	class, sign := "part", ""
	switch {
	case m.suspect > 0 && m.guess:
		class, sign = "asked", fmt.Sprint(m.suspect)
	case m.suspect > 0:
		class, sign = "wrong", fmt.Sprint(m.suspect)
	case m.judged && m.level == rules.Error:
		class = "wrong"
	case m.judged && m.level == rules.Warning:
		class = "asked"
	case m.judged:
		class = "noted"
	}
	name := b.title
	if sign != "" {
		name = "suspect " + sign + ": " + name
	}
	d.Open("a", "href", to, "id", id, "class", "flag", "aria-label", name)
	b.frame(d, class, 2)
	if sign != "" {
		x, y := b.box[0]-5, b.box[1]-4
		d.Empty("circle", "class", "badge "+class, "cx", x, "cy", y, "r", 6)
		d.Text("text", sign, "class", "badge", "x", x, "y", y+2.8, "text-anchor", "middle", "font-size", 8)
	}
	d.Close("a")
}
