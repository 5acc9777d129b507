package draw

import (
	"encoding/xml"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestTicks(t *testing.T) {
	tests := []struct {
		name string
		axis Axis
		want []string
	}{
		{"from zero", Axis{Lo: 0, Hi: 14.8}, []string{"0", "5", "10"}},
		{"decimals as the step needs", Axis{Lo: 12.93, Hi: 13.52}, []string{"13.0", "13.2", "13.4"}},
		{"below zero", Axis{Lo: -0.37, Hi: -0.24}, []string{"−0.35", "−0.30", "−0.25"}},
		{"across zero", Axis{Lo: -1, Hi: 1, Ticks: 4}, []string{"−1.0", "−0.5", "0.0", "0.5", "1.0"}},
		{"more of them", Axis{Lo: 0, Hi: 56, Ticks: 8}, []string{"0", "10", "20", "30", "40", "50"}},
		{"huge", Axis{Lo: 0, Hi: 5e20}, []string{"0", "1e+20", "2e+20", "3e+20", "4e+20", "5e+20"}},
		{"nothing between", Axis{Lo: 3, Hi: 3}, []string{"3"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, text := test.axis.ticks()
			if diff := cmp.Diff(test.want, text); diff != "" {
				t.Errorf("-want +got\n%s", diff)
			}
		})
	}
}

func TestAround(t *testing.T) {
	for _, test := range []struct {
		name   string
		values []float64
		lo, hi float64
	}{
		{"two", []float64{10, 20}, 9.2, 20.8},
		{"one", []float64{50}, 49.5, 50.5},
		{"zero", []float64{0}, -0.1, 0.1},
		{"none", nil, -0.08, 1.08},
		{"what is no number is passed over", []float64{math.NaN(), 10, math.Inf(1), 20}, 9.2, 20.8},
	} {
		t.Run(test.name, func(t *testing.T) {
			if a := Around("", test.values...); math.Abs(a.Lo-test.lo) > 1e-9 || math.Abs(a.Hi-test.hi) > 1e-9 {
				t.Errorf("%g to %g, want %g to %g", a.Lo, a.Hi, test.lo, test.hi)
			}
		})
	}
}

// TestChart: whatever it is given, a chart is well-formed XML in which every text stands as text and every coordinate is a number.
func TestChart(t *testing.T) {
	evil := `"><script>alert(1)</script> & ' ` + "\x00"
	for name, c := range map[string]Chart{
		"empty": {},
		"hostile texts": {ID: evil, Title: evil, Desc: evil, Width: 300, Height: 200, X: Axis{Label: evil, Hi: 1}, Y: Axis{Label: evil, Hi: 1},
			Lines: []Line{{Class: evil, Points: []Point{{0, 0}, {1, 1}}}}, Marks: []Mark{{Shape: Diamond, Class: evil, Label: evil, Title: evil}}},
		"no numbers": {Width: 300, Height: 200, X: Axis{Lo: math.NaN(), Hi: math.Inf(1)}, Y: Axis{Lo: 1, Hi: -1},
			Lines: []Line{{Points: []Point{{math.NaN(), math.Inf(-1)}, {1e308, -1e308}}}}, Marks: []Mark{{Point: Point{math.NaN(), 1}, Shape: Triangle}, {Shape: Ring}, {Shape: Square}}},
	} {
		t.Run(name, func(t *testing.T) {
			drawn := strings.ReplaceAll(string(c.SVG()), "\x00", "")
			d := xml.NewDecoder(strings.NewReader(drawn))
			for {
				token, err := d.Token()
				if err == io.EOF {
					break
				}
				if err != nil {
					t.Fatalf("%v in %s", err, drawn)
				}
				if e, ok := token.(xml.StartElement); ok && e.Name.Local == "script" {
					t.Error("a text became an element")
				}
			}
			if strings.Contains(drawn, "NaN") || strings.Contains(drawn, "Inf") {
				t.Errorf("what is no number is drawn: %s", drawn)
			}
		})
	}
}
