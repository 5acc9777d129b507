package rules

import (
	"fmt"
	"math"
	"strconv"
)

// Level is how grave a finding is: it follows the size of the gap that rounding cannot explain.
type Level uint8

const (
	// Note is worth a look; it could be a maker's habit.
	Note Level = iota + 1
	// Warning is a question to the maker.
	Warning
	// Error cannot be right as printed and must not enter a design.
	Error
)

var levelNames = [...]string{Note: "note", Warning: "warning", Error: "error"}

// String is "note", "warning" or "error"; "none" for the zero Level.
func (l Level) String() string {
	if l < Note || l > Error {
		return "none"
	}
	return levelNames[l]
}

// ParseLevel takes "note", "warning" or "error".
func ParseLevel(s string) (Level, error) {
	for l := Note; l <= Error; l++ {
		if levelNames[l] == s {
			return l, nil
		}
	}
	return 0, fmt.Errorf("%q is no level: note, warning or error", s)
}

// MarshalText writes the level's name.
func (l Level) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads the level's name.
func (l *Level) UnmarshalText(b []byte) (err error) {
	*l, err = ParseLevel(string(b))
	return err
}

// Percent is a share written with about two significant digits; zero means unknown and is left out.
type Percent float64

// MarshalJSON rounds to two significant digits, to whole numbers from 10 up.
func (p Percent) MarshalJSON() ([]byte, error) { return []byte(p.String()), nil }

// String is the rounded number without its sign of per cent.
func (p Percent) String() string {
	v := float64(p)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "0"
	}
	digits := 0
	if a := math.Abs(v); a > 0 && a < 9.95 {
		digits = min(6, 1-int(math.Floor(math.Log10(a))))
	}
	return strconv.FormatFloat(math.Round(v*math.Pow10(digits))/math.Pow10(digits), 'f', -1, 64)
}

// Finding is one relation that does not hold. Fields are JSON Pointers (RFC 6901) into the record, the judged value first.
// Numbers of the sheet stay literals; what is unknown is left out.
type Finding struct {
	Rule         string   `json:"rule"`
	Level        Level    `json:"level"`
	Model        string   `json:"model,omitempty"`
	Fields       []string `json:"fields,omitempty"`
	Message      string   `json:"message"`
	Printed      string   `json:"printed,omitempty"`
	Implied      []string `json:"implied,omitempty"`
	DeviationPct Percent  `json:"deviation_pct,omitzero"`
	RoundingPct  Percent  `json:"rounding_pct,omitzero"`
	Caution      string   `json:"caution,omitempty"`
}
