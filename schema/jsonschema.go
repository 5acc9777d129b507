package schema

import (
	_ "embed"
	"slices"
)

//go:embed sheet.schema.json
var jsonSchema []byte

// JSONSchema is the record's JSON Schema (draft-07), the authority on its form. It is generated from the types, textRules and
// descriptions (go test ./schema -update), and a test holds the decoder to it.
func JSONSchema() []byte { return slices.Clone(jsonSchema) }
