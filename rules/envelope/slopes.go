package envelope

import (
	_ "embed"
	"encoding/csv"
	"strings"
)

//go:embed slopes.csv
var slopesCSV string

// Slope is how a value grows with the power class within one product line, as the exponent d ln y / d ln Pmax.
type Slope struct {
	Field                      string
	Q01, Q05, Median, Q95, Q99 float64
	Families                   int
}

var slopeTable = must(parseSlopes(slopesCSV))

// SlopeOf is a field's slope (vmp_v, imp_a, voc_v, isc_a); ok is false for another field.
func SlopeOf(field string) (s Slope, ok bool) {
	for _, s := range slopeTable {
		if s.Field == field {
			return s, true
		}
	}
	return Slope{}, false
}

func parseSlopes(text string) ([]Slope, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	var out []Slope
	for _, row := range rows[1:] {
		n, err := floats(row[1:])
		if err != nil {
			return nil, err
		}
		out = append(out, Slope{row[0], n[0], n[1], n[2], n[3], n[4], int(n[5])})
	}
	return out, nil
}
