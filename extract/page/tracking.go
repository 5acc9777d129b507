package page

import (
	"slices"
	"unicode"
)

const (
	trackingFrom  = 0.06 // font sizes; less is kerning
	trackingTight = 0.02
	trackingMin   = 4 // gaps it takes to tell letter-spacing
	trackingMax   = 0.6
)

// tracking is the usual distance of a line's letters in font sizes: 0 but for lines set wide or tight.
//
// Letters tell it best, since words have more letters than gaps. Where a line has few ("0 ~ +5 W") its narrower gaps do, for a wide
// setting: they are those inside the words.
func tracking(line []char) float64 {
	var all, letters []float64
	var a char
	for _, b := range line {
		if b.obj == 0 {
			continue // a space that PDFium made up may be the very distance that is measured
		}
		if a.obj != 0 && a.r != ' ' && b.r != ' ' && !b.slanted {
			if gap := (b.along() - a.end()) / max(a.size, b.size); gap < trackingMax {
				all = append(all, gap)
				if unicode.IsLetter(a.r) && unicode.IsLetter(b.r) {
					letters = append(letters, gap)
				}
			}
		}
		a = b
	}
	slices.Sort(all)
	slices.Sort(letters)
	wide := 0.0
	switch {
	case len(letters) >= trackingMin:
		wide = letters[len(letters)/2]
	case len(all) >= trackingMin:
		wide = all[(len(all)-1)/4]
	default:
		return 0
	}
	if wide > trackingFrom {
		return wide
	}
	if tight := all[len(all)/2]; tight < -trackingTight {
		return tight
	}
	return 0
}
