package draw

import (
	"math"
	"strconv"
)

// Axis is one side of a chart.
type Axis struct {
	Label  string
	Lo, Hi float64
	Ticks  int // about how many; 0 for five
}

// Around is an axis that holds every value with some room beside it.
func Around(label string, values ...float64) Axis {
	a := Axis{Label: label, Lo: math.Inf(1), Hi: math.Inf(-1)}
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			a.Lo, a.Hi = min(a.Lo, v), max(a.Hi, v)
		}
	}
	if a.Lo > a.Hi {
		a.Lo, a.Hi = 0, 1
	}
	room := 0.08 * (a.Hi - a.Lo)
	if room == 0 {
		room = max(0.01*math.Abs(a.Hi), 0.1)
	}
	a.Lo, a.Hi = a.Lo-room, a.Hi+room
	return a
}

// step is the distance of the ticks: 1, 2 or 5 times a power of ten.
func (a Axis) step() float64 {
	n := a.Ticks
	if n == 0 {
		n = 5
	}
	raw := (a.Hi - a.Lo) / float64(n)
	if !(raw > 0) {
		return 1
	}
	unit := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, m := range []float64{1, 2, 5} {
		if raw <= m*unit*1.0001 {
			return m * unit
		}
	}
	return 10 * unit
}

// ticks are the marks of the axis with their texts.
func (a Axis) ticks() (at []float64, text []string) {
	step := a.step()
	decimals := max(0, -int(math.Floor(math.Log10(step)+1e-9)))
	for i := math.Ceil(a.Lo/step - 1e-9); i*step <= a.Hi+1e-9*step && len(at) < 50; i++ {
		at = append(at, i*step)
		format, digits := byte('f'), decimals
		if max(math.Abs(a.Lo), math.Abs(a.Hi)) >= 1e6 || decimals > 6 {
			format, digits = 'g', 3
		}
		text = append(text, minus(strconv.FormatFloat(i*step+0, format, digits, 64)))
	}
	return at, text
}

// minus is the sign that is as wide as a digit.
func minus(text string) string {
	if len(text) > 0 && text[0] == '-' {
		return "−" + text[1:]
	}
	return text
}
