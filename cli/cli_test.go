package cli

import (
	"bytes"
	"strings"
	"testing"

	"plashet/demo"
)

func run(args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = Run(args, strings.NewReader(""), &o, &e)
	return code, o.String(), e.String()
}

// TestDemo: each example reveals its trap. The traps are those of the
// scenarios; no figure here comes from the code.
func TestDemo(t *testing.T) {
	traps := map[string][]string{
		"courtyard-rill":   {"skimmer needs", "the pump draws air", "Part U1 and right"},
		"hillside-cascade": {"“cascade” gets", "11/16\" is missing", "Pump L"},
		"old-pond":         {"“fall” gets", "cord is 16.0 ft", "arrow points against the flow", "no union", "Pump O"},
	}
	for _, name := range demo.Names() {
		code, out, errs := run("demo", name, "--no-serve")
		if code != ExitDone || errs != "" {
			t.Errorf("%s: exit %d, errors %q", name, code, errs)
		}
		for _, want := range traps[name] {
			if !strings.Contains(out, want) {
				t.Errorf("%s does not tell %q", name, want)
			}
		}
	}
}

func TestWrongUse(t *testing.T) {
	if code, _, errs := run("design", "no-such-file.json"); code != ExitUsage || !strings.Contains(errs, "no-such-file.json") {
		t.Errorf("missing file: exit %d, %q", code, errs)
	}
	if code, _, errs := run("desing", "x"); code != ExitUsage || !strings.Contains(errs, "design") {
		t.Errorf("mistyped command: exit %d, %q", code, errs)
	}
	if code, _, errs := run("design", "-"); code != ExitJob || errs == "" {
		t.Errorf("empty input: exit %d, %q", code, errs)
	}
}

func TestSchema(t *testing.T) {
	if code, out, _ := run("schema"); code != ExitDone || !strings.Contains(out, "json-schema.org") {
		t.Errorf("exit %d", code)
	}
}
