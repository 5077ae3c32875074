package archtest

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// plainUnits is a system of units held against another with a plain comparison.
var plainUnits = regexp.MustCompile(`[!=]= *unit\.(US|Metric)\b|\bcase unit\.(US|Metric)\b`)

// TestUnitsAreAsked: a unit.System carries the marks of a job too, so nobody
// compares it with == but asks it with Is.
func TestUnitsAreAsked(t *testing.T) {
	files := 0
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == ".git" || d.Name() == "node_modules"):
			return filepath.SkipDir
		case d.IsDir() || !strings.HasSuffix(path, ".go"):
			return nil
		}
		text, err := os.ReadFile(path)
		files++
		if m := plainUnits.Find(text); m != nil {
			t.Errorf("%s: %q; ask with Is", path, m)
		}
		return err
	})
	if err != nil || files < 100 {
		t.Errorf("%d files read (%v)", files, err)
	}
}
