package page

import (
	"context"
	"fmt"
	"image/color"
	"strings"
	"testing"
)

// shaded is a page with a shade made of turned images, an image that stands on it and one beside it.
func shaded(parts int) []byte {
	var content strings.Builder
	image := func(w, h float64, x, y int) {
		fmt.Fprintf(&content, "q %g 0 0 %g %d %d cm /X1 Do Q\n", w, h, x, y)
	}
	for i := range parts {
		image(200, 100, 20+2*i, 150)
	}
	image(40, 20, 100, 180)
	image(60, 60, 20, 40)
	content.WriteString(text(20, 20, 10, "Isc 13.98 A"))
	return doc{
		extra: []string{stream("/Type /XObject /Subtype /Image /Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8", "\x00")},
		pages: []leaf{{content: content.String(), resources: fmt.Sprintf("/XObject << /X1 %d 0 R >>", firstExtra)}},
	}.bytes()
}

func TestShades(t *testing.T) {
	tests := []struct {
		name  string
		parts int
		want  int
	}{
		{"a few images over each other are not one", 5, 0},
		{"many are", 40, 40},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := readOne(t, shaded(tt.parts))
			if got := len(p.shadeBoxes()); got != tt.want || len(p.Images) != tt.parts+2 {
				t.Errorf("%d of %d images are a shade, want %d of %d", got, len(p.Images), tt.want, tt.parts+2)
			}
		})
	}
}

// A shade is not drawn where it is left out, and all else is.
func TestShadeLeftOut(t *testing.T) {
	data := shaded(40)
	p := readOne(t, data)
	for name, c := range map[string]struct {
		bare  []Box
		shade color.Gray
	}{
		"drawn":    {nil, color.Gray{0}},
		"left out": {p.shadeBoxes(), color.Gray{0xFF}},
	} {
		t.Run(name, func(t *testing.T) {
			a, err := renderPDF(context.Background(), job{Task: taskRender, Name: "a.pdf", Number: 1, DPI: 72, Bare: c.bare}, data)
			if err != nil {
				t.Fatal(err)
			}
			at := func(x, y int) color.Gray { return color.Gray{a.Raw[4*(y*a.Parts[0].W+x)]} }
			for what, p := range map[string][3]int{"the shade": {30, 60, int(c.shade.Y)}, "the image on it": {120, 110, 0}, "the image beside": {40, 230, 0}, "the paper": {10, 10, 0xFF}} {
				if got := at(p[0], p[1]); int(got.Y) != p[2] {
					t.Errorf("%s is %d, want %d", what, got.Y, p[2])
				}
			}
		})
	}
}
