package diagnose

import "math"

// Mistake is a way in which sheets go wrong; the zero Mistake is none.
type Mistake string

// The ways, as the findings' document calls them.
const (
	Swap           Mistake = "swap"            // two cells have changed places
	Transposed     Mistake = "transposed"      // two neighbouring digits of a number have
	OneDigit       Mistake = "one-digit"       // one digit is another
	DecimalPoint   Mistake = "decimal-point"   // it stands one or two places off
	SlippedRow     Mistake = "slipped-row"     // a row of the table stands one column off
	Neighbour      Mistake = "neighbour"       // the next class's value, or another table's
	Sign           Mistake = "sign"            // a minus lost or gained
	RowsSwapped    Mistake = "rows-swapped"    // two rows have changed places, or their labels
	Unit           Mistake = "unit"            // the number is right in another unit
	OtherFormat    Mistake = "other-format"    // a size of the format with more or fewer rows of cells
	CellEfficiency Mistake = "cell-efficiency" // the cell's efficiency in the module's place
	CellCount      Mistake = "cell-count"      // half cells counted as series cells, or another format's count
	Reading        Mistake = "reading"         // printed right, perhaps, and read wrong
	Unknown        Mistake = "unknown"         // no known slip leads from what is meant to what is printed
)

// shares is how common each kind is among mistakes. Nobody has published a count; so the kinds are nearly alike, the commonest slips of a
// table a little before the others (common practice, no source). They decide only where the numbers do not.
var shares = map[Mistake]float64{
	Swap: 0.10, Transposed: 0.08, OneDigit: 0.10, DecimalPoint: 0.06, SlippedRow: 0.06, Neighbour: 0.10, Sign: 0.08, RowsSwapped: 0.08,
	Unit: 0.10, OtherFormat: 0.06, CellEfficiency: 0.06, CellCount: 0.06, Unknown: 0.06,
}

// mistaken is how often a sheet with a warning has a mistake rather than a habit of its maker.
const mistaken = 0.5

// chance is the logarithm of a mistake's probability: of its kind, spread over the ways in which that kind can strike the sheet.
func chance(m Mistake, ways float64) float64 {
	return math.Log(mistaken * shares[m] / math.Max(ways, 1))
}
