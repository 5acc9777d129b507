package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"pvtally/cmd/internal/compare"
	"pvtally/cmd/internal/policy"
	"pvtally/schema"
)

func (c Command) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "schema [policy|site|prices]",
		Short: "Print the JSON Schema of the record, or of a policy, a site, prices",
		Long: `schema prints the JSON Schema (draft-07) of the record; or, where it is named, that of the policy of a catalogue, of the site or of the
prices that compare takes.`,
		Args:      words(0, 1, "name one of policy, site, prices, or none for the record"),
		ValidArgs: []string{"policy", "site", "prices"}, // for the shell's completion
		RunE: func(_ *cobra.Command, args []string) error {
			of := schema.JSONSchema
			if len(args) > 0 {
				var ok bool
				of, ok = map[string]func() []byte{"policy": policy.JSONSchema, "site": compare.SiteSchema, "prices": compare.PricesSchema}[args[0]]
				if !ok {
					return fmt.Errorf("no schema %q: policy, site or prices; that of the record needs no name", args[0])
				}
			}
			_, err := c.Stdout.Write(of())
			return unwritten(err)
		},
	}
}
