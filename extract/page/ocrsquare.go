package page

import (
	"slices"
)

// squares mends the "²" of "4 mm², black": the comma slips under the raised figure, and the two are read in either order or as one sign.
func (l *lettering) squares(glyphs []glyph) []glyph {
	for i := 2; i < len(glyphs); i++ {
		if glyphs[i].spaced || glyphs[i-1].spaced || glyphs[i-1].r != 'm' || glyphs[i-2].r != 'm' {
			continue
		}
		end := i + 1
		for end < len(glyphs) && !glyphs[end].spaced {
			end++
		}
		high, low, known := -1, -1, true
		for k := i; k < end; k++ {
			switch s := glyphs[k].shape; {
			case glyphs[k].column == nil: // two signs read for one, or one for two
			case s == shapeHigh && high < 0 && float64(glyphs[k].box.Dy()) > dotMost*float64(l.tall):
				high = k
			case onBase(s) && low < 0:
				low = k
			default:
				known = false
			}
		}
		if !known || high < 0 || end-i > 4 {
			continue
		}
		mended := []glyph{{r: '²', box: glyphs[high].box, shape: shapeHigh, column: glyphs[high].column, sure: sureMended}}
		if low >= 0 {
			comma := glyphs[low]
			comma.r, comma.spaced, comma.dubious, comma.sure = ',', false, false, sureMended
			mended = append(mended, comma)
		}
		glyphs = slices.Replace(glyphs, i, end, mended...)
	}
	return glyphs
}
