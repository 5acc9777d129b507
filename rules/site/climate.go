package site

import "slices"

// Climate is a place's weather as far as modules feel it.
type Climate struct {
	Name, About string
	Invented    bool     // one of this package's: an example, no place
	RecordLow   *float64 // °C; nil where nobody said
	Hottest     Hour     // the hour in which modules are hottest
	Sunny       Hour     // what most of the energy comes in
	Year        []Sample
	Hourly      bool // Year has every hour, not twelve months
}

// Climates are invented ones, for a first look: none is a place, and no design may stand on them.
var Climates = []Climate{
	invented("mild", "temperate coast", -12, Hour{Ambient: 31}, Hour{Ambient: 23.5, Irradiance: 850},
		[12]float64{5, 6, 9, 13, 17, 20, 22, 22, 19, 14, 9, 6}, [12]float64{25, 40, 80, 120, 150, 160, 160, 140, 105, 65, 32, 22}),
	invented("continental", "cold winters, warm summers", -24, Hour{Ambient: 35}, Hour{Ambient: 23, Irradiance: 850},
		[12]float64{-2, 1, 7, 14, 19, 23, 25, 25, 20, 14, 6, 1}, [12]float64{35, 55, 100, 130, 160, 170, 175, 155, 115, 75, 40, 28}),
	invented("cold", "short summers, snow", -36, Hour{Ambient: 29}, Hour{Ambient: 14, Irradiance: 750},
		[12]float64{-14, -10, -3, 5, 12, 17, 19, 17, 11, 4, -5, -11}, [12]float64{12, 35, 85, 125, 155, 165, 160, 125, 80, 40, 15, 7}),
	invented("hot-dry", "desert, clear all year", -4, Hour{Ambient: 47}, Hour{Ambient: 34, Irradiance: 950},
		[12]float64{17, 19, 23, 28, 33, 38, 40, 39, 36, 30, 23, 18}, [12]float64{115, 125, 175, 195, 220, 225, 220, 210, 180, 150, 120, 105}),
	invented("hot-humid", "tropical coast", 12, Hour{Ambient: 37}, Hour{Ambient: 31, Irradiance: 850},
		[12]float64{29, 30, 31, 32, 32, 31, 30, 30, 30, 30, 30, 29}, [12]float64{140, 145, 165, 160, 155, 140, 140, 140, 135, 135, 130, 130}),
}

// invented makes a climate of daytime temperatures in °C and insolation in kWh/m2 of the twelve months. Wind at 10 m is taken as 2 m/s,
// and 1 m/s in the hottest hour; the light of a month comes at 400 to 800 W/m2, the stronger the more there is of it.
func invented(name, about string, low float64, hottest, sunny Hour, ambient, insolation [12]float64) Climate {
	breeze, calm := 2.0, 1.0
	hottest.Irradiance, hottest.Wind, sunny.Wind = 1000, &calm, &breeze
	c := Climate{Name: name, About: about, Invented: true, RecordLow: &low, Hottest: hottest, Sunny: sunny}
	for i := range ambient {
		h := Hour{Ambient: ambient[i], Irradiance: 400 + 1.8*insolation[i], Wind: &breeze}
		c.Year = append(c.Year, Sample{h, insolation[i]})
	}
	return c
}

// FindClimate finds an invented climate by its name.
func FindClimate(name string) (Climate, bool) {
	i := slices.IndexFunc(Climates, func(c Climate) bool { return c.Name == name })
	if i < 0 {
		return Climate{}, false
	}
	return Climates[i], true
}

// exampleNMOT ranks hours of a year by heat before any module is known, °C.
const exampleNMOT = 45

// FromYear makes a climate of samples: its hottest hour is that of the hottest cells, its sunny hour the mean weighted with the light.
// It has no record low: the lowest hour of a typical year is not one.
func FromYear(name, about string, year []Sample, hourly bool) Climate {
	c := Climate{Name: name, About: about, Year: year, Hourly: hourly}
	var example Module
	example.NMOT = Exactly(exampleNMOT)
	top, weight := -1e9, 0.0
	var sum Hour
	wind, windy := 0.0, true
	for _, s := range year {
		if t := example.CellTemperature(s.Hour, Mounting{}); t.V > top {
			top, c.Hottest = t.V, s.Hour
		}
		weight += s.Energy
		sum.Ambient += s.Energy * s.Ambient
		sum.Irradiance += s.Energy * s.Irradiance
		if windy = windy && s.Wind != nil; windy {
			wind += s.Energy * *s.Wind
		}
	}
	if weight > 0 {
		c.Sunny = Hour{Ambient: sum.Ambient / weight, Irradiance: sum.Irradiance / weight}
		if wind /= weight; windy {
			c.Sunny.Wind = &wind
		}
	}
	return c
}
