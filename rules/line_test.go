package rules

import (
	"math"
	"testing"

	"pvtally/rules/envelope"
)

// TestBends: an end that lies off the line is excused where the other classes show the bend, and only there.
func TestBends(t *testing.T) {
	powers := []float64{405, 410, 415, 420, 425, 430}
	for _, c := range []struct {
		name  string
		row   []float64
		k     int
		bends bool
	}{
		{"flattens to the top, the lowest in question", []float64{30.74, 31.09, 31.36, 31.54, 31.65, 31.67}, 0, true},
		{"a straight row, its lowest misprinted", []float64{31.14, 31.45, 31.60, 31.75, 31.90, 32.05}, 0, false},
		{"a bent row, its lowest off the curve too", []float64{30.24, 31.09, 31.36, 31.54, 31.65, 31.67}, 0, false},
		{"a bent row, one in the middle misprinted", []float64{30.74, 31.09, 31.56, 31.54, 31.65, 31.67}, 2, false},
		{"four classes show no bend", []float64{30.74, 31.09, 31.36, 31.54}, 0, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := line{slope: envelope.Slope{Q05: 0.3, Median: 0.5, Q95: 0.7}}
			for i, v := range c.row {
				l.x, l.y, l.unit = append(l.x, math.Log(powers[i])), append(l.y, math.Log(v)), append(l.unit, 0.01/v)
			}
			if got := l.bends(c.k, 1.5, 2); got != c.bends {
				t.Errorf("bends: %v", got)
			}
		})
	}
}
