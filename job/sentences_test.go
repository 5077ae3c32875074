package job

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
)

// english reads the catalogue of this package's sentences from its source:
// package words stands above this one and is not imported.
var english = sync.OnceValues(func() (map[string]string, error) {
	file, err := parser.ParseFile(token.NewFileSet(), "../words/en_job.go", nil, 0)
	if err != nil {
		return nil, err
	}
	all := map[string]string{}
	ast.Inspect(file, func(n ast.Node) bool {
		kv, ok := n.(*ast.KeyValueExpr)
		if !ok {
			return true
		}
		key, value := kv.Key.(*ast.BasicLit), kv.Value.(*ast.BasicLit)
		code, errCode := strconv.Unquote(key.Value)
		text, errText := strconv.Unquote(value.Value)
		if errCode != nil || errText != nil {
			err = errCode
			return false
		}
		all[code] = text
		return true
	})
	return all, err
})

func sentences(t testing.TB) map[string]string {
	t.Helper()
	all, err := english()
	if err != nil || len(all) == 0 {
		t.Fatalf("the English sentences cannot be read: %v", err)
	}
	return all
}

var codeLine = regexp.MustCompile(`^\s*Code\w+\s*=\s*"([a-z.-]+)"\s*// (.+)$`)

// TestCodesAndSentences holds the list of codes and the catalogue together:
// each code has a sentence, no sentence is left over, and a sentence names only
// arguments that the code's comment promises.
func TestCodesAndSentences(t *testing.T) {
	source, err := os.ReadFile("codes.go")
	if err != nil {
		t.Fatal(err)
	}
	said := sentences(t)
	seen := map[string]bool{}
	quantity := []string{"found", "part", "near", "example"}
	for line := range strings.Lines(string(source)) {
		m := codeLine.FindStringSubmatch(strings.TrimRight(line, "\n"))
		if m == nil {
			continue
		}
		code, comment := m[1], m[2]
		if seen[code] {
			t.Errorf("%s stands twice", code)
		}
		seen[code] = true
		text, ok := said[code]
		if !ok {
			t.Errorf("%s has no sentence", code)
		}
		for _, name := range placeholders(text) {
			inComment := regexp.MustCompile(`\b`+name+`\b`).MatchString(comment[strings.LastIndex(comment, ":")+1:]) ||
				regexp.MustCompile(`: .*\b`+name+`\b`).MatchString(comment)
			inGroup := strings.HasPrefix(code, "job.read.") && slices.Contains(quantity, name)
			if name != "where" && !inComment && !inGroup {
				t.Errorf("%s: the sentence names %q, the comment does not", code, name)
			}
		}
	}
	if len(seen) < 50 {
		t.Fatalf("only %d codes found: the list is not read", len(seen))
	}
	for code := range said {
		if !seen[code] {
			t.Errorf("sentence for %s, which is no code", code)
		}
	}
}
