package rules

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

var bodyCellCount = &Rule{
	ID:      "body/cell-count",
	Title:   "the count of cells suits its arrangement, its cut and its bypass diodes",
	Why:     "The arrangement multiplies to the count; half cells come in pairs; each bypass diode spans the same number of series cells.",
	Formula: "rows × columns = count; count even for half cells; series cells divisible by the bypass diodes",
	Sources: []Source{{"Arithmetic of the layout", "read"}, {"Three strings, a diode each", "common practice"}},
	Levels:  []Threshold{{Note, "the diodes do not divide the series cells"}, {Warning, "an odd count of half cells"}, {Error, "the arrangement does not multiply to the count, nor to half of it"}},
	Needs:   []string{"cell.count", "cell.arrangement or cell.cut or body.bypass_diodes"},
	Check: func(p *Pass) {
		if !p.count.Printed() || p.count.V <= 0 {
			return
		}
		if product, ok := multiplied(p.Sheet.Cell.Arrangement); ok && product != p.count.V {
			half := p.Sheet.Cell.Cut == "half" && (2*product == p.count.V || product == 2*p.count.V)
			if !half {
				p.Report(Error, Finding{Message: fmt.Sprintf("arrangement %s is %s cells, printed count %s", p.Sheet.Cell.Arrangement, around(product), p.count.text), Implied: []string{around(product)}}, &p.count)
				return
			}
		}
		if p.Sheet.Cell.Cut == "half" && math.Mod(p.count.V, 2) != 0 {
			p.Report(Warning, Finding{Message: fmt.Sprintf("%s half cells are an odd number", p.count.text)}, &p.count)
			return
		}
		diodes := p.value(p.Sheet.Body.BypassDiodes, "body", "bypass_diodes", -1, -1)
		if n := diodes.V; n > 0 && p.series > 0 && math.Mod(p.series, n) != 0 && math.Mod(p.count.V, n) != 0 && n < p.series {
			p.Report(Note, Finding{Message: fmt.Sprintf("%s bypass diodes do not divide %s series cells", diodes.text, around(p.series))}, &diodes, &p.count)
		}
	},
}

// multiplied is the product of an arrangement like "6x18" or "6×9+6×9"; ok is false where it is not such a text.
func multiplied(arrangement string) (total float64, ok bool) {
	if arrangement == "" {
		return 0, false
	}
	text := strings.NewReplacer("×", "x", "X", "x", "*", "x", " ", "", "(", "", ")", "").Replace(arrangement)
	for _, part := range strings.Split(text, "+") {
		product := 1.0
		factors := strings.Split(part, "x")
		if len(factors) < 2 {
			return 0, false
		}
		for _, f := range factors {
			v, err := strconv.ParseFloat(f, 64)
			if err != nil || v < 1 || v != math.Trunc(v) {
				return 0, false
			}
			product *= v
		}
		total += product
	}
	return total, true
}
