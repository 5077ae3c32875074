package verify

import (
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"path/filepath"
	"strings"
	"testing"
)

// This package shares no code with what it holds against: of engine/layout and
// engine/geom it may use types, their fields and constants, no function and no
// method. The type checker looks at every name used.
func TestSharesNoCode(t *testing.T) {
	fset := token.NewFileSet()
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var files []*ast.File
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(fset, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	info := types.Info{Uses: map[*ast.Ident]types.Object{}}
	conf := types.Config{Importer: importer.ForCompiler(fset, "source", nil)}
	if _, err := conf.Check("plashet/engine/verify", fset, files, &info); err != nil {
		t.Fatal(err)
	}
	used := 0
	for id, o := range info.Uses {
		if o.Pkg() == nil {
			continue
		}
		switch o.Pkg().Path() {
		case "plashet/engine/layout", "plashet/engine/geom":
			used++
			switch o := o.(type) {
			case *types.Func:
				t.Errorf("%s uses %s", fset.Position(id.Pos()), o)
			case *types.Var:
				if !o.IsField() {
					t.Errorf("%s uses %s", fset.Position(id.Pos()), o)
				}
			}
		}
	}
	if used < 100 {
		t.Errorf("only %d names of layout and geom seen: the test looks in the wrong place", used)
	}
}
