package policy

import (
	"bytes"
	"cmp"
	stdjson "encoding/json"
	"fmt"
	"slices"

	"pvtally/cmd/internal/jsonfile"
)

// BaselineFormat is the value of a baseline's "format" key.
const BaselineFormat = "pvtally.baseline/1"

// Baseline is the findings that a catalogue had when it began to be checked. It is written only on demand: a new finding never enters
// by itself.
type Baseline struct {
	Format   string    `json:"format"`
	Findings []Finding `json:"findings"`
}

// ParseBaseline reads a baseline; an unknown key is an error.
func ParseBaseline(data []byte) (*Baseline, error) {
	b := new(Baseline)
	if err := jsonfile.Decode(data, BaselineFormat, b); err != nil {
		return nil, err
	}
	return b, nil
}

// Encode writes the baseline sorted, one finding a line, so that a change in it is a readable diff.
func (b *Baseline) Encode() ([]byte, error) {
	list := slices.Clone(b.Findings)
	slices.SortFunc(list, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Record, b.Record), cmp.Compare(a.Rule, b.Rule), cmp.Compare(a.Field, b.Field), cmp.Compare(a.Printed, b.Printed))
	})
	var out bytes.Buffer
	fmt.Fprintf(&out, "{\n  \"format\": %q,\n  \"findings\": [", BaselineFormat)
	for i, f := range slices.Compact(list) {
		line, err := stdjson.Marshal(f)
		if err != nil {
			return nil, err
		}
		if i > 0 {
			out.WriteByte(',')
		}
		fmt.Fprintf(&out, "\n    %s", line)
	}
	out.WriteString("\n  ]\n}\n")
	return out.Bytes(), nil
}
