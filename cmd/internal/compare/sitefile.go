package compare

import (
	_ "embed"

	"pvtally/cmd/internal/jsonfile"
	"pvtally/rules/site"
)

// SiteFormat is the value of a site file's "format" key.
const SiteFormat = "pvtally.site/1"

//go:embed site.schema.json
var siteSchema []byte

// SiteSchema is the JSON Schema (draft-07) of site files; a test holds ParseSite to it.
func SiteSchema() []byte { return siteSchema }

// Site is a site with where its numbers come from.
type Site struct {
	site.Site
	given map[string]bool // what a file or flag says, by the file's names
	year  string          // what the year's samples are: "given", "invented climate", "weather file"
}

// siteFile is the wire form: a nil is not given. Names carry units.
type siteFile struct {
	Schema      string           `json:"$schema"`
	Format      string           `json:"format"`
	Name        string           `json:"name"`
	Target      *float64         `json:"target_w"`
	Area        *areaFile        `json:"area"`
	Racking     *rackingFile     `json:"racking"`
	Electronics *electronicsFile `json:"electronics"`
	Climate     *string          `json:"climate"`
	Weather     *string          `json:"weather"`
	Months      []monthFile      `json:"months"`
	RecordLow   *float64         `json:"record_low_c"`
	Hottest     *hourFile        `json:"hottest"`
	Sunny       *hourFile        `json:"sunny"`
	Mounting    *mountingFile    `json:"mounting"`
	Strings     *stringsFile     `json:"strings"`
}

type (
	areaFile struct {
		Width   *float64    `json:"width_m"`
		Depth   *float64    `json:"depth_m"`
		Setback setbackFile `json:"setback"`
	}
	setbackFile struct {
		Eaves float64 `json:"eaves_m"`
		Ridge float64 `json:"ridge_m"`
		Left  float64 `json:"left_m"`
		Right float64 `json:"right_m"`
	}
	rackingFile struct {
		Gap          *float64 `json:"gap_mm"`
		RowGap       *float64 `json:"row_gap_mm"`
		RailsPerRow  *int     `json:"rails_per_row"`
		Overhang     *float64 `json:"overhang_mm"`
		MassPerMetre *float64 `json:"kg_per_m"`
	}
	electronicsFile struct {
		ModulesPerUnit int `json:"modules_per_unit"`
	}
	hourFile struct {
		Ambient    *float64 `json:"ambient_c"`
		Irradiance *float64 `json:"irradiance_w_m2"`
		Wind       *float64 `json:"wind_m_s"`
		Module     *float64 `json:"module_c"`
	}
	monthFile struct {
		Ambient    float64  `json:"ambient_c"`
		Irradiance float64  `json:"irradiance_w_m2"`
		Insolation float64  `json:"insolation_kwh_m2"`
		Wind       *float64 `json:"wind_m_s"`
	}
	mountingFile struct {
		Standoff *float64 `json:"standoff_mm"`
		U0       *float64 `json:"u0_w_m2_k"`
		U1       *float64 `json:"u1_w_s_m3_k"`
		Sandia   *string  `json:"sandia"`
	}
	stringsFile struct {
		Limit    *float64 `json:"max_voltage_v"`
		TrackMin *float64 `json:"track_min_v"`
		TrackMax *float64 `json:"track_max_v"`
		Parallel int      `json:"parallel"`
	}
)

// What is assumed where nothing is said: common practice, no source.
const (
	assumedGap      = 0.02 // m between modules, along and up
	assumedRails    = 2
	assumedOverhang = 0.1 // m at each end of a rail
	assumedClimate  = "mild"
)

// DefaultSite is the site where none is given: an invented mild climate, an open rack.
func DefaultSite() *Site {
	c, _ := site.FindClimate(assumedClimate)
	return &Site{given: map[string]bool{}, year: inventedClimate, Site: site.Site{
		Climate: c, Racking: site.Racking{Gap: assumedGap, RowGap: assumedGap, RailsPerRow: assumedRails, Overhang: assumedOverhang}}}
}

// Origins of what is given.
const (
	inventedClimate = "invented climate"
	weatherFile     = "weather file"
	givenOrigin     = "given"
	assumedOrigin   = "assumed"
)

// ParseSite reads a site file. An unknown key is an error: a misspelt voltage limit must not pass in silence. open reads the weather file
// that the site names, by the name that stands there.
func ParseSite(data []byte, open func(name string) ([]byte, error)) (*Site, error) {
	var f siteFile
	if err := jsonfile.Decode(data, SiteFormat, &f); err != nil {
		return nil, err
	}
	s := DefaultSite()
	s.Name = f.Name
	if err := s.climate(&f, open); err != nil {
		return nil, err
	}
	for _, take := range []func(*siteFile) error{s.place, s.hours, s.mounting, s.electrics} {
		if err := take(&f); err != nil {
			return nil, err
		}
	}
	return s, s.Check()
}
