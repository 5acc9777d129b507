package cli

import (
	"fmt"
	"path/filepath"
	"strings"
)

// recordName is NAME.json for an input's first record, NAME.2.json … for the next ones.
func recordName(in input, part int) string {
	base := filepath.Base(in.name)
	if in.path == "" { // "-", "-:12", "records.jsonl:12"
		base = strings.ReplaceAll(strings.Replace(base, "-", "stdin", 1), ":", "-")
	}
	ending := filepath.Ext(base)
	if _, ours := kinds[strings.ToLower(ending)]; ours {
		base = strings.TrimSuffix(base, ending)
	}
	if part > 1 {
		return fmt.Sprintf("%s.%d.json", base, part)
	}
	return base + ".json"
}
