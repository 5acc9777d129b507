package compare

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"pvtally/rules/site"
)

// Weather is a typical year from a file.
type Weather struct {
	Place, Says string
	Year        []site.Sample
}

// weatherColumns are the columns of one format that matter here, from 0; and the values by which it marks what is missing.
type weatherColumns struct {
	ambient, light, wind       int
	noAmbient, noLight, noWind float64
}

// epw are the columns of an EPW file after its eight head lines. Source: "Auxiliary Programs" of the EnergyPlus documentation, "EnergyPlus
// Weather File (EPW) Data Dictionary", from memory.
var epw = weatherColumns{ambient: 6, light: 13, wind: 21, noAmbient: 99.9, noLight: 9999, noWind: 999}

const epwHead = 8

// tmy3 columns are found by the names of the second line. Source: Wilcox, Marion, "Users Manual for TMY3 Data Sets",
// NREL/TP-581-43156 (2008), from memory.
const (
	tmy3Ambient = "Dry-bulb (C)"
	tmy3Light   = "GHI (W/m^2)"
	tmy3Wind    = "Wspd (m/s)"
	tmy3Missing = -9900
)

// Hours of a year, with and without a leap day, and the share that may be missing.
const (
	yearHours   = 8760
	leapHours   = 8784
	mostMissing = 0.05
	maxPlace    = 60 // runes of a place's name
)

// ParseWeather reads a typical year: air temperature, light on the horizontal plane, wind. The two formats are told by their first lines.
func ParseWeather(data []byte) (*Weather, error) {
	lines := csv.NewReader(bufio.NewReader(bytes.NewReader(data)))
	lines.FieldsPerRecord = -1
	lines.LazyQuotes = true
	lines.ReuseRecord = true
	first, err := lines.Read()
	if err != nil {
		return nil, errors.New("it has no first line; an EPW or TMY3 file is expected")
	}
	first = slices.Clone(first)
	if strings.EqualFold(strings.TrimSpace(first[0]), "LOCATION") && len(first) > 1 {
		for range epwHead - 1 {
			if _, err := lines.Read(); err != nil {
				return nil, errors.New("its head ends early; an EPW file has eight head lines")
			}
		}
		return readYear(lines, epw, first[1], "EPW")
	}
	head, err := lines.Read()
	if err != nil || len(first) < 2 {
		return nil, errors.New("neither an EPW file (it begins with LOCATION) nor a TMY3 file (station, then a line of column names)")
	}
	find := func(name string) int {
		return slices.IndexFunc(head, func(h string) bool { return strings.EqualFold(strings.TrimSpace(h), name) })
	}
	c := weatherColumns{find(tmy3Ambient), find(tmy3Light), find(tmy3Wind), tmy3Missing, tmy3Missing, tmy3Missing}
	if c.ambient < 0 || c.light < 0 {
		return nil, fmt.Errorf("neither an EPW file (it begins with LOCATION) nor a TMY3 file (its second line names %q and %q)", tmy3Light, tmy3Ambient)
	}
	return readYear(lines, c, first[1], "TMY3")
}

func readYear(lines *csv.Reader, c weatherColumns, place, format string) (*Weather, error) {
	w := &Weather{Place: strings.TrimSpace(place)}
	if r := []rune(w.Place); len(r) > maxPlace {
		w.Place = string(r[:maxPlace]) + "…"
	}
	if w.Place == "" {
		w.Place = "an unnamed place"
	}
	hours := 0
	for {
		row, err := lines.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("it is not in the form of comma-separated values: %w", err)
		}
		line, _ := lines.FieldPos(0)
		if len(row) == 1 && strings.TrimSpace(row[0]) == "" {
			continue
		}
		if hours++; hours > leapHours {
			return nil, fmt.Errorf("it has more than the %d hours of a year", leapHours)
		}
		s, missing, err := c.sample(row)
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", line, err)
		}
		if !missing {
			w.Year = append(w.Year, s)
		}
	}
	if hours != yearHours && hours != leapHours {
		return nil, fmt.Errorf("it has %d hours, a year has %d", hours, yearHours)
	}
	if gone := hours - len(w.Year); float64(gone) > mostMissing*float64(hours) {
		return nil, fmt.Errorf("%d of its %d hours are marked as missing", gone, hours)
	}
	w.Says = fmt.Sprintf("%s file, %d of %d hours", format, len(w.Year), hours)
	return w, nil
}

// sample is one hour; missing where the file marks its temperature or light so.
func (c weatherColumns) sample(row []string) (s site.Sample, missing bool, err error) {
	ambient, noAmbient, err := field(row, c.ambient, c.noAmbient, -90, 65, "air temperature in °C")
	if err != nil {
		return s, false, err
	}
	light, noLight, err := field(row, c.light, c.noLight, 0, 1500, "light in W/m2")
	if err != nil {
		return s, false, err
	}
	s = site.Sample{Hour: site.Hour{Ambient: ambient, Irradiance: light}, Energy: light}
	if c.wind >= 0 {
		wind, noWind, err := field(row, c.wind, c.noWind, 0, 60, "wind in m/s")
		if err != nil {
			return s, false, err
		}
		if !noWind {
			s.Wind = &wind
		}
	}
	return s, noAmbient || noLight, nil
}

func field(row []string, i int, none, lo, hi float64, what string) (v float64, missing bool, err error) {
	if i >= len(row) {
		return 0, false, fmt.Errorf("it ends before the %s (column %d)", what, i+1)
	}
	text := strings.TrimSpace(row[i])
	v, err = strconv.ParseFloat(text, 64)
	switch {
	case err != nil || math.IsNaN(v):
		return 0, false, fmt.Errorf("%.20q is no %s", text, what)
	case v == none:
		return 0, true, nil
	case v < lo || v > hi:
		return 0, false, fmt.Errorf("%.20q is no possible %s", text, what)
	}
	return v, false, nil
}
