package compare

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"

	"pvtally/rules/physics"
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
	if err := json.Unmarshal(data, &f, json.RejectUnknownMembers(true)); err != nil {
		return nil, err
	}
	if f.Format != SiteFormat {
		return nil, fmt.Errorf("/format: found %q, allowed: %q", f.Format, SiteFormat)
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

// set takes a number that is given.
func set[T any](s *Site, to *T, from *T, name string) {
	if from != nil {
		*to = *from
		s.given[name] = true
	}
}

func (s *Site) place(f *siteFile) error {
	if f.Target != nil && *f.Target == 0 {
		return fmt.Errorf("target_w is 0: a target of nothing needs no module")
	}
	set(s, &s.Target, f.Target, "target_w")
	if a := f.Area; a != nil {
		if a.Width == nil || a.Depth == nil {
			return fmt.Errorf("/area: it needs width_m (along the eaves) and depth_m (up the slope)")
		}
		s.Area = &site.Area{Width: *a.Width, Depth: *a.Depth, Eaves: a.Setback.Eaves, Ridge: a.Setback.Ridge, Left: a.Setback.Left, Right: a.Setback.Right}
		s.given["area"] = true
	}
	if r := f.Racking; r != nil {
		for _, mm := range []struct {
			to   *float64
			from *float64
			name string
		}{{&s.Racking.Gap, r.Gap, "gap_mm"}, {&s.Racking.RowGap, r.RowGap, "row_gap_mm"}, {&s.Racking.Overhang, r.Overhang, "overhang_mm"}} {
			if mm.from != nil {
				*mm.to = *mm.from / 1000
				s.given["racking."+mm.name] = true
			}
		}
		set(s, &s.Racking.RailsPerRow, r.RailsPerRow, "racking.rails_per_row")
		set(s, &s.Racking.MassPerMetre, r.MassPerMetre, "racking.kg_per_m")
	}
	if f.Electronics != nil {
		set(s, &s.ModulesPerUnit, &f.Electronics.ModulesPerUnit, "electronics.modules_per_unit")
	}
	return nil
}

// hours are the two hours that a site may set instead of its climate's.
func (s *Site) hours(f *siteFile) error {
	if f.RecordLow != nil {
		s.Climate.RecordLow, s.given["record_low_c"] = f.RecordLow, true
	}
	for _, h := range []struct {
		to   *site.Hour
		from *hourFile
		name string
	}{{&s.Climate.Hottest, f.Hottest, "hottest"}, {&s.Climate.Sunny, f.Sunny, "sunny"}} {
		if h.from == nil {
			continue
		}
		if h.from.Module == nil && h.from.Ambient == nil {
			return fmt.Errorf("/%s: it needs ambient_c, or module_c where the cell's temperature is known", h.name)
		}
		set(s, &h.to.Ambient, h.from.Ambient, h.name)
		set(s, &h.to.Irradiance, h.from.Irradiance, h.name)
		h.to.Wind, h.to.Module = h.from.Wind, h.from.Module
		s.given[h.name] = true
	}
	return nil
}

// sandia are the mountings of physics.SandiaMount by name.
var sandia = []struct {
	name  string
	mount *physics.SandiaMount
}{
	{"glass-glass-open-rack", &physics.GlassGlassOpenRack}, {"glass-glass-close-mount", &physics.GlassGlassCloseMount},
	{"glass-polymer-open-rack", &physics.GlassPolymerOpenRack}, {"glass-polymer-insulated-back", &physics.GlassPolymerInsulatedTop},
}

func (s *Site) mounting(f *siteFile) error {
	m := f.Mounting
	if m == nil {
		return nil
	}
	s.given["mounting"] = true
	kinds := 0
	if m.Standoff != nil {
		kinds++
		s.Mounting.Standoff = m.Standoff
	}
	if m.U0 != nil || m.U1 != nil {
		kinds++
		if m.U0 == nil || m.U1 == nil {
			return fmt.Errorf("/mounting: u0_w_m2_k and u1_w_s_m3_k go together")
		}
		s.Mounting.Faiman = &site.Faiman{U0: *m.U0, U1: *m.U1}
	}
	if m.Sandia != nil {
		kinds++
		i := slices.IndexFunc(sandia, func(k struct {
			name  string
			mount *physics.SandiaMount
		}) bool {
			return k.name == *m.Sandia
		})
		if i < 0 {
			var names []string
			for _, k := range sandia {
				names = append(names, k.name)
			}
			return fmt.Errorf("/mounting/sandia: found %q, allowed: %s", *m.Sandia, strings.Join(names, ", "))
		}
		s.Mounting.Sandia = sandia[i].mount
	}
	if kinds > 1 {
		return fmt.Errorf("/mounting: one of standoff_mm, u0_w_m2_k with u1_w_s_m3_k, and sandia, not several")
	}
	return nil
}

func (s *Site) electrics(f *siteFile) error {
	if f.Strings == nil {
		return nil
	}
	s.given["strings"] = true
	s.Window.Parallel = f.Strings.Parallel
	for _, v := range []struct {
		to   *float64
		from *float64
		name string
	}{{&s.Window.Limit, f.Strings.Limit, "max_voltage_v"}, {&s.Window.TrackMin, f.Strings.TrackMin, "track_min_v"}, {&s.Window.TrackMax, f.Strings.TrackMax, "track_max_v"}} {
		if v.from == nil {
			continue
		}
		if *v.to = *v.from; *v.to == 0 { // zero stands for not given from here on
			return fmt.Errorf("strings.%s is 0: leave it out where there is none", v.name)
		}
	}
	return nil
}
