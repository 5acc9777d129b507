package compare

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"testing"
)

// linear is a colour "#rrggbb" as linear light, red, green, blue (IEC 61966-2-1).
func linear(t testing.TB, hex string) (c [3]float64) {
	t.Helper()
	for i := range c {
		v, err := strconv.ParseUint(hex[1+2*i:3+2*i], 16, 8)
		if err != nil {
			t.Fatalf("%q: %v", hex, err)
		}
		if s := float64(v) / 255; s <= 0.04045 {
			c[i] = s / 12.92
		} else {
			c[i] = math.Pow((s+0.055)/1.055, 2.4)
		}
	}
	return c
}

// contrast is WCAG 2.2's ratio of two colours.
func contrast(t testing.TB, a, b string) float64 {
	luminance := func(hex string) float64 {
		c := linear(t, hex)
		return 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2]
	}
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// TestContrast: WCAG 2.2 AA, 1.4.3 (text 4.5:1) and 1.4.11 (graphics 3:1).
func TestContrast(t *testing.T) {
	if got := contrast(t, "#ffffff", "#000000"); math.Abs(got-21) > 1e-9 {
		t.Fatalf("white on black is %v, WCAG says 21", got)
	}
	for _, h := range hues {
		if c := contrast(t, h, "#ffffff"); c < 4.5 {
			t.Errorf("white letters on %s: %.2f", h, c)
		}
		if c := contrast(t, h, roofPaint); c < 3 {
			t.Errorf("modules of %s on the roof: %.2f", h, c)
		}
	}
	for k, s := range shades {
		if c := contrast(t, ink(k), s); c < 4.5 {
			t.Errorf("%s on %s: %.2f", ink(k), s, c)
		}
	}
	// The texts of the style sheet on the grounds on which they stand.
	for _, c := range []struct{ text, ground string }{
		{"#15202b", "#eef1f4"}, {"#15202b", "#ffffff"}, {"#475563", "#eef1f4"}, {"#475563", "#ffffff"}, {"#0a5380", "#ffffff"}, {"#15202b", "#ffefc9"},
	} {
		if !regexp.MustCompile(c.text).MatchString(pageCSS) {
			t.Errorf("%s is not in the style sheet any more", c.text)
		}
		if r := contrast(t, c.text, c.ground); r < 4.5 {
			t.Errorf("%s on %s: %.2f", c.text, c.ground, r)
		}
	}
}

// blindness are Machado, Oliveira, Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009) 1291, DOI 10.1109/TVCG.2009.113, severity 1.0,
// from memory; each row sums to 1, which keeps greys.
var blindness = map[string][3][3]float64{
	"none":         {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"protanopia":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"deuteranopia": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"tritanopia":   {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

// lab is CIE L*a*b* of linear light, white point D65.
func lab(c [3]float64) [3]float64 {
	xyz := [3]float64{
		(0.4124*c[0] + 0.3576*c[1] + 0.1805*c[2]) / 0.95047,
		0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2],
		(0.0193*c[0] + 0.1192*c[1] + 0.9505*c[2]) / 1.08883,
	}
	for i, v := range xyz {
		if v > 0.008856 {
			xyz[i] = math.Cbrt(v)
		} else {
			xyz[i] = 7.787*v + 16.0/116
		}
	}
	return [3]float64{116*xyz[1] - 16, 500 * (xyz[0] - xyz[1]), 200 * (xyz[1] - xyz[2])}
}

// TestColourBlind: any two options' colours stay apart for eyes with each of the three kinds of colour blindness: CIE76 differences of at
// least 15, several times what can just be seen (2.3, Mahy et al. 1994, from memory). Dashes and markers tell them apart besides.
func TestColourBlind(t *testing.T) {
	for kind, m := range blindness {
		for _, row := range m {
			if s := row[0] + row[1] + row[2]; math.Abs(s-1) > 1e-5 {
				t.Fatalf("%s: a row sums to %v", kind, s)
			}
		}
		seen := func(hex string) [3]float64 {
			c, out := linear(t, hex), [3]float64{}
			for i := range out {
				out[i] = min(max(m[i][0]*c[0]+m[i][1]*c[1]+m[i][2]*c[2], 0), 1)
			}
			return lab(out)
		}
		for i, a := range hues {
			for _, b := range hues[:i] {
				p, q := seen(a), seen(b)
				if d := math.Sqrt(sq(p[0]-q[0]) + sq(p[1]-q[1]) + sq(p[2]-q[2])); d < 15 {
					t.Errorf("%s: %s and %s are %.1f apart", kind, a, b, d)
				}
			}
		}
	}
	for i := range shades[1:] {
		if d := lab(linear(t, shades[i+1]))[0] - lab(linear(t, shades[i]))[0]; d < 5 {
			t.Errorf("%s and %s differ by %.1f in lightness", shades[i], shades[i+1], d)
		}
	}
	pairs := map[string]bool{}
	for i := range MaxOptions {
		id := string(rune('A' + i))
		look := fmt.Sprint(hue(id), dash(id))
		if pairs[look] {
			t.Errorf("%s looks like another", id)
		}
		pairs[look] = true
	}
}

func sq(v float64) float64 { return v * v }
