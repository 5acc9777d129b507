package rules

import (
	"fmt"
	"math"
	"slices"
)

var classesSlippedRow = &Rule{
	ID:    "classes/slipped-row",
	Title: "no row of the table is shifted by one column",
	Why: "When a row slips by one column, every value but one belongs to a neighbouring class, and the value pushed off the end comes back at the other: " +
		"the row rises evenly and falls once, by its whole width, at its end.",
	Formula: "y(2) … y(n), y(1) or y(n), y(1) … y(n-1) on an even line",
	Sources: []Source{{"How tables of several classes go wrong", "common practice"}},
	Levels:  []Threshold{{Error, "a row is a rising one turned by one column"}},
	Needs:   []string{"models[].stc of three classes or more"},
	Caution: voltageCaution,
	Check: func(p *Pass) {
		n := len(p.rank)
		if n < 3 {
			return
		}
		for _, q := range rowFields {
			row := make([]*Value, 0, n)
			for _, i := range p.rank {
				if v := q.of(&p.stc[i]); v.Printed() {
					row = append(row, v)
				}
			}
			if len(row) != n || row[0].V == row[n-1].V {
				continue
			}
			if left := turned(row, 1); left || turned(row, n-1) {
				way := "left"
				if !left {
					way = "right"
				}
				p.Report(Error, Finding{Message: fmt.Sprintf("the row of %s (%s) seems shifted by one column to the %s", row[0].Symbol(), list(row), way)}, row...)
			}
		}
	},
}

// turned reports that the row rises strictly once it is turned back, and that the value at the turn lies where an even step would put it.
func turned(row []*Value, by int) bool {
	n := len(row)
	back := slices.Concat(row[n-by:], row[:n-by])
	for i := 1; i < n; i++ {
		if back[i].V < back[i-1].V {
			return false
		}
	}
	first, last := back[0].V, back[n-1].V
	step, lone := (last-back[1].V)/float64(n-2), back[1].V-first
	if by != 1 {
		step, lone = (back[n-2].V-first)/float64(n-2), last-back[n-2].V
	}
	unit := 2 * row[0].Half()
	return step > 0 && last-first > 1.5*unit && math.Abs(lone-step) <= 3*unit+0.4*step
}
