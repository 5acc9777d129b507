package yardstick

import (
	"cmp"
	"slices"
	"strings"

	"pvtally/rules"
	"pvtally/rules/diagnose"
)

// Named is one suspect and whether it was right.
type Named struct {
	Share, Confidence float64
	Right             bool
	Pointed           bool // where Share is 0: the finding judges one value by the others of its row
}

// Measure counts what a diagnosis comes to.
type Measure struct {
	Sheets int
	Named  []Named
	rows   []Row
	both   int
	one    int
}

// Row is what became of one kind of mistake in one band of sizes; the last three in per cent.
type Row struct {
	Kind, Band             string
	Sheets                 int
	Detected, First, Three float64
}

// Bin is suspects whose confidence lies in one tenth.
type Bin struct {
	N                 int
	Confidence, Right float64
}

// near is how many suspects a reader looks at.
const near = 3

// Add counts one sheet with its mistakes: what the rules found without them, with them, and the suspects.
func (m *Measure) Add(clean, found []rules.Finding, suspects []diagnose.Suspect, mistakes ...Faulty) {
	m.Sheets++
	right := func(s diagnose.Suspect) bool {
		return slices.ContainsFunc(mistakes, func(f Faulty) bool { return slices.Contains(f.Fields, s.Field) })
	}
	for _, s := range suspects {
		pointed := s.Share == 0 && strings.HasPrefix(found[s.Findings[0]].Rule, "classes/")
		m.Named = append(m.Named, Named{s.Share, s.Confidence, right(s), pointed})
	}
	hit := 0
	for _, f := range mistakes {
		first := len(suspects) > 0 && slices.Contains(f.Fields, suspects[0].Field)
		three := slices.ContainsFunc(suspects[:min(near, len(suspects))], func(s diagnose.Suspect) bool { return slices.Contains(f.Fields, s.Field) })
		if three {
			hit++
		}
		for _, kind := range []string{string(f.Kind), "all"} {
			m.count(kind, bandOf(f.Change), detected(clean, found), first, three)
		}
	}
	if hit > 0 {
		m.one++
	}
	if hit == len(mistakes) {
		m.both++
	}
}

// bands of sizes, the greatest first.
var bands = []string{"3 % and more", "1 to 3 %", "below 1 %"}

// bandOf sorts a change in per cent.
func bandOf(change float64) string {
	switch {
	case change >= 3:
		return bands[0]
	case change >= 1:
		return bands[1]
	}
	return bands[2]
}

// detected reports a warning or an error that the honest sheet does not have.
func detected(clean, found []rules.Finding) bool {
	return slices.ContainsFunc(found, func(f rules.Finding) bool {
		return f.Level >= rules.Warning && !slices.ContainsFunc(clean, func(c rules.Finding) bool { return c.Rule == f.Rule && c.Model == f.Model && c.Level == f.Level })
	})
}

func (m *Measure) count(kind, band string, detected, first, three bool) {
	i := slices.IndexFunc(m.rows, func(r Row) bool { return r.Kind == kind && r.Band == band })
	if i < 0 {
		i = len(m.rows)
		m.rows = append(m.rows, Row{Kind: kind, Band: band})
	}
	r := &m.rows[i]
	r.Sheets++
	if !detected {
		return
	}
	r.Detected++
	if first {
		r.First++
	}
	if three {
		r.Three++
	}
}

// Rows are the counts by kind and band, in per cent of the sheets, and of the detected.
func (m *Measure) Rows() []Row {
	out := slices.Clone(m.rows)
	for i := range out {
		r := &out[i]
		d := max(r.Detected, 1)
		r.First, r.Three, r.Detected = 100*r.First/d, 100*r.Three/d, 100*r.Detected/float64(r.Sheets)
	}
	slices.SortStableFunc(out, func(a, b Row) int {
		switch {
		case a.Kind == b.Kind:
			return cmp.Compare(slices.Index(bands, a.Band), slices.Index(bands, b.Band))
		case a.Kind == "all":
			return -1
		case b.Kind == "all":
			return 1
		}
		return cmp.Compare(a.Kind, b.Kind)
	})
	return out
}

// Bins are the suspects by tenths of confidence.
func (m *Measure) Bins() (bins [10]Bin) {
	for _, s := range m.Named {
		b := &bins[min(int(10*s.Confidence), 9)]
		b.N++
		b.Confidence += s.Confidence
		if s.Right {
			b.Right++
		}
	}
	for i := range bins {
		if b := &bins[i]; b.N > 0 {
			b.Confidence /= float64(b.N)
			b.Right /= float64(b.N)
		}
	}
	return bins
}

// Both is on how many sheets of a hundred all mistakes are among the first three suspects.
func (m *Measure) Both() float64 { return 100 * float64(m.both) / float64(max(m.Sheets, 1)) }

// One is on how many at least one is.
func (m *Measure) One() float64 { return 100 * float64(m.one) / float64(max(m.Sheets, 1)) }
