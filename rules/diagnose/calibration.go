package diagnose

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"
)

// The model's probabilities are held against the yardstick: curve.csv says how often explanations of each share were right. It is made, with
// the page of what it comes to on other seeds, by
//
//	go run ./rules/diagnose/calibrate

//go:embed curve.csv
var curveCSV string

// knot is a point of the curve from the model's share to the share of right ones.
type knot struct{ share, right float64 }

// curve rises from knot to knot; unexplained is how often the judged value of a finding is wrong that no known slip explains, by whether the
// finding is pointed.
var curve, unexplained = parseCurve(curveCSV)

func parseCurve(text string) (out []knot, none map[bool]float64) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil || len(rows) < 5 || rows[1][0] != "pointed" || rows[2][0] != "other" {
		panic("the curve of the calibration does not parse") // embedded data: a mistake of the build
	}
	number := func(text string) float64 {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			panic("the curve of the calibration holds no numbers")
		}
		return v
	}
	for _, row := range rows[3:] {
		out = append(out, knot{number(row[0]), number(row[1])})
	}
	return out, map[bool]float64{true: number(rows[1][1]), false: number(rows[2][1])}
}

// calibrated is how often an explanation with a share of the probability is right: the curve, straight between its knots.
func calibrated(share float64) float64 {
	for i := 1; i < len(curve); i++ {
		if a, b := curve[i-1], curve[i]; share <= b.share {
			return a.right + (b.right-a.right)*(share-a.share)/(b.share-a.share)
		}
	}
	return curve[len(curve)-1].right
}
