package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"pvtally/rules"
)

func (c Command) rulesCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "rules [ID]",
		Short: "List every rule, or explain one",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			var err error
			if len(args) == 0 {
				err = rules.ExplainAll(c.Stdout)
			} else if rule, ok := rules.Lookup(args[0]); ok {
				err = rules.Explain(c.Stdout, rule)
			} else {
				return fmt.Errorf("no rule %q: 'pvtally rules' lists them all", args[0])
			}
			return unwritten(err)
		},
	}
}
