// Package running builds the program and runs it for tests that meet it as a
// person does, through its address: browsers, crowds, two servers on one
// database.
package running

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"sync"
	"syscall"
	"testing"
	"time"
)

// Program builds the program once for all tests of a process and gives its path.
var Program = sync.OnceValues(func() (string, error) {
	folder, err := os.MkdirTemp("", "plashet-running-")
	if err != nil {
		return "", fmt.Errorf("a folder for the program: %w", err)
	}
	path := filepath.Join(folder, "plashet")
	out, err := exec.Command("go", "build", "-o", path, "plashet/cmd/plashet").CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("go build: %w: %s", err, out)
	}
	return path, nil
})

// Tests are the tests of a package that takes the built program away in the end.
type Tests struct{ M *testing.M }

// Run runs them.
func (t Tests) Run() int {
	code := t.M.Run()
	if path, err := Program(); err == nil {
		_ = os.RemoveAll(filepath.Dir(path))
	}
	return code
}

// Server is the program under way, serving pages.
type Server struct {
	URL string // without a slash at the end
	cmd *exec.Cmd
}

var opens = regexp.MustCompile(`http://[^ ]+`)

// most is how long the program may take to open its address.
const most = 20 * time.Second

// Serve starts `plashet serve` on a free port of the loopback address, its jobs
// in the database named, and stops it when the test ends.
func Serve(t testing.TB, database string) *Server {
	t.Helper()
	return Start(t, "serve", "--database", database)
}

// Start runs a command of the program that serves pages, on a free port of the
// loopback address, and stops it when the test ends.
func Start(t testing.TB, command string, more ...string) *Server {
	t.Helper()
	path, err := Program()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(context.Background(), path, append([]string{command, "--addr", "127.0.0.1:0"}, more...)...)
	cmd.Stderr = os.Stderr
	cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	s := &Server{cmd: cmd}
	t.Cleanup(func() { s.Stop(t) })
	told := make(chan string, 1)
	go func() {
		lines := bufio.NewScanner(out)
		for lines.Scan() {
			if at := opens.FindString(lines.Text()); at != "" {
				told <- at
			}
		}
	}()
	select {
	case s.URL = <-told:
	case <-time.After(most):
		t.Fatalf("the program told no address within %v", most)
	}
	return s
}

// Stop asks the program to end as Ctrl-C does, and waits for it. It may be
// called twice.
func (s *Server) Stop(t testing.TB) {
	t.Helper()
	if s.cmd == nil {
		return
	}
	cmd := s.cmd
	s.cmd = nil
	_ = cmd.Process.Signal(syscall.SIGTERM)
	if err := cmd.Wait(); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) || exit.ExitCode() != -1 {
			t.Errorf("the program ended with: %v", err)
		}
	}
}

// Client follows no redirection, so that a test sees what the program answers.
func Client() *http.Client {
	return &http.Client{
		Timeout:       most,
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
	}
}
