// Package changes puts what changed between two editions of a datasheet into one document that every form of output shows: the values,
// judged by rules/revision, and the text that moved. It must not read files or know flags, and it decides nothing about values.
package changes

import (
	"pvtally/rules"
	"pvtally/rules/revision"
	"pvtally/schema"
)

// Format names the shape of the document and its edition.
const Format = "pvtally.changes/1"

// Doc is everything that changed. Printed values are literals; what is unknown is left out.
type Doc struct {
	Format  string  `json:"format"`
	Tool    Tool    `json:"tool"`
	Old     string  `json:"old"`
	New     string  `json:"new"`
	Sheets  []Sheet `json:"sheets"`
	Text    []Moved `json:"text,omitempty"`
	Left    int     `json:"text_left_out,omitempty"` // moved texts beyond those listed
	Caution string  `json:"caution,omitempty"`
	Summary Summary `json:"summary"`
}

// Tool is who wrote it.
type Tool struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

// Sheet is one series in both editions, or in one of them.
type Sheet struct {
	Series  string   `json:"series,omitempty"`
	Only    string   `json:"only,omitempty"` // "old" or "new" where the other edition lacks it
	Silent  bool     `json:"silent,omitempty"`
	Changes []Change `json:"changes,omitempty"`
	Classes []Class  `json:"classes,omitempty"`
	Strings []String `json:"strings,omitempty"`
}

// Change is one value.
type Change struct {
	Key     string          `json:"key"`
	Name    string          `json:"name"`
	Unit    string          `json:"unit,omitempty"`
	Old     *Printed        `json:"old,omitempty"`
	New     *Printed        `json:"new,omitempty"`
	Delta   schema.Number   `json:"delta,omitzero"`
	Percent rules.Percent   `json:"delta_pct,omitzero"`
	Steps   rules.Percent   `json:"printed_steps,omitzero"` // of the coarser of the two roundings
	Effect  revision.Effect `json:"effect"`
	Why     string          `json:"why,omitempty"`
	Strings bool            `json:"shortens_strings,omitempty"`
}

// Printed is one side of a change.
type Printed struct {
	Text string     `json:"printed"`
	Page int        `json:"page,omitempty"`
	Box  schema.Box `json:"box,omitzero"`
}

// Class is a power class that only one edition has.
type Class struct {
	Name string `json:"name"`
	Only string `json:"only"`
}

// String is one class's longest string where it gets shorter.
type String struct {
	Model string  `json:"model"`
	Limit float64 `json:"limit_v"`
	Now   float64 `json:"new_limit_v,omitempty"`
	Falls []Fall  `json:"falls"`
}

// Fall is a span of record lows in which the longest string falls.
type Fall struct {
	From int `json:"from_c"`
	To   int `json:"to_c"`
	Old  int `json:"old"`
	New  int `json:"new"`
}

// Summary counts.
type Summary struct {
	Changes int `json:"changes"`
	Hurts   int `json:"hurts"`
	Depends int `json:"depends"`
	Helps   int `json:"helps"`
	Neutral int `json:"neutral"`
	Classes int `json:"classes"`
	Strings int `json:"strings_shorter"`
	Text    int `json:"text"`
}

// Any reports that something changed.
func (s Summary) Any() bool { return s.Changes+s.Classes+s.Text > 0 }
