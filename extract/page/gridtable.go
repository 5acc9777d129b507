package page

// placed is a cell with its place among a table's columns and rows.
type placed struct {
	cell
	col, row int
}

// table adds a table. Cells that span columns stand centred over them, those that span rows in their first.
func (g *grid) table(rows [][]cell) error {
	cells, columns, height, err := g.place(rows)
	if err != nil || len(cells) == 0 {
		return err
	}
	widths := columnWidths(cells, columns)
	left := make([]int, columns+1) // first character of each column
	for i, w := range widths {
		left[i+1] = left[i] + w + gridGap
	}
	lines := make([]int, height)
	for i := range lines {
		lines[i] = 1
	}
	for _, c := range cells {
		lines[c.row] = max(lines[c.row], len(c.lines)-c.rows+1)
	}
	top := make([]float64, height+1)
	top[0] = g.y
	for i, n := range lines {
		if err := g.room(n, 0); err != nil {
			return err
		}
		top[i+1] = top[i] + float64(n)*gridLine
	}
	for _, c := range cells {
		for i, runs := range c.lines {
			room := left[c.col+c.cols] - gridGap - left[c.col] - runsWidth(runs)
			at := left[c.col]
			if c.cols > 1 && room > 0 {
				at += room / 2
			}
			g.write(runs, at, top[c.row]+float64(i)*gridLine+(gridLine-gridSize)/2)
		}
		g.frame(c, left, top)
	}
	g.right = max(g.right, gridMargin+float64(left[columns])*gridChar)
	g.y = top[height] + gridLine/2
	return nil
}

// place finds each cell's column and row as HTML does: a cell goes to the first place that no earlier cell spans.
func (g *grid) place(rows [][]cell) (cells []placed, columns, height int, err error) {
	taken := map[[2]int]bool{}
	for r, row := range rows {
		col := 0
		for _, c := range row {
			for taken[[2]int{r, col}] {
				col++
			}
			c.cols, c.rows = clamp(c.cols), min(clamp(c.rows), len(rows)-r)
			if err := g.room(0, c.cols*c.rows); err != nil {
				return nil, 0, 0, err
			}
			for i := range c.rows {
				for k := range c.cols {
					taken[[2]int{r + i, col + k}] = true
				}
			}
			cells = append(cells, placed{c, col, r})
			col += c.cols
			columns = max(columns, col)
		}
	}
	return cells, columns, len(rows), nil
}

func clamp(span int) int { return min(max(span, 1), maxGridSpan) }

// columnWidths gives each column room for its own cells; cells that span several widen the last of theirs where need be.
func columnWidths(cells []placed, columns int) []int {
	widths := make([]int, columns)
	for _, c := range cells {
		for _, runs := range c.lines {
			if c.cols == 1 {
				widths[c.col] = max(widths[c.col], runsWidth(runs))
			}
		}
	}
	for _, c := range cells {
		if c.cols == 1 {
			continue
		}
		have := (c.cols - 1) * gridGap
		for _, w := range widths[c.col : c.col+c.cols] {
			have += w
		}
		for _, runs := range c.lines {
			if need := runsWidth(runs); need > have {
				widths[c.col+c.cols-1] += need - have
				have = need
			}
		}
	}
	return widths
}

// frame draws the lines above and left of a cell, and those that end the table.
func (g *grid) frame(c placed, left []int, top []float64) {
	x := func(col int) float64 { return gridMargin + (float64(left[col])-gridGap/2.0)*gridChar }
	x0, x1, y0, y1 := x(c.col), x(c.col+c.cols), top[c.row], top[c.row+c.rows]
	g.rules = append(g.rules, Rule{Box{x0, y0, x1, y0}, gridRule, 0}, Rule{Box{x0, y0, x0, y1}, gridRule, 0})
	if c.col+c.cols == len(left)-1 {
		g.rules = append(g.rules, Rule{Box{x1, y0, x1, y1}, gridRule, 0})
	}
	if c.row+c.rows == len(top)-1 {
		g.rules = append(g.rules, Rule{Box{x0, y1, x1, y1}, gridRule, 0})
	}
}
