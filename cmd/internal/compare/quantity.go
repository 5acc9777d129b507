package compare

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"pvtally/rules/physics"
	"pvtally/rules/site"
)

var quantity = regexp.MustCompile(`^\s*([0-9]+(?:\.[0-9]+)?)\s*([A-Za-z'"]*)\s*$`)

// split takes a number and its unit apart. A decimal comma is refused: "5,400" can be read in two ways.
func split(text string) (v float64, unit string, err error) {
	m := quantity.FindStringSubmatch(text)
	if m == nil {
		return 0, "", fmt.Errorf("%.40q is no positive number with a unit (the decimal sign is the point, thousands have none)", text)
	}
	v, err = strconv.ParseFloat(m[1], 64)
	return v, m[2], err
}

var powers = map[string]float64{"": 1, "W": 1, "Wp": 1, "kW": 1e3, "kWp": 1e3, "MW": 1e6, "MWp": 1e6}

// ParsePower reads a target in W: "5.4kW", "5400 W", "5400".
func ParsePower(text string) (watts float64, err error) {
	v, unit, err := split(text)
	if err != nil {
		return 0, err
	}
	k, ok := powers[unit]
	if !ok {
		return 0, fmt.Errorf("unit %q: W, kW or MW", unit)
	}
	if v == 0 {
		return 0, fmt.Errorf("a target of 0 needs no module")
	}
	return v * k, site.Bound{Name: "the target in W", Value: v * k, Lo: 1, Hi: site.MaxTarget}.Check()
}

var lengths = map[string]float64{"mm": 0.001, "cm": 0.01, "m": 1, "in": physics.MillimetresPerInch / 1000, `"`: physics.MillimetresPerInch / 1000, "ft": physics.MetresPerFoot, "'": physics.MetresPerFoot}

// ParseArea reads an area in m, along the eaves by up the slope: "12 m x 4.5 m", "12 × 4.5 m", "39 ft x 15 ft".
func ParseArea(text string) (width, depth float64, err error) {
	sides := strings.FieldsFunc(text, func(r rune) bool { return r == 'x' || r == 'X' || r == '×' || r == '*' })
	if len(sides) != 2 {
		return 0, 0, fmt.Errorf("%.40q is no area: two sides are expected, along the eaves and up the slope, such as \"12 m x 4.5 m\"", text)
	}
	width, unit1, err := split(sides[0])
	if err != nil {
		return 0, 0, err
	}
	depth, unit2, err := split(sides[1])
	if err != nil {
		return 0, 0, err
	}
	if unit1 == "" {
		unit1 = unit2
	}
	k1, ok1 := lengths[unit1]
	k2, ok2 := lengths[unit2]
	if !ok1 || !ok2 {
		return 0, 0, fmt.Errorf("%.40q has no unit known here: mm, cm, m, in or ft", text)
	}
	for _, side := range []site.Bound{{Name: "the area's side along the eaves, in m,", Value: width * k1, Lo: site.MinSide, Hi: site.MaxSide}, {Name: "the area's side up the slope, in m,", Value: depth * k2, Lo: site.MinSide, Hi: site.MaxSide}} {
		if err := side.Check(); err != nil {
			return 0, 0, err
		}
	}
	return width * k1, depth * k2, nil
}

// SetTarget takes the target of the command line instead of the site's.
func (s *Site) SetTarget(text string) error {
	w, err := ParsePower(text)
	if err != nil {
		return err
	}
	s.Target, s.given["target_w"] = w, true
	return s.Check()
}

// SetArea takes the area of the command line instead of the site's; the site's setbacks stay.
func (s *Site) SetArea(text string) error {
	w, d, err := ParseArea(text)
	if err != nil {
		return err
	}
	a := site.Area{}
	if s.Area != nil {
		a = *s.Area
	}
	a.Width, a.Depth = w, d
	s.Area, s.given["area"] = &a, true
	return s.Check()
}
