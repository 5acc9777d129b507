package rules

import (
	_ "embed"
	"encoding/json"
	"sync"
)

// Example is a rule's wrong and right example, derived from its fixtures: the values judged, and what the rule says of the wrong ones.
type Example struct {
	Wrong   string `json:"wrong"`
	Finding string `json:"finding"`
	Right   string `json:"right"`
}

//go:embed examples.json
var examplesJSON []byte

var examples = sync.OnceValue(func() map[string]Example {
	m := map[string]Example{}
	if err := json.Unmarshal(examplesJSON, &m); err != nil {
		panic(err) // a generated file that does not parse is a mistake of the build
	}
	return m
})

// Example is the rule's.
func (r *Rule) Example() Example { return examples()[r.ID] }
