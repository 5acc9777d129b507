package schema

import (
	"encoding/json"
	"fmt"
	"math"
)

// Box is left, top, right, bottom in points, origin at the top left of the page as shown; written with one decimal.
type Box [4]float64

// IsZero reports that no place is known.
func (b Box) IsZero() bool { return b == Box{} }

// MarshalJSON writes one decimal: a tenth of a point is finer than any eye.
func (b Box) MarshalJSON() ([]byte, error) {
	for _, v := range b {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, fmt.Errorf("box %v is not finite", [4]float64(b))
		}
	}
	return fmt.Appendf(nil, "[%.1f,%.1f,%.1f,%.1f]", b[0], b[1], b[2], b[3]), nil
}

// Notes are the keys that begin with "_": a person's notes, kept where they stand, never judged.
type Notes map[string]json.RawMessage
