package cli

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// What is wrong with a command line is said in a user's words, not in those of the libraries that take it apart.

// orHelp shows the help where no command is named, and says which are near where an unknown one is.
func orHelp(root *cobra.Command) {
	root.SuggestionsMinimumDistance = 2 // letters
	root.Args = func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return nil
		}
		near := ""
		if list := cmd.SuggestionsFor(args[0]); len(list) > 0 {
			near = ": is " + strings.Join(list, " or ") + " meant?"
		}
		return fmt.Errorf("no command %q%s", args[0], near)
	}
	root.RunE = func(cmd *cobra.Command, _ []string) error { return cmd.Help() }
}

// flagError rewords what the parser of flags says of a value.
func flagError(_ *cobra.Command, err error) error {
	var value *pflag.InvalidValueError
	if !errors.As(err, &value) {
		return err
	}
	wanted := map[string]string{"int": "a whole number", "bool": "true or false"}[value.GetFlag().Value.Type()]
	if wanted == "" {
		return err
	}
	return fmt.Errorf("--%s %q: %s", value.GetFlag().Name, value.GetValue(), wanted)
}

// words bounds how many words may follow a command; message says what it takes.
func words(least, most int, message string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) < least || len(args) > most {
			return errors.New(message)
		}
		return nil
	}
}

// apart is an error where two of the flags that exclude each other are set.
func apart(flags *pflag.FlagSet, names ...string) error {
	set := ""
	for _, name := range names {
		switch {
		case !flags.Changed(name):
		case set != "":
			return fmt.Errorf("--%s and --%s do not go together", set, name)
		default:
			set = name
		}
	}
	return nil
}
