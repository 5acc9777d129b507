package cli

import (
	"github.com/spf13/cobra"

	"pvtally/cmd/internal/policy"
	"pvtally/schema"
)

func (c Command) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:       "schema [policy]",
		Short:     "Print the JSON Schema of the record, or of a policy",
		Args:      cobra.MatchAll(cobra.MaximumNArgs(1), cobra.OnlyValidArgs),
		ValidArgs: []string{"policy"},
		RunE: func(_ *cobra.Command, args []string) error {
			text := schema.JSONSchema()
			if len(args) > 0 {
				text = policy.JSONSchema()
			}
			_, err := c.Stdout.Write(text)
			return unwritten(err)
		},
	}
}
