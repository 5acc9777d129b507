package diagnose

import (
	"math"

	"pvtally/rules"
)

// sized holds when the outer size is one that is known for the count of cells: half of all modules have such a size, the others any
// (counted on the open list, from memory).
type sized struct{ length, width, count int }

// Scatter of makers' sizes round the known ones, mm, and the density of all others, per mm2.
const (
	lengthScatter = 12
	widthScatter  = 8
	anySize       = 1. / (600 * 150)
)

// sized relates length, width and count.
func (b *board) sized() {
	s := &sized{b.single("body", "length_mm"), b.single("body", "width_mm"), b.single("cell", "count")}
	if s.length != none && s.width != none && s.count != none {
		b.relate("the size is one that is known for these cells", s)
	}
}

// knownSizes are the sizes known for the count and size of cells.
func (b *board) knownSizes() [][2]float64 {
	wafer := max(b.x[b.single("cell", "width_mm")], b.x[b.single("cell", "height_mm")])
	if math.IsNaN(wafer) {
		wafer = 0
	}
	voc := 0.0
	if of := printed(b.row("stc", -1, "voc_v")); len(of) > 0 {
		voc = b.x[of[len(of)/2]]
	}
	return rules.KnownSizes(rules.SeriesCells(b.sheet.Cell, b.x[b.single("cell", "count")], voc), wafer)
}

func (s *sized) cells() []int { return []int{s.length, s.width, s.count} }

func (s *sized) misfit(b *board) float64 {
	length, width := b.x[s.length], b.x[s.width]
	sizes := b.knownSizes()
	if math.IsNaN(length*width*b.x[s.count]) || len(sizes) == 0 {
		return 0
	}
	peak := 1 / (2 * math.Pi * lengthScatter * widthScatter * float64(len(sizes)))
	here := 0.0
	for _, k := range sizes {
		l, w := (length-k[0])/lengthScatter, (width-k[1])/widthScatter
		here = max(here, peak*math.Exp(-(l*l+w*w)/2))
	}
	return math.Log((peak + anySize) / (here + anySize))
}

func (s *sized) solve(*board, int) (float64, bool) { return 0, false }
