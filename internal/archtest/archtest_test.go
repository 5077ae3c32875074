// Package archtest holds the walls of the house as a test: which package may
// import which, what a pure package may not touch, and that every package says
// what it is for. Nobody loosens the table to mend a build; moving a wall is a
// change of its own, told in ARCHITECTURE.md.
package archtest

import (
	"bytes"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const module = "plashet/"

// mayImport lists, for each package, the packages of this module that its
// non-test files may import. A package that is missing here fails the test.
var mayImport = map[string][]string{
	"engine/unit":    {},
	"engine/trace":   {"engine/unit"},
	"engine/geom":    {"engine/unit"},
	"engine/catalog": {"engine/unit", "engine/trace"},
	"engine/hydro":   {"engine/unit", "engine/trace", "engine/geom", "engine/catalog"},
	"engine/network": {"engine/unit", "engine/trace", "engine/hydro"},
	"engine/level":   {"engine/unit", "engine/trace", "engine/geom", "engine/hydro"},
	"engine/size":    {"engine/unit", "engine/trace", "engine/hydro"},
	"engine/motion":  {"engine/unit", "engine/trace", "engine/hydro", "engine/network", "engine/level"},
	"engine/layout":  {"engine/unit", "engine/trace", "engine/geom", "engine/catalog"},
	"engine/arrange": {"engine/unit", "engine/trace", "engine/geom", "engine/catalog", "engine/layout", "engine/verify", "engine/cut"},
	"engine/band":    {},
	"engine/cut":     {"engine/unit", "engine/trace"},
	"engine/glue":    {"engine/unit", "engine/trace", "engine/catalog", "engine/layout"},
	"engine/verify":  {"engine/unit", "engine/trace", "engine/geom", "engine/layout"},
	"job":            {"engine/unit", "engine/trace", "engine/geom"},
	"quote":          {"engine/unit", "engine/trace"},
	"offer":          {"engine/unit", "engine/trace", "engine/catalog", "engine/design", "job", "takeoff", "quote"},
	"takeoff":        {"engine/unit", "engine/trace", "engine/geom", "engine/catalog"},
	"engine/design": {
		"engine/unit", "engine/trace", "engine/geom", "engine/catalog", "engine/hydro", "engine/network",
		"engine/level", "engine/motion", "engine/layout", "engine/verify", "engine/arrange", "engine/cut", "engine/glue", "engine/size", "engine/band", "job", "takeoff",
	},
	"words":       {"engine/unit", "engine/trace"},
	"answer":      {"engine/unit", "engine/trace", "engine/geom", "engine/cut", "engine/level", "engine/motion", "engine/layout", "engine/verify", "engine/arrange", "engine/glue", "engine/design", "engine/size", "takeoff", "offer", "quote", "job", "words"},
	"drawing":     {"engine/unit", "engine/trace", "engine/geom", "engine/hydro", "engine/level", "engine/motion", "engine/layout", "engine/arrange", "engine/cut", "engine/glue", "engine/design", "job", "words"},
	"paper":       {"engine/unit", "engine/trace", "engine/level", "engine/layout", "engine/cut", "engine/glue", "engine/design", "takeoff", "offer", "quote", "job", "words", "drawing", "render/face"},
	"table":       {"engine/unit", "engine/trace", "engine/layout", "engine/cut", "engine/glue", "engine/design", "job", "words"},
	"render/csv":  {"table"},
	"render/xlsx": {"table"},
	"render/dxf":  {"drawing"},
	"render/glb":  {"drawing", "engine/geom", "engine/layout"},
	"export":      {"engine/unit", "drawing", "job", "table", "render/csv", "render/dxf", "render/glb", "render/svg", "render/png"},
	"render/svg":  {"drawing"},
	"render/face": {},
	"render/pdf":  {"drawing", "render/face"},
	"render/png":  {"drawing", "render/face"},
	"scan":        {},
	"demo":        {},
	"docs":        {},
	"checks":      {"engine/unit", "engine/trace", "engine/geom", "engine/catalog", "engine/hydro", "engine/network", "engine/size", "engine/level", "engine/motion", "engine/layout", "engine/cut", "engine/cut/testdata/orlib", "engine/glue", "takeoff"},
	"store":       {},
	"shelf":       {"engine/unit", "engine/trace", "engine/hydro", "engine/design", "table", "job"},
	"shelf/chart": {"engine/trace"},
	"shelf/keep":  {"engine/trace", "job", "shelf", "store"},
	"cli":         {"offer", "engine/unit", "engine/trace", "engine/design", "engine/arrange", "engine/size", "engine/catalog", "job", "words", "answer", "drawing", "paper", "table", "export", "render/svg", "render/pdf", "render/xlsx", "demo", "app", "serve", "shelf", "shelf/keep", "store", "store/carry", "store/memory", "store/sqldb"},
	"cmd/plashet": {"cli"},

	"store/memory": {"store"},
	"store/suite":  {"store"},
	"store/sqldb":  {"store"},
	"store/carry":  {"store", "store/memory"},
	"app":          {"engine/unit", "engine/trace", "engine/catalog", "engine/hydro", "engine/design", "engine/arrange", "engine/size", "shelf", "shelf/chart", "shelf/keep", "job", "words", "answer", "drawing", "table", "export", "render/svg", "demo", "docs", "store", "offer", "paper", "scan", "render/pdf"},
	"serve":        {"app"},
}

// edge lists the packages that may touch the outside world.
var edge = []string{"cli", "cmd/plashet", "serve", "store/sqldb"}

// lent lists what a package that is not at the edge may use of the worldly all
// the same: the pages answer requests that others hand them, and open no socket.
var lent = map[string][]string{"app": {"net/http"}}

// clocked lists the packages that carry times which others give them. They read
// no clock.
var clocked = []string{"render/pdf", "paper", "shelf", "store", "store/memory", "store/suite", "store/carry", "app"}

// clock lists the calls that read it.
var clock = []string{"time.Now(", "time.Since(", "time.Until(", "time.Sleep(", "time.After(", "time.Tick(", "time.NewT", "time.AfterFunc("}

// worldly lists the standard packages that a pure package may not import:
// files, network, clock, environment, logging, chance, processes.
var worldly = []string{
	"os", "os/exec", "os/signal", "io/fs", "path/filepath", "net", "net/http", "time", "log", "log/slog",
	"math/rand", "math/rand/v2", "crypto/rand", "syscall", "syscall/js", "runtime", "runtime/debug", "database/sql", "flag",
}

func TestWalls(t *testing.T) {
	root := filepath.Join("..", "..")
	seen := map[string]bool{}
	documented := map[string]bool{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if n := d.Name(); n == "testdata" || n == "node_modules" || n == "bench" || n == "internal" || (strings.HasPrefix(n, ".") && path != root) {
				return fs.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		rel, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		pkg := filepath.ToSlash(filepath.Dir(rel))
		source, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, source, parser.ImportsOnly|parser.ParseComments)
		if err != nil {
			return err
		}
		seen[pkg] = true
		if file.Doc != nil {
			documented[pkg] = true
		}
		allowed, known := mayImport[pkg]
		if !known {
			t.Errorf("package %s stands outside the house: give it a row in mayImport", pkg)
			return nil
		}
		for _, imp := range file.Imports {
			name := strings.Trim(imp.Path.Value, `"`)
			if own, inside := strings.CutPrefix(name, module); inside && !slices.Contains(allowed, own) {
				t.Errorf("%s: %s may not import %s", rel, pkg, own)
			}
			if name == "time" && slices.Contains(clocked, pkg) {
				for _, call := range clock {
					if bytes.Contains(source, []byte(call)) {
						t.Errorf("%s: %s carries times but may not read the clock: %s", rel, pkg, call)
					}
				}
				continue
			}
			if slices.Contains(worldly, name) && !slices.Contains(edge, pkg) && !slices.Contains(lent[pkg], name) {
				t.Errorf("%s: %s is pure and may not import %q", rel, pkg, name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(seen) < 10 {
		t.Fatalf("found only %d packages: the walk looks in the wrong place", len(seen))
	}
	for pkg := range seen {
		if !documented[pkg] {
			t.Errorf("package %s has no comment that says what it knows", pkg)
		}
	}
}

// TestWallsCatch proves that the table can fail: it holds a forbidden import
// against it.
func TestWallsCatch(t *testing.T) {
	if slices.Contains(mayImport["engine/unit"], "job") || slices.Contains(mayImport["engine/hydro"], "job") {
		t.Fatal("an engine package may import the job document: the wall is down")
	}
	if !slices.Contains(worldly, "os") || slices.Contains(edge, "engine/design") {
		t.Fatal("the design may touch files: the wall is down")
	}
}
