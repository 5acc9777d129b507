package schema

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
)

// Box is left, top, right, bottom in points, origin at the top left of the page as shown; written with one decimal.
type Box [4]float64

// IsZero reports that no place is known.
func (b Box) IsZero() bool { return b == Box{} }

// maxLength bounds a coordinate, in points: 350 m of paper.
const maxLength = 1_000_000

// tenth rounds to the one decimal that a record keeps (never to minus zero): a tenth of a point is finer than any eye.
func tenth(v float64) float64 { return math.Round(v*10)/10 + 0 }

// MarshalJSON writes one decimal.
func (b Box) MarshalJSON() ([]byte, error) { return b.append(nil, "") }

// append adds the box to dst, with a gap after each comma.
func (b Box) append(dst []byte, gap string) ([]byte, error) {
	for i, v := range b {
		if !(math.Abs(v) <= maxLength) {
			return dst, fmt.Errorf("box %v does not lie on a page", [4]float64(b))
		}
		dst = append(dst, "[,,,"[i])
		if i > 0 {
			dst = append(dst, gap...)
		}
		dst = strconv.AppendFloat(dst, tenth(v), 'f', 1, 64)
	}
	return append(dst, ']'), nil
}

// Notes are the keys that begin with "_": a person's notes, kept where they stand, never judged.
type Notes map[string]json.RawMessage
