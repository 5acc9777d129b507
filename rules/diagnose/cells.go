package diagnose

import (
	"math"
	"strconv"
	"strings"

	"pvtally/schema"
)

// cell is one printed number of the sheet.
type cell struct {
	at       string // JSON Pointer
	group    string // "stc", "thermal", "rear_gain"; "" for a class's own numbers
	name     string // "voc_v"
	model    int    // class, -1 for the sheet's
	row      int    // entry of a list, -1 for none
	n        schema.Number
	half     float64
	doubtful bool // read once, or off a picture: the page may say something else
}

// none is the cell that is not printed: its value is not a number, so every relation with it is silent.
const none = 0

// place finds a cell by where it stands.
type place struct {
	group, name string
	model, row  int
}

// board is the sheet as numbers: cells, what stands in them now, and the relations between them.
type board struct {
	sheet *schema.Sheet
	cells []cell
	index map[place]int
	now   []schema.Number // what stands in each cell, zero where it is left out
	x     []float64       // its value, not a number where it is left out
	ln    []float64       // natural logarithm of the value's size
	half  []float64       // its half step
	fixed []bool          // it has been corrected and is not questioned again
	rels  []relation
	says  []string  // of each relation, when it holds
	of    [][]int   // the relations of each cell
	cost  []float64 // of each relation, when the board was priced
	watts []float64 // the power in each class's name, 0 where it has none
	byRow []table   // the electrical tables, STC first
	seen  []int     // the round in which each relation was last looked at
	round int
	tries int // corrections tried so far
}

// Limits of what is looked at: no real sheet comes near, and a hostile one must not hold the program.
const (
	maxCells   = 3000
	usualCells = 200
	maxClasses = 40
)

// newBoard lists the printed numbers; nil where there are more than any datasheet has.
func newBoard(sheet *schema.Sheet) *board {
	b := &board{sheet: sheet, index: make(map[place]int, usualCells), cells: make([]cell, 0, usualCells), now: make([]schema.Number, 0, usualCells)}
	b.add(cell{model: -1, row: -1, half: 0}, math.NaN())
	if len(sheet.Models) > maxClasses {
		return nil
	}
	sheet.Walk(func(at string, n schema.Number) {
		if len(b.cells) <= maxCells {
			c := cellAt(at)
			c.n, c.half = n, sheet.HalfStep(at)
			if e, ok := sheet.Evidence[at]; ok {
				c.doubtful = e.By == "picture" || e.By == "text" && e.Readings < 2
			}
			b.index[place{c.group, c.name, c.model, c.row}] = len(b.cells)
			b.add(c, n.Float())
		}
	})
	if len(b.cells) > maxCells {
		return nil
	}
	b.finest()
	b.of = make([][]int, len(b.cells))
	b.watts = namedWatts(sheet)
	b.relateAll()
	return b
}

// finest gives a number with fewer decimals than its row the row's rounding: it has dropped zeros, or lost a digit.
func (b *board) finest() {
	for c := range b.cells {
		if k := &b.cells[c]; k.model >= 0 && k.n.Decimals() < b.decimals(c) && k.half == k.n.HalfStep() {
			k.half = 0.5 * math.Pow10(-b.decimals(c))
			b.half[c] = k.half
		}
	}
}

func (b *board) add(c cell, v float64) {
	b.cells, b.now, b.fixed = append(b.cells, c), append(b.now, c.n), append(b.fixed, false)
	b.x, b.ln, b.half = append(b.x, v), append(b.ln, math.Log(math.Abs(v))), append(b.half, c.half)
}

// cellAt takes a pointer apart: /group/name, /group/name/row, /models/i/name, /models/i/group/name, /models/i/group/row/name.
func cellAt(at string) cell {
	c := cell{at: at, model: -1, row: -1}
	parts := strings.Split(at[1:], "/")
	if parts[0] == "models" && len(parts) > 2 {
		c.model, _ = strconv.Atoi(parts[1])
		parts = parts[2:]
	}
	last := len(parts) - 1
	if v, err := strconv.Atoi(parts[last]); err == nil && last > 0 {
		c.row = v
		last--
	}
	c.name = parts[last]
	if last > 0 {
		if v, err := strconv.Atoi(parts[last-1]); err == nil && last > 1 {
			c.row = v
			last--
		}
		c.group = strings.Join(parts[:last], "/")
	}
	return c
}

// find is the cell at a place, none where it is not printed.
func (b *board) find(model int, group string, row int, name string) int {
	return b.index[place{group, name, model, row}]
}

// at is the cell of a JSON Pointer, none where no number is printed there.
func (b *board) at(pointer string) int {
	if pointer == "" {
		return none
	}
	k := cellAt(pointer)
	if c := b.find(k.model, k.group, k.row, k.name); b.cells[c].at == pointer {
		return c
	}
	return none
}

// single is a cell of the sheet itself.
func (b *board) single(group, name string) int { return b.find(-1, group, -1, name) }

// row lists a quantity's cells over the classes, none where a class lacks it.
func (b *board) row(group string, entry int, name string) []int {
	row := make([]int, len(b.sheet.Models))
	for i := range row {
		row[i] = b.find(i, group, entry, name)
	}
	return row
}

// printed keeps the cells that are there.
func printed(cells []int) []int {
	var out []int
	for _, c := range cells {
		if c != none {
			out = append(out, c)
		}
	}
	return out
}

// siblings are the cells of the same quantity in all classes, the cell itself among them.
func (b *board) siblings(c int) []int {
	if k := &b.cells[c]; k.model >= 0 {
		return b.row(k.group, k.row, k.name)
	}
	return []int{c}
}

// decimals is how many decimals a cell's row is printed with: what most of the others have.
func (b *board) decimals(c int) int {
	k := &b.cells[c]
	own := k.n.Decimals()
	if k.model < 0 {
		return own
	}
	var votes [maxDecimals + 1]int
	for i := range b.sheet.Models {
		if s := b.find(i, k.group, k.row, k.name); s != none && s != c {
			votes[min(b.cells[s].n.Decimals(), maxDecimals)]++
		}
	}
	best := min(own, maxDecimals)
	for d, n := range votes {
		if n > 0 && n >= votes[best] {
			best = d
		}
	}
	return best
}

// maxDecimals is more than any sheet prints.
const maxDecimals = 8
