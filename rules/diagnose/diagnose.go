// Package diagnose answers what matters to the buyer: which printed number is wrong. Relations between the printed numbers that fail
// implicate the values they use, relations that hold within rounding exonerate them (consistency-based diagnosis: Reiter, Artificial Intelligence 32
// (1987) 57; de Kleer, Williams, Artificial Intelligence 32 (1987) 97); on top stands a model of how sheets go wrong. Each kind of mistake is
// tried on each implicated value and weighed by how completely everything tallies once it is undone, and by how common the kind is.
// The record is never corrected. The package must not import extract or cmd.
package diagnose

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"sync"

	"pvtally/rules"
	"pvtally/schema"
)

// Suspect is a printed value that is wrong, perhaps with others that went wrong with it.
type Suspect struct {
	// Field is the JSON Pointer of the first of Cells.
	Field string
	// Confidence is how often such a suspect is right, 0 to 1 (CALIBRATION.md).
	Confidence float64
	// Share is the model's own probability before it was held against the yardstick; 0 where nothing known explains the finding.
	Share   float64
	Mistake Mistake
	Cells   []Cell
	// Findings are the indices of the findings that go away with the mistake undone.
	Findings []int
	// Because says in a few words why.
	Because string
}

// Cell is one wrong value. WouldBe is zero where nothing says what it would be.
type Cell struct {
	Field            string
	Printed, WouldBe schema.Number
}

// Suspects ranks the printed values that explain the findings, the likeliest first. The findings are those of the rules on this sheet, less what
// a policy accepts; the options are those they were found with. A sheet without a warning or an error has no suspects and costs nothing.
func Suspects(sheet *schema.Sheet, findings []rules.Finding, opt rules.Options) []Suspect {
	if len(grave(findings)) == 0 {
		return nil
	}
	checker := usualChecker()
	if opt.Settings != nil || opt.Off != nil || opt.Levels != nil {
		var err error
		if checker, err = rules.NewChecker(opt); err != nil {
			return nil
		}
	}
	b := newBoard(sheet)
	if b == nil {
		return nil
	}
	d := &doctor{board: b, checker: checker, scratch: sheet.Clone(), before: findings, opt: opt}
	d.explain()
	return d.suspects()
}

// usualChecker is the book under its defaults.
var usualChecker = sync.OnceValue(func() *rules.Checker {
	c, err := rules.NewChecker(rules.Options{})
	if err != nil {
		panic(err) // the book's own defaults are refused: a mistake of the programmer
	}
	return c
})

// Of what is named, by its share of the probability: the first of each mistake where it convinces, and rivals that are not far behind.
const (
	convincing  = 0.10
	leastRival  = 0.05
	maxRivals   = 4
	maxSuspects = 10
)

// suspects makes the ranking of all mistakes together.
func (d *doctor) suspects() []Suspect {
	var out []Suspect
	for i := range d.chosen {
		x := &d.chosen[i]
		d.board.restore(x.edits)
		for k, g := range groups(&x.rivals) {
			if k == 0 && g.share < convincing || k > 0 && g.share < leastRival || k > maxRivals {
				break
			}
			if named(out, d.board.cells[g.edits[0].cell].at) {
				continue
			}
			if s := d.suspect(x, g); k == 0 || len(s.Findings) > 0 {
				out = append(out, s)
			}
		}
		d.board.apply(x.edits)
	}
	if s, ok := d.unexplained(out); ok {
		out = append(out, s)
	}
	slices.SortStableFunc(out, func(a, b Suspect) int {
		return cmp.Or(cmp.Compare(math.Round(20*b.Confidence), math.Round(20*a.Confidence)), cmp.Compare(d.gravest(b), d.gravest(a)), cmp.Compare(b.Share, a.Share))
	})
	return out[:min(len(out), maxSuspects)]
}

func named(list []Suspect, field string) bool {
	return slices.ContainsFunc(list, func(s Suspect) bool { return s.Field == field })
}

// unexplained is the judged value of the gravest finding that no suspect accounts for: one of its values is wrong, or the maker has a habit,
// and no known slip says which.
func (d *doctor) unexplained(out []Suspect) (s Suspect, ok bool) {
	explained := map[int]bool{}
	for _, s := range out {
		for _, i := range s.Findings {
			explained[i] = true
		}
	}
	best := -1
	for i, f := range d.before {
		if _, known := rules.Lookup(f.Rule); !known || explained[i] || f.Level < rules.Warning || len(f.Fields) == 0 || named(out, f.Fields[0]) {
			continue
		}
		if best < 0 || f.Level > d.before[best].Level {
			best = i
		}
	}
	if best < 0 {
		return s, false
	}
	f := &d.before[best]
	n, printed := d.scratch.At(f.Fields[0])
	if !printed {
		return s, false
	}
	return Suspect{Field: f.Fields[0], Confidence: unexplained[pointed(f)], Mistake: Unknown, Cells: []Cell{{Field: f.Fields[0], Printed: n}}, Findings: []int{best},
		Because: "no known slip in one place explains the finding: one of the values it names is wrong, or the maker has a habit of its own"}, true
}

// pointed reports a finding that judges one value by all the others of its row: its judged value is mostly the wrong one, where a range
// says only that something is.
func pointed(f *rules.Finding) bool { return strings.HasPrefix(f.Rule, "classes/") }

// gravest is the level of the gravest finding that a suspect explains.
func (d *doctor) gravest(s Suspect) (l rules.Level) {
	for _, i := range s.Findings {
		l = max(l, d.before[i].Level)
	}
	return l
}

// group is every explanation that begins at one cell: the likeliest of them, with the share of all.
type group struct {
	correction
	share float64
}

func groups(r *ranking) (out []group) {
	for _, c := range r.list {
		i := slices.IndexFunc(out, func(g group) bool { return g.edits[0].cell == c.edits[0].cell })
		if i < 0 {
			out = append(out, group{c, 0})
			i = len(out) - 1
		}
		out[i].share += c.share
	}
	slices.SortStableFunc(out, func(a, b group) int { return cmp.Compare(b.share, a.share) })
	return out
}

// suspect fills in what is known of one explanation.
func (d *doctor) suspect(x *explanation, g group) Suspect {
	s := Suspect{Field: d.board.cells[g.edits[0].cell].at, Mistake: g.mistake, Confidence: calibrated(g.share), Share: g.share}
	for _, e := range g.edits {
		c := &d.board.cells[e.cell]
		s.Cells = append(s.Cells, Cell{c.at, c.n, e.to})
	}
	found := x.after
	if len(d.chosen) > 1 || !slices.Equal(g.edits, x.edits) {
		found = d.check(d.instead(x, g.edits))
	}
	alone := sync.OnceValue(func() []rules.Finding { return d.check(g.edits) })
	for i := range d.before {
		if f := &d.before[i]; !has(found, f) && (len(d.chosen) == 1 || d.touches(&g.correction, f) || !has(alone(), f)) {
			s.Findings = append(s.Findings, i)
		}
	}
	s.Because = d.because(&g.correction, s.Findings)
	return s
}

// instead are all corrections, with another in the place of one.
func (d *doctor) instead(x *explanation, edits []edit) (all []edit) {
	all = append(all, edits...)
	for i := range d.chosen {
		for _, e := range d.chosen[i].edits {
			if &d.chosen[i] != x && !slices.ContainsFunc(all, func(o edit) bool { return o.cell == e.cell }) {
				all = append(all, e)
			}
		}
	}
	return all
}
