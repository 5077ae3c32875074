//go:build linux

// Package pgtest starts Debian's PostgreSQL for tests: as a plain user, on a
// free port of the loopback address, in a folder of its own, which is gone with
// the server when the tests end.
package pgtest

import (
	"cmp"
	"database/sql"
	"errors"
	"fmt"
	"net"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	_ "github.com/jackc/pgx/v5/stdlib" // the driver "pgx"
)

// need is the variable that makes a missing PostgreSQL a failure, not a skip.
const need = "NEED_POSTGRES"

// fsync is the variable that lets the server wait for the disk, as it does in
// earnest: benchmarks set it to on. No test cuts the power.
const fsync = "PG_FSYNC"

var errMissing = errors.New("PostgreSQL is not installed: run 'apt-get install postgresql' as root")

type server struct {
	folder, host string
	cmd          *exec.Cmd
	ended        chan ending
}

// ending is how the server came to its end.
type ending struct{ err error }

var (
	started = sync.OnceValues(start)
	running *server
	made    atomic.Int64
)

// Main runs the tests of a package (a testing.M, or what wraps one) and stops
// the server, if one was started.
func Main(m interface{ Run() int }) {
	code := m.Run()
	if running != nil {
		if err := running.stop(); err != nil {
			fmt.Fprintln(os.Stderr, err)
			code = max(code, 1)
		}
	}
	os.Exit(code)
}

// Need skips a test where PostgreSQL is not installed. The server that it gives
// is of no use outside.
func Need(tb testing.TB) *server {
	tb.Helper()
	s, err := started()
	if errors.Is(err, errMissing) && os.Getenv(need) == "" {
		tb.Skip("left out:", err)
	}
	if err != nil {
		tb.Fatal(err)
	}
	return s
}

// Database makes an empty database and gives its address.
func Database(tb testing.TB) string {
	tb.Helper()
	s := Need(tb)
	name := fmt.Sprint("t", made.Add(1))
	db, err := sql.Open("pgx", s.address("postgres"))
	if err != nil {
		tb.Fatal(err)
	}
	defer func() { _ = db.Close() }()
	if _, err := db.Exec("CREATE DATABASE " + name); err != nil {
		tb.Fatal(err)
	}
	return s.address(name)
}

func (s *server) address(database string) string {
	return "postgres://plashet@" + s.host + "/" + database + "?sslmode=disable"
}

// programs finds the folder of the newest PostgreSQL.
func programs() (string, error) {
	found, _ := filepath.Glob("/usr/lib/postgresql/*/bin/initdb")
	if len(found) == 0 {
		return "", errMissing
	}
	slices.Sort(found)
	return filepath.Dir(found[len(found)-1]), nil
}

// plain gives a command the rights of a plain user where root runs the tests:
// PostgreSQL refuses to run as root.
func plain(cmd *exec.Cmd, folder string) error {
	cmd.Dir = folder
	cmd.SysProcAttr = &syscall.SysProcAttr{Pdeathsig: syscall.SIGQUIT}
	if os.Getuid() != 0 {
		return nil
	}
	u, err := user.Lookup("nobody")
	if err != nil {
		return err
	}
	uid, err := strconv.ParseUint(u.Uid, 10, 32)
	if err != nil {
		return err
	}
	gid, err := strconv.ParseUint(u.Gid, 10, 32)
	if err != nil {
		return err
	}
	cmd.SysProcAttr.Credential = &syscall.Credential{Uid: uint32(uid), Gid: uint32(gid)}
	return os.Chown(folder, int(uid), int(gid))
}

func start() (*server, error) {
	bin, err := programs()
	if err != nil {
		return nil, err
	}
	folder, err := os.MkdirTemp("", "pgtest-")
	if err != nil {
		return nil, err
	}
	s := &server{folder: folder, ended: make(chan ending, 1)}
	running = s
	data := filepath.Join(folder, "data")
	initdb := exec.Command(filepath.Join(bin, "initdb"), "-D", data, "-U", "plashet", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync")
	if err := plain(initdb, folder); err != nil {
		return nil, err
	}
	if out, err := initdb.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("initdb: %w: %s", err, out)
	}
	// The port is free now; should another take it before the server does, the
	// server ends and says so.
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	s.host = l.Addr().String()
	_, port, _ := net.SplitHostPort(s.host)
	_ = l.Close()
	log, err := os.Create(filepath.Join(folder, "log"))
	if err != nil {
		return nil, err
	}
	defer func() { _ = log.Close() }()
	s.cmd = exec.Command(filepath.Join(bin, "postgres"), "-D", data, "-p", port, "-k", folder, "-c", "listen_addresses=127.0.0.1", "-c", "fsync="+cmp.Or(os.Getenv(fsync), "off"))
	s.cmd.Stdout, s.cmd.Stderr = log, log
	if err := plain(s.cmd, folder); err != nil {
		return nil, err
	}
	begun := make(chan error)
	go func() {
		// The server is told when the thread that started it ends, so that none
		// is left over when the tests are killed: the thread must stay.
		runtime.LockOSThread()
		begun <- s.cmd.Start()
		if s.cmd.Process != nil {
			s.ended <- ending{s.cmd.Wait()}
		}
	}()
	if err := <-begun; err != nil {
		return nil, err
	}
	return s, s.await()
}

// await waits until the server answers.
func (s *server) await() error {
	db, err := sql.Open("pgx", s.address("postgres"))
	if err != nil {
		return err
	}
	defer func() { _ = db.Close() }()
	for range 300 {
		if err = db.Ping(); err == nil {
			return nil
		}
		select {
		case end := <-s.ended:
			s.ended <- end
			log, _ := os.ReadFile(filepath.Join(s.folder, "log"))
			return fmt.Errorf("the server ended: %w: %s", end.err, log)
		case <-time.After(100 * time.Millisecond):
		}
	}
	return fmt.Errorf("the server does not answer: %w", err)
}

// stop ends the server and takes its folder away.
func (s *server) stop() error {
	if s.cmd != nil && s.cmd.Process != nil {
		_ = s.cmd.Process.Signal(syscall.SIGINT) // fast: open connections are ended
		select {
		case <-s.ended:
		case <-time.After(20 * time.Second):
			_ = s.cmd.Process.Kill()
			<-s.ended
		}
	}
	return os.RemoveAll(s.folder)
}
