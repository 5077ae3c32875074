package browser

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"plashet/internal/running"
)

func TestMain(m *testing.M) { os.Exit(running.Tests{M: m}.Run()) }

// site starts the program on a new file of jobs, with its examples in it.
func site(t testing.TB) string {
	t.Helper()
	return running.Serve(t, filepath.Join(t.TempDir(), "jobs.sqlite")).URL
}

// examples gives the addresses of the jobs that stand in the list, by name.
func examples(b *Tab) map[string]string {
	b.t.Helper()
	b.Go("/")
	found := Eval[map[string]string](b, `Object.fromEntries([...document.querySelectorAll(".jobs a")].map(a => [a.querySelector(".name").innerText, new URL(a.href).pathname]))`)
	if len(found) == 0 {
		b.t.Fatal("the list shows no job")
	}
	return found
}

// copied makes a job of one's own out of an example, which itself is not changed.
func copied(b *Tab, name string) string {
	b.t.Helper()
	for n, at := range examples(b) {
		if strings.Contains(strings.ToLower(n), name) {
			b.Go(at)
			return at
		}
	}
	b.t.Fatalf("no example %q in the list: %v", name, examples(b))
	return ""
}
