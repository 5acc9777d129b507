package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"pvtally/rules"
)

func (c Command) rulesCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "rules [ID]",
		Short: "List every rule, or explain one",
		Long: `rules lists every rule with the gravest level it can reach. With the name of one it explains it: what it asks, why that must hold, the
formula and its sources, a wrong and a right example, and the settings that a policy may move.`,
		Args: words(0, 1, "name one rule, or none for the list"),
		RunE: func(_ *cobra.Command, args []string) error {
			var err error
			if len(args) == 0 {
				err = rules.ExplainAll(c.Stdout)
			} else if rule, ok := rules.Lookup(args[0]); ok {
				err = rules.Explain(c.Stdout, rule)
			} else {
				return fmt.Errorf("no rule %q: %s", args[0], near(args[0]))
			}
			return unwritten(err)
		},
	}
}

// near says which rules an unknown name may mean: those of the family, or those that hold it.
func near(name string) string {
	var list []string
	for _, r := range rules.All() {
		if strings.Contains(r.ID, strings.ToLower(name)) {
			list = append(list, r.ID)
		}
	}
	if name == "" || len(list) == 0 {
		return "'pvtally rules' lists them all"
	}
	if len(list) == 1 {
		return "is " + list[0] + " meant?"
	}
	return "is one of these meant? " + strings.Join(list, ", ")
}
