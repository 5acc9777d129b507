package cli

import (
	"github.com/spf13/cobra"

	"pvtally/schema"
)

func (c Command) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of the record",
		Args:  cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			_, err := c.Stdout.Write(schema.JSONSchema())
			return unwritten(err)
		},
	}
}
