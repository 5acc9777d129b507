package envelope

import (
	_ "embed"
	"encoding/csv"
	"math"
	"strings"
)

//go:embed likeness.csv
var likenessCSV string

// Likeness tells how well a count of series cells suits a silicon module: efficiency, which no count moves, foretells Voc per cell, Isc per area and the
// distance of β from theory; a wrong count moves the three apart.
type Likeness struct {
	at, per [3]float64
	inverse [3][3]float64
}

var likenesses = must(parseLikeness(likenessCSV))

// LikenessOf is the technology's; nil for what is not silicon.
func LikenessOf(technology string) *Likeness {
	switch {
	case strings.HasPrefix(technology, "multi"):
		return likenesses["multi"]
	case strings.HasPrefix(technology, "mono"), technology == "topcon", technology == "hjt", technology == "ibc":
		return likenesses["mono"]
	}
	return nil
}

func parseLikeness(text string) (map[string]*Likeness, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := map[string]*Likeness{}
	for i, row := range rows[1:] {
		n, err := floats(row[2:7])
		if err != nil {
			return nil, err
		}
		if out[row[0]] == nil {
			out[row[0]] = new(Likeness)
		}
		l, j := out[row[0]], i%3
		l.at[j], l.per[j] = n[0], n[1]
		l.inverse[j] = [3]float64(n[2:5])
	}
	return out, nil
}

// Distance is the squared Mahalanobis distance of a module from the list's of its efficiency: efficiency in %, Voc per cell in V,
// Isc x cells / area in mA/cm2, and β per cell minus theory in mV/K (NaN where it is not known: then only the other two count).
func (l *Likeness) Distance(efficiency, vocCell, density, theory float64) float64 {
	x := math.Log(efficiency)
	r := [3]float64{math.Log(vocCell) - l.at[0] - l.per[0]*x, math.Log(density) - l.at[1] - l.per[1]*x, theory - l.at[2] - l.per[2]*x}
	if math.IsNaN(theory) {
		// what the other two make most likely: it then adds nothing
		r[2] = -(l.inverse[2][0]*r[0] + l.inverse[2][1]*r[1]) / l.inverse[2][2]
	}
	sum := 0.0
	for i := range r {
		for j := range r {
			sum += r[i] * l.inverse[i][j] * r[j]
		}
	}
	return sum
}
