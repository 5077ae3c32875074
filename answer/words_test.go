package answer

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// prose tells text for a reader: two words in a row.
var prose = regexp.MustCompile(`[A-Za-z]{2,} [A-Za-z]{2,}`)

// TestNoSentenceHere: what is printed stands in the catalogue of package words,
// so that a second language is a second catalogue. Tags of the JSON are no part
// of it.
func TestNoSentenceHere(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) < 10 {
		t.Fatal(files, err)
	}
	for _, path := range files {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch x := n.(type) {
			case *ast.StructType, *ast.ImportSpec:
				return false
			case *ast.BasicLit:
				if s, err := strconv.Unquote(x.Value); x.Kind == token.STRING && err == nil && s != FormatName && prose.MatchString(s) {
					t.Errorf("%s: %q", path, s)
				}
			}
			return true
		})
	}
}
