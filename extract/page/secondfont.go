package page

import (
	"strings"

	"github.com/ledongthuc/pdf"
)

// secondFont decodes and measures the codes of one font for the second reading.
type secondFont struct {
	enc       pdf.TextEncoding
	composite bool               // two bytes a code
	widths    map[string]float64 // of codes, in font sizes
	usual     float64
	texts     map[string]string // decoded codes
}

// usualWidth stands for widths that a font leaves to the reader: the digits of the standard fonts are 0.556 wide.
const usualWidth = 0.55

// newSecondFont prepares a font from its dictionary.
func newSecondFont(v pdf.Value) *secondFont {
	font := pdf.Font{V: v}
	f := &secondFont{enc: font.Encoder(), widths: map[string]float64{}, usual: usualWidth, texts: map[string]string{}}
	if v.Key("Subtype").Name() == "Type0" {
		f.composite = true
		f.readComposite(v.Key("DescendantFonts").Index(0))
	} else {
		f.readSimple(v)
		f.readDifferences(v.Key("Encoding").Key("Differences"))
	}
	return f
}

// readSimple takes the widths of a font with one byte a code; those of Type 3 are in its own units.
func (f *secondFont) readSimple(v pdf.Value) {
	unit := 0.001
	if m := v.Key("FontMatrix"); m.Len() == 6 {
		unit = m.Index(0).Float64()
	}
	first, widths := v.Key("FirstChar").Int64(), v.Key("Widths")
	for i := range min(widths.Len(), 256) {
		if code := first + int64(i); code >= 0 && code < 256 {
			f.widths[string([]byte{byte(code)})] = widths.Index(i).Float64() * unit
		}
	}
}

// digitNames are the glyph names that literals are made of; variants have a suffix ("one.LP" for lining digits), which the library
// does not know.
var digitNames = map[string]string{
	"zero": "0", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9",
	"period": ".", "comma": ",", "slash": "/", "hyphen": "-", "plus": "+", "percent": "%", "degree": "°", "space": " ",
}

// readDifferences notes the codes of an encoding's list "code /name /name … code /name" that are variants of digits.
func (f *secondFont) readDifferences(list pdf.Value) {
	code := int64(0)
	for i := range min(list.Len(), 1024) {
		switch v := list.Index(i); v.Kind() {
		case pdf.Integer:
			code = v.Int64()
		case pdf.Name:
			base, _, _ := strings.Cut(v.Name(), ".")
			if text, ok := digitNames[base]; ok && code >= 0 && code < 256 {
				f.texts[string([]byte{byte(code)})] = text
			}
			code++
		}
	}
}

// maxWidths bounds a composite font's list of widths.
const maxWidths = 1 << 16

// readComposite takes the W array: "c [w1 w2 …]" or "first last w" (ISO 32000-1, 9.7.4.3).
func (f *secondFont) readComposite(v pdf.Value) {
	f.usual = 1
	if dw := v.Key("DW"); dw.Kind() != pdf.Null {
		f.usual = dw.Float64() / 1000
	}
	set := func(code int64, w float64) {
		if code >= 0 && code < maxWidths {
			f.widths[string([]byte{byte(code >> 8), byte(code)})] = w / 1000
		}
	}
	w := v.Key("W")
	n := min(w.Len(), maxWidths)
	for i := 0; i+1 < n; {
		first := w.Index(i).Int64()
		if list := w.Index(i + 1); list.Kind() == pdf.Array {
			for k := range min(list.Len(), maxWidths) {
				set(first+int64(k), list.Index(k).Float64())
			}
			i += 2
			continue
		}
		if i+2 >= n {
			return
		}
		for code := first; code <= min(w.Index(i+1).Int64(), maxWidths); code++ {
			set(code, w.Index(i+2).Float64())
		}
		i += 3
	}
}

// codes splits a shown string.
func (f *secondFont) codes(raw string) []string {
	step := 1
	if f.composite {
		step = 2
	}
	codes := make([]string, 0, len(raw)/step)
	for ; len(raw) >= step; raw = raw[step:] {
		codes = append(codes, raw[:step])
	}
	return codes
}

func (f *secondFont) width(code string) float64 {
	if w, ok := f.widths[code]; ok {
		return w
	}
	return f.usual
}

func (f *secondFont) decode(code string) string {
	text, ok := f.texts[code]
	if !ok {
		text = f.enc.Decode(code)
		f.texts[code] = text
	}
	return text
}
