package cli

import (
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"plashet/demo"
)

var update = flag.Bool("update", false, "write docs/commands.md and what the scripts compare with")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"plashet": func() { os.Exit(Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
	})
}

// TestScripts runs the program itself: standard output, standard error, exit
// code, and what stands in the folder afterwards.
func TestScripts(t *testing.T) {
	dir := filepath.Join("testdata", "script")
	if found, err := filepath.Glob(filepath.Join(dir, "*.txtar")); err != nil || len(found) == 0 {
		t.Fatalf("no scripts in %s: %v", dir, err)
	}
	testscript.Run(t, testscript.Params{
		Dir: dir, UpdateScripts: *update, RequireExplicitExec: true, RequireUniqueNames: true,
		Setup: func(e *testscript.Env) error { // an example job for the scripts to work on
			for name, job := range map[string]string{"hillside.json": "hillside-cascade", "courtyard.json": "courtyard-rill"} {
				if err := os.WriteFile(filepath.Join(e.WorkDir, name), demo.Job(job), 0o644); err != nil {
					return err
				}
			}
			return os.WriteFile(filepath.Join(e.WorkDir, "old-pond.json"), demo.Job("old-pond"), 0o644)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exits": exits, "sized": sized, "alone": alone},
	})
}

// exits CODE program args... runs a program that must end with this exit code.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE program [args...]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		ended, ok := errors.AsType[*exec.ExitError](err)
		if !ok {
			ts.Fatalf("%s did not run: %v", args[1], err)
		}
		got = ended.ExitCode()
	}
	if got != want {
		ts.Fatalf("%s ended with exit code %d, %d is wanted", args[1], got, want)
	}
}

// sized FILE BYTES makes a file of that size.
func sized(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: sized FILE BYTES")
	}
	size, err := strconv.ParseInt(args[1], 10, 64)
	ts.Check(err)
	f, err := os.Create(ts.MkAbs(args[0]))
	ts.Check(err)
	ts.Check(f.Truncate(size))
	ts.Check(f.Close())
}

// alone FOLDER [names...] holds that nothing else is in the folder, hidden
// files included.
func alone(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: alone FOLDER [names...]")
	}
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	allowed := map[string]bool{}
	for _, name := range args[1:] {
		allowed[name] = true
	}
	for _, e := range entries {
		if !allowed[e.Name()] {
			ts.Fatalf("%s holds %s", args[0], e.Name())
		}
		delete(allowed, e.Name())
	}
	for name := range allowed {
		ts.Fatalf("%s does not hold %s", args[0], name)
	}
}
