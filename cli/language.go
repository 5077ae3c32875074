package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"plashet/words"
)

// languageFlag lets every command answer in another language. Help, and what
// is wrong with a command itself, stays in English.
func languageFlag(root *cobra.Command) {
	root.PersistentFlags().String("language", words.English().Tag, "`tag` of the language of answers and sheets: "+strings.Join(tags(), " or "))
	root.PersistentPreRunE = func(cmd *cobra.Command, _ []string) error {
		if tag := cmd.Flag("language").Value.String(); !known(tag) {
			return fmt.Errorf("--language takes %s, not %q", strings.Join(tags(), " or "), tag)
		}
		return nil
	}
}

func tags() []string {
	var out []string
	for _, l := range words.Languages() {
		out = append(out, l.Tag)
	}
	return out
}

func known(tag string) bool {
	_, ok := words.In(tag)
	return ok
}

// spoken is the language that a command answers in.
func spoken(cmd *cobra.Command) *words.Language {
	if f := cmd.Flag("language"); f != nil {
		if l, ok := words.In(f.Value.String()); ok {
			return l
		}
	}
	return words.English()
}

// spokenFirst lists all languages, the one asked for first.
func spokenFirst(cmd *cobra.Command) []*words.Language {
	out := []*words.Language{spoken(cmd)}
	for _, l := range words.Languages() {
		if l.Tag != out[0].Tag {
			out = append(out, l)
		}
	}
	return out
}
