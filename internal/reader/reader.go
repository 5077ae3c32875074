// Package reader runs programs that others wrote and that read what this
// program writes, for tests: a file is right when somebody else's reader finds in
// it what was meant.
package reader

import (
	"bytes"
	"os"
	"os/exec"
	"testing"
)

// python is Debian's own, which has Debian's packages (python3-openpyxl,
// python3-ezdxf); another in the path may have none.
const python = "/usr/bin/python3"

// Python runs a script with Debian's Python and gives what it prints. Without the
// module that the script needs the test is left out, or fails where NEED_READERS
// is set (./check sets it once the packages are installed).
func Python(t *testing.T, module, script string, args ...string) []byte {
	t.Helper()
	if err := exec.Command(python, "-c", "import "+module).Run(); err != nil {
		if os.Getenv("NEED_READERS") != "" {
			t.Fatalf("%s cannot import %s", python, module)
		}
		t.Skipf("%s cannot import %s: install Debian's python3-%s", python, module, module)
	}
	return run(t, python, append([]string{script}, args...)...)
}

// run gives the standard output of a program that must end well.
func run(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	c := exec.Command(name, args...)
	var out, errs bytes.Buffer
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil {
		t.Fatalf("%s %v: %v\n%s", name, args, err, errs.String())
	}
	return out.Bytes()
}

// Node runs a script with Node.js, which finds the module in NODE_PATH (./check
// sets it). Without it as Python.
func Node(t *testing.T, module, script string, args ...string) []byte {
	t.Helper()
	if err := exec.Command("node", "-e", "require('"+module+"')").Run(); err != nil {
		if os.Getenv("NEED_GLTF_VALIDATOR") != "" {
			t.Fatalf("node cannot load %s", module)
		}
		t.Skipf("node cannot load %s: npm install %s, and set NODE_PATH to its node_modules", module, module)
	}
	return run(t, "node", append([]string{script}, args...)...)
}
