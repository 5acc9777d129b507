package cli

import (
	"github.com/spf13/cobra"

	"pvtally/cmd/internal/compare"
	"pvtally/cmd/internal/policy"
	"pvtally/schema"
)

func (c Command) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:       "schema [policy|site|prices]",
		Short:     "Print the JSON Schema of the record, or of a policy, a site, prices",
		Args:      cobra.MatchAll(cobra.MaximumNArgs(1), cobra.OnlyValidArgs),
		ValidArgs: []string{"policy", "site", "prices"},
		RunE: func(_ *cobra.Command, args []string) error {
			of := schema.JSONSchema
			if len(args) > 0 {
				of = map[string]func() []byte{"policy": policy.JSONSchema, "site": compare.SiteSchema, "prices": compare.PricesSchema}[args[0]]
			}
			_, err := c.Stdout.Write(of())
			return unwritten(err)
		},
	}
}
