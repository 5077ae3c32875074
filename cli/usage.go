package cli

import (
	"errors"
	"fmt"
	"strings"

	"github.com/agext/levenshtein"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// near gives the name that was most likely meant: the one with the fewest
// slips, capitals aside; "" when none is near. Two swapped letters are two
// slips, so four letters may hold that many; a single letter may hold none,
// because every other one would be near.
func near(typed string, names []string) string {
	typed = strings.ToLower(typed)
	letters := len([]rune(typed))
	best, least := "", (letters+2)/3+1
	if letters < 2 {
		least = 1
	}
	for _, n := range names {
		if d := levenshtein.Distance(typed, strings.ToLower(n), nil); d < least {
			best, least = n, d
		}
	}
	return best
}

// operands holds the words behind a command against its Use line, where the
// optional ones stand last, in square brackets, and "..." takes any number.
func operands(cmd *cobra.Command, args []string) error {
	names := strings.Fields(cmd.Use)[1:]
	for i, n := range names {
		if strings.HasPrefix(n, "[") {
			break
		}
		if i >= len(args) {
			return fmt.Errorf("%s is missing; write: %s %s", n, cmd.Parent().CommandPath(), cmd.Use)
		}
	}
	if len(args) > len(names) && !strings.HasSuffix(cmd.Use, "...") {
		return fmt.Errorf("%q is one word too many; write: %s %s", args[len(names)], cmd.Parent().CommandPath(), cmd.Use)
	}
	return nil
}

func noCommand(root *cobra.Command, typed string) error {
	var names []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	if n := near(typed, names); n != "" {
		return fmt.Errorf("there is no command %q; near it: %s %s", typed, root.CommandPath(), n)
	}
	return fmt.Errorf("there is no command %q; there are: %s", typed, strings.Join(names, ", "))
}

// flagError says a wrong flag in plain words.
func flagError(cmd *cobra.Command, err error) error {
	if words := cmd.Flags().Args(); !cmd.HasParent() && len(words) > 0 {
		return noCommand(cmd, words[0]) // its flags are unknown because the command is
	}
	if bad, ok := errors.AsType[*pflag.InvalidValueError](err); ok {
		return fmt.Errorf("--%s cannot be %q", bad.GetFlag().Name, bad.GetValue())
	}
	if bare, ok := errors.AsType[*pflag.ValueRequiredError](err); ok {
		return fmt.Errorf("--%s needs a value behind it", bare.GetSpecifiedName())
	}
	unknown, ok := errors.AsType[*pflag.NotExistError](err)
	if !ok {
		return err
	}
	if unknown.GetSpecifiedShortnames() != "" {
		return fmt.Errorf("there is no flag -%s; a value that starts with a dash goes behind --", unknown.GetSpecifiedName())
	}
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	if n := near(unknown.GetSpecifiedName(), names); n != "" {
		return fmt.Errorf("there is no flag --%s; near it: --%s", unknown.GetSpecifiedName(), n)
	}
	return fmt.Errorf("there is no flag --%s", unknown.GetSpecifiedName())
}

// helpCommand is cobra's, but an unknown command is wrong usage.
func helpCommand() *cobra.Command {
	return &cobra.Command{
		Use: "help [COMMAND]", Short: "Help about a command", Args: operands,
		RunE: func(cmd *cobra.Command, args []string) error {
			about, rest, err := cmd.Root().Find(args)
			if err != nil {
				return err
			}
			if len(rest) > 0 {
				return noCommand(cmd.Root(), rest[0])
			}
			about.InitDefaultHelpFlag()
			return about.Help()
		},
	}
}
