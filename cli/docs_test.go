package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// TestDocs holds docs/commands.md against the commands it is made from.
func TestDocs(t *testing.T) {
	root := newRoot()
	var b strings.Builder
	b.WriteString(`# Commands
Generated from the program's own help: do not edit by hand.

` + root.Long + `

| exit code | meaning |
|---|---|
`)
	fmt.Fprintf(&b, "| %d | done; findings in the answer do not change it |\n", ExitDone)
	fmt.Fprintf(&b, "| %d | the job has a fault; what does not depend on it is still printed |\n", ExitJob)
	fmt.Fprintf(&b, "| %d | wrong usage: a word, flag or file that cannot be used; nothing was done |\n", ExitUsage)
	fmt.Fprintf(&b, "| %d | something failed on our side, or the output could not be written |\n", ExitOurs)
	b.WriteString("\nJOB is the path of a job file ([its format](job-format.md)), or `-` for standard input. A file is written whole or not at all.\n" +
		"Every command takes `--help`; `plashet --version` tells which build this is; `plashet completion SHELL` prints what a shell needs to complete commands and flags.\n\n| command | |\n|---|---|\n")
	for _, c := range root.Commands() {
		fmt.Fprintf(&b, "| [`%s`](#%s) | %s |\n", c.Name(), c.Name(), c.Short)
	}
	for _, c := range root.Commands() {
		document(&b, c)
	}
	compare(t, filepath.Join("..", "docs", "commands.md"), b.String())
}

// TestDemoDoc holds docs/demo.txt against what the demo prints.
func TestDemoDoc(t *testing.T) {
	code, out, errs := run("demo", "--no-serve")
	if code != ExitDone || errs != "" {
		t.Fatalf("exit %d, errors %q", code, errs)
	}
	compare(t, filepath.Join("..", "docs", "demo.txt"), out)
}

func document(b *strings.Builder, c *cobra.Command) {
	said := c.Long
	if said == "" {
		said = c.Short + "."
	}
	fmt.Fprintf(b, "\n## %s\n```\n%s\n```\n%s\n", strings.TrimPrefix(c.CommandPath(), "plashet "), c.UseLine(), said)
	if c.HasLocalFlags() {
		b.WriteString("\n| flag | |\n|---|---|\n")
		c.LocalFlags().VisitAll(func(f *pflag.Flag) {
			kind, usage := pflag.UnquoteUsage(f)
			fmt.Fprintf(b, "| `%s` | %s |\n", strings.TrimSpace("--"+f.Name+" "+kind), usage)
		})
	}
	if c.Example != "" {
		fmt.Fprintf(b, "\n```\n%s\n```\n", c.Example)
	}
	for _, sub := range c.Commands() {
		document(b, sub)
	}
}

func compare(t *testing.T, name, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s is out of date: go test ./cli -update, and read the difference", name)
	}
}

// TestHelpTellsExitCodes: the codes stand in the help as in the code.
func TestHelpTellsExitCodes(t *testing.T) {
	code, out, errs := run("--help")
	want := fmt.Sprintf("Exit codes: %d done (findings included), %d a fault in the job, %d wrong usage, %d our fault.", ExitDone, ExitJob, ExitUsage, ExitOurs)
	if code != ExitDone || errs != "" || !strings.Contains(out, want) {
		t.Errorf("exit %d, errors %q, help:\n%s", code, errs, out)
	}
}
