package diagnose

import "slices"

// several proposes the mistakes that strike more than one cell, or that only one kind of cell has.
func (b *board) several(propose func(correction)) {
	tables := b.byRow
	b.swaps(tables, propose)
	b.rowMistakes(tables, propose)
	b.coefficients(propose)
	b.sizes(propose)
	b.cellEfficiency(&tables[0], propose)
	b.cellCount(propose)
}

// exchange swaps the numbers of two rows, cell by cell; false where nothing changes.
func (b *board) exchange(over, under []int) (edits []edit, ok bool) {
	if slices.Contains(over, none) || slices.Contains(under, none) {
		return nil, false
	}
	edits = make([]edit, 0, 2*len(over))
	for i := range over {
		x, y := over[i], under[i]
		if b.cells[x].n != b.cells[y].n {
			edits = append(edits, edit{x, b.cells[y].n})
		}
	}
	first := len(edits)
	for i := range over {
		if x, y := over[i], under[i]; b.cells[x].n != b.cells[y].n {
			edits = append(edits, edit{y, b.cells[x].n})
		}
	}
	return edits, first > 0
}

// swaps proposes that two cells of a class, or of neighbouring classes in one row, have changed places.
func (b *board) swaps(tables []table, propose func(correction)) {
	pairs := 0
	for _, t := range tables {
		rows, classes := len(t.rows()), len(t.pmax)
		pairs += rows*(rows-1)/2*classes + rows*(classes-1)
	}
	// the likely pairs are the two voltages and the two currents of a class: one in six
	prior := chance(Swap, float64(pairs)/6)
	swap := func(x, y int) {
		if !b.suspicious(x) && !b.suspicious(y) {
			return
		}
		if edits, ok := b.exchange([]int{x}, []int{y}); ok {
			propose(correction{mistake: Swap, edits: edits, prior: prior})
		}
	}
	for _, t := range tables {
		rows := t.rows()
		for i := range t.pmax {
			for a := range rows {
				for z := a + 1; z < len(rows); z++ {
					swap(rows[a][i], rows[z][i])
				}
				if i > 0 {
					swap(rows[a][i-1], rows[a][i])
				}
			}
		}
	}
}

// suspicious reports a cell with a broken relation. The board must be priced.
func (b *board) suspicious(c int) bool { return len(b.of[c]) > 0 && b.cost[b.of[c][0]] > 1 }

func (b *board) anySuspicious(cells []int) bool {
	for _, c := range cells {
		if b.suspicious(c) {
			return true
		}
	}
	return false
}

// rowMistakes proposes rows that stand one column off, and rows that have changed places.
func (b *board) rowMistakes(tables []table, propose func(correction)) {
	ways := 0.0
	for _, t := range tables {
		for _, row := range t.rows() {
			if len(printed(row)) > 1 {
				ways++
			}
		}
	}
	for _, t := range tables {
		rows := t.rows()
		for a, row := range rows {
			if len(row) > 2 && len(printed(row)) == len(row) && b.anySuspicious(row) {
				for _, by := range []int{1, len(row) - 1} {
					if edits := b.turned(row, by); len(edits) > 1 {
						propose(correction{mistake: SlippedRow, edits: edits, prior: chance(SlippedRow, 2*ways)})
					}
				}
			}
			for z := a + 1; z < len(rows) && len(row) > 1; z++ {
				if !b.anySuspicious(row) && !b.anySuspicious(rows[z]) {
					continue
				}
				if edits, ok := b.exchange(row, rows[z]); ok && len(edits) > 2 {
					propose(correction{mistake: RowsSwapped, edits: edits, prior: chance(RowsSwapped, ways+3)})
				}
			}
		}
	}
}

// turned gives each class what stands by columns before it.
func (b *board) turned(row []int, by int) (edits []edit) {
	for i, c := range row {
		if from := row[(i+len(row)-by)%len(row)]; b.cells[from].n != b.cells[c].n {
			edits = append(edits, edit{c, b.cells[from].n})
		}
	}
	return edits
}

// coefficients proposes that two of the three coefficients have changed places.
func (b *board) coefficients(propose func(correction)) {
	for _, unit := range [][3]string{{"alpha_isc_pct_per_k", "beta_voc_pct_per_k", "gamma_pmax_pct_per_k"}, {"alpha_isc_a_per_k", "beta_voc_v_per_k", "gamma_pmax_w_per_k"}} {
		for _, p := range [][2]int{{1, 2}, {0, 1}, {0, 2}} {
			x, y := b.single("thermal", unit[p[0]]), b.single("thermal", unit[p[1]])
			if x == none || y == none || !b.suspicious(x) && !b.suspicious(y) {
				continue
			}
			if edits, ok := b.exchange([]int{x}, []int{y}); ok {
				propose(correction{mistake: RowsSwapped, edits: edits, prior: chance(RowsSwapped, 4)})
			}
		}
	}
}
