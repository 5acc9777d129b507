// Package compare lays several modules side by side for one site: it reads the description of the site, the prices and weather files, has
// rules/site calculate, and puts the result into one document that every form of output shows. It must not read files or know flags, and
// it decides nothing that rules/site does not: it rounds, converts units and finds words.
package compare

import (
	"pvtally/cmd/internal/report"
	"pvtally/schema"
)

// Format names the shape of the document and its edition.
const Format = "pvtally.comparison/1"

// Doc is a comparison as it is shown. Every number that any form shows stands in it, rounded as it is shown.
type Doc struct {
	Format   string           `json:"format"`
	Tool     Tool             `json:"tool"`
	Units    string           `json:"units"` // "si" or "us"
	Answer   string           `json:"answer"`
	More     []string         `json:"more,omitempty"`
	Options  []Option         `json:"options"`
	Site     []Given          `json:"site"`
	Sections []Section        `json:"sections"`
	Plots    []Plot           `json:"plots,omitempty"`
	LeftOut  []*report.Unread `json:"left_out,omitempty"`
}

// Tool is who wrote it.
type Tool struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

// Option is one module that is compared, called by its letter in the document.
type Option struct {
	ID      string   `json:"id"`
	Name    string   `json:"name"`
	Maker   string   `json:"maker,omitempty"`
	Series  string   `json:"series,omitempty"`
	File    string   `json:"file"`
	Verdict string   `json:"verdict"`
	Notes   []string `json:"notes,omitempty"`
}

// Given is one thing that the figures stand on.
type Given struct {
	ID     string        `json:"id"`
	Label  string        `json:"label"`
	Value  schema.Number `json:"value,omitzero"`
	Unit   string        `json:"unit,omitempty"`
	Text   string        `json:"text,omitempty"`
	Origin string        `json:"origin"` // "given", "assumed", "invented climate", "weather file"
}

// Section is one table: a row a quantity, a cell an option.
type Section struct {
	ID      string   `json:"id"`
	Title   string   `json:"title"`
	Rows    []Row    `json:"rows,omitempty"`
	Notes   []string `json:"notes,omitempty"`
	Caution string   `json:"caution,omitempty"`
}

// Row is one quantity.
type Row struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Unit  string `json:"unit,omitempty"`
	How   string `json:"how,omitempty"`
	Cells []Cell `json:"cells"`
}

// Cell is one option's value, or why it has none. Low and High are what printed rounding and tolerance leave open.
type Cell struct {
	Value      schema.Number `json:"value,omitzero"`
	Low        schema.Number `json:"low,omitzero"`
	High       schema.Number `json:"high,omitzero"`
	Text       string        `json:"text,omitempty"`
	Why        string        `json:"why,omitempty"`
	Difference *Difference   `json:"difference,omitempty"`
}

// Difference is how a cell stands to the first option's. Of per cent the absolute difference is in points, so that no "2 %" can be
// taken for the other.
type Difference struct {
	Absolute schema.Number `json:"absolute"`
	Unit     string        `json:"unit,omitempty"`
	Percent  schema.Number `json:"percent,omitzero"`
	Verdict  string        `json:"verdict,omitempty"` // Real, Within or Same where it is judged
}

// Verdicts on a difference.
const (
	Real   = "real"
	Within = "within printed rounding and tolerance"
	Same   = "the same"
)

// Plot is one picture's data.
type Plot struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Note  string `json:"note,omitempty"`
	X     Axis   `json:"x,omitzero"`
	Y     Axis   `json:"y,omitzero"`
	Lines []Line `json:"lines,omitempty"`
	Marks []Mark `json:"marks,omitempty"`
	Bars  []Bar  `json:"bars,omitempty"`
	Roofs []Roof `json:"roofs,omitempty"`
}

// Axis is a scale; its first and last tick are its ends.
type Axis struct {
	Label string          `json:"label"`
	Unit  string          `json:"unit,omitempty"`
	Ticks []schema.Number `json:"ticks"`
}

// Line is one option's curve; Points are the printed ones on it, where there are such.
type Line struct {
	Option string             `json:"option"`
	Curve  [][2]schema.Number `json:"curve"`
	Points [][2]schema.Number `json:"points,omitempty"`
}

// Mark is a place on the x axis.
type Mark struct {
	Label string        `json:"label"`
	X     schema.Number `json:"x"`
}

// Bar is one option's stack.
type Bar struct {
	Option string        `json:"option"`
	Total  schema.Number `json:"total"`
	Parts  []BarPart     `json:"parts"`
}

// BarPart is a piece of a bar.
type BarPart struct {
	Label string        `json:"label"`
	Value schema.Number `json:"value"`
}

// Roof is one option's layout in the unit of the plot's axes: the area, the free strips, one module's sides, gaps, and the modules in
// each row from the eaves up.
type Roof struct {
	Option    string        `json:"option"`
	Caption   string        `json:"caption"`
	Width     schema.Number `json:"width"`
	Depth     schema.Number `json:"depth"`
	Left      schema.Number `json:"left"`
	Right     schema.Number `json:"right"`
	Eaves     schema.Number `json:"eaves"`
	Ridge     schema.Number `json:"ridge"`
	Along     schema.Number `json:"along"`
	Up        schema.Number `json:"up"`
	Gap       schema.Number `json:"gap"`
	RowGap    schema.Number `json:"row_gap"`
	Landscape bool          `json:"landscape"`
	Counts    []int         `json:"counts"`
}
