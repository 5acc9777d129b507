package compare

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"
)

// An invented year: air between -5 and 35 °C with the season and the hour, light as a half sine by day.
func inventedHour(h int) (ambient, light, wind float64) {
	season := math.Sin(2 * math.Pi * (float64(h)/8760 - 0.25))
	day := math.Sin(math.Pi * (float64(h%24) - 6) / 12)
	return 15 + 15*season + 5*day, max(0, 800*day), 2
}

// epwYear is the year as an EPW file; edit changes a row's fields.
func epwYear(edit func(hour int, fields []string)) []byte {
	var b bytes.Buffer
	b.WriteString("LOCATION,Kestrel Ridge,-,-,invented,000000,45.0,7.0,1.0,400.0\n")
	for range 7 {
		b.WriteString("COMMENTS 1,invented\n")
	}
	for h := range 8760 {
		ambient, light, wind := inventedHour(h)
		fields := strings.Split(strings.Repeat("0,", 34)+"0", ",")
		fields[6], fields[13], fields[21] = fmt.Sprintf("%.2f", ambient), fmt.Sprintf("%.0f", light), fmt.Sprint(wind)
		if edit != nil {
			edit(h, fields)
		}
		b.WriteString(strings.Join(fields, ",") + "\n")
	}
	return b.Bytes()
}

// tmy3Year is the same year as a TMY3 file.
func tmy3Year() []byte {
	var b bytes.Buffer
	b.WriteString("000000,\"Kestrel Ridge\",XX,-7.0,45.0,7.0,400\r\n")
	b.WriteString("Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),GHI (W/m^2),GHI source,Dry-bulb (C),Wspd (m/s)\r\n")
	for h := range 8760 {
		ambient, light, wind := inventedHour(h)
		fmt.Fprintf(&b, "01/01/1999,%02d:00,0,%.0f,1,%.2f,%v\r\n", h%24+1, light, ambient, wind)
	}
	return b.Bytes()
}

// TestWeather: the two formats give the same year, and the year's effect is that of the mean cell temperature.
func TestWeather(t *testing.T) {
	epw, err := ParseWeather(epwYear(nil))
	if err != nil {
		t.Fatal(err)
	}
	tmy3, err := ParseWeather(tmy3Year())
	if err != nil {
		t.Fatal(err)
	}
	if epw.Place != "Kestrel Ridge" || tmy3.Place != "Kestrel Ridge" || len(epw.Year) != 8760 || len(tmy3.Year) != 8760 {
		t.Errorf("%q %d, %q %d", epw.Place, len(epw.Year), tmy3.Place, len(tmy3.Year))
	}
	for i := range epw.Year {
		a, b := epw.Year[i], tmy3.Year[i]
		if a.Ambient != b.Ambient || a.Irradiance != b.Irradiance || *a.Wind != *b.Wind {
			t.Fatalf("hour %d: %+v and %+v", i, a, b)
		}
	}
	s, err := ParseSite([]byte(`{"format": "pvtally.site/1", "weather": "ridge.epw"}`), func(name string) ([]byte, error) {
		if name != "ridge.epw" {
			t.Errorf("asked for %q", name)
		}
		return epwYear(nil), nil
	})
	if err != nil {
		t.Fatal(err)
	}
	d := build(t, Input{Site: s, Options: candidates(t, nil, "example-270.json", "example-260.json")})
	cell, effect := value(t, d, "heat", "year_cell", 0).Value.Float(), value(t, d, "heat", "year_effect", 0).Value.Float()
	if want := -0.37 * (cell - 25); math.Abs(effect-want) > 0.1 {
		t.Errorf("effect %v, want %v for a mean of %v °C", effect, want, cell)
	}
	if c := value(t, d, "cold", "voc_coefficient", 0); !strings.Contains(c.Why, "the lowest hour of a typical year is not one") {
		t.Errorf("a cold voltage without a record low: %+v", c)
	}
	if !strings.Contains(d.Answer, "at Kestrel Ridge (module at ") {
		t.Error(d.Answer)
	}
}

// TestWeatherFaults: each fault is named with its line.
func TestWeatherFaults(t *testing.T) {
	whole := epwYear(nil)
	one := func(i int, text string) []byte {
		return epwYear(func(h int, f []string) {
			if h == 100 {
				f[i] = text
			}
		})
	}
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"nothing", nil, "no first line"},
		{"a sentence", []byte("sunny\nmostly\n"), "neither an EPW file"},
		{"a table of something else", []byte("a,b\nc,d\n1,2\n"), "neither an EPW file"},
		{"only the head", whole[:80], "its head ends early"},
		{"half a year", whole[:len(whole)/2], "hours, a year has 8760"},
		{"two years", append(append([]byte{}, whole...), bytes.Join(bytes.SplitAfter(whole, []byte("\n"))[8:], nil)...), "more than the 8784 hours"},
		{"no number", one(6, "warm"), `line 109: "warm" is no air temperature`},
		{"kelvin", one(6, "293"), `line 109: "293" is no possible air temperature`},
		{"too bright", one(13, "99999"), `line 109: "99999" is no possible light`},
		{"not a number", one(21, "NaN"), `line 109: "NaN" is no wind`},
		{"all missing", epwYear(func(_ int, f []string) { f[6] = "99.9" }), "8760 of its 8760 hours are marked as missing"},
	} {
		if _, err := ParseWeather(c.data); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	w, err := ParseWeather(one(6, "99.9"))
	if err != nil || len(w.Year) != 8759 || w.Says != "EPW file, 8759 of 8760 hours" {
		t.Errorf("one hour missing: %v", err)
	}
}

func FuzzParseWeather(f *testing.F) {
	f.Add([]byte("LOCATION,x\n\n\n\n\n\n\n\n1,2,3\n"))
	f.Add(tmy3Year()[:2000])
	f.Add(epwYear(nil)[:2000])
	f.Fuzz(func(t *testing.T, text []byte) { ParseWeather(text) })
}

// BenchmarkBuild is a comparison of three modules over the 8760 hours of a year.
func BenchmarkBuild(b *testing.B) {
	s, err := ParseSite([]byte(`{"format": "pvtally.site/1", "weather": "ridge.epw", "target_w": 5400}`), func(string) ([]byte, error) { return epwYear(nil), nil })
	if err != nil {
		b.Fatal(err)
	}
	in := Input{Site: s, Options: candidates(b, nil, "roof/kr-hc108.json", "roof/wz-t48.json", "roof/fm-108t.json")}
	for b.Loop() {
		if _, err := Build(in); err != nil {
			b.Fatal(err)
		}
	}
}
